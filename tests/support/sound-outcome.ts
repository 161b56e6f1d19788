import { parseComplex } from '../../src/core/complex';
import type { Outcome } from '../../src/functions/kernel/call';
import { type Argument, type Cell, CellError, type Matrix, isMatrix } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { assumedOf, stepsOf, workingLine } from '../../src/functions/kernel/explain';

const NONSENSE = /\bNaN\b|Infinity|undefined|\[object|internal fault/;
const sound = (text: string): string | undefined => (NONSENSE.test(text) ? `nonsense in the text "${text.slice(0, 200)}"` : undefined);

const isAmong = (error: CellError, argv: readonly Argument[]): boolean =>
  argv.some((argument) => (isMatrix(argument) ? argument.some((row) => row.includes(error)) : argument === error));

const TEXTS = ['text', 'word'];
const VERDICTS = ['pass', 'FAIL', 'not shown'];

/** What is wrong with a cell that a function of this kind answered with. */
function faultOfCell(value: Cell | undefined, kind: string): string | undefined {
  if (typeof value === 'number') {
    if (!Number.isFinite(value) || Object.is(value, -0)) return `the number ${value}`;
    return kind === 'verdict' || TEXTS.includes(kind) ? `the number ${value} where ${kind} is declared` : undefined;
  }
  if (typeof value !== 'string') return `a cell that is ${String(value)}`;
  if (kind === 'verdict') return VERDICTS.includes(value) || value === '' ? undefined : `"${value}" is no verdict`;
  if (kind === 'impedance' || (kind === 'as asked' && /\di$/.test(value))) return parseComplex(value) ? undefined : `"${value}" is no impedance`;
  if (kind === 'table' || kind === 'as asked' || TEXTS.includes(kind)) return sound(value);
  return `the text "${value.slice(0, 100)}" where ${kind} is declared`;
}

/** What is wrong with what a function answered: not of its declared kind, or an error without words. */
export function faultOfValue(value: Cell | Matrix, { member }: Entry, argv: readonly Argument[]): string | undefined {
  if (value instanceof CellError) {
    if (isAmong(value, argv)) return undefined;
    if (!['#VALUE!', '#NUM!', '#N/A'].includes(value.code)) return `the error ${value.code}`;
    return value.message === '' ? `${value.code} without a reason` : sound(value.message);
  }
  if (!Array.isArray(value)) return member.spill ? 'one cell from a function that spills' : faultOfCell(value, member.result);
  if (!member.spill) return 'a spill from a function of one cell';
  const width = value[0]?.length ?? 0;
  if (width === 0 || value.some((row) => row.length !== width)) return 'rows of different lengths';
  return value.flat().map((cell) => faultOfCell(cell, 'table')).find((fault) => fault !== undefined);
}

/** What is wrong with what the outcome says of itself. */
export function faultOfWords(outcome: Outcome): string | undefined {
  const words = [...outcome.cautions, assumedOf(outcome), ...(outcome.error ? [] : [workingLine(outcome), ...stepsOf(outcome).flatMap(({ step, value, inputs }) => [step, value, inputs])])];
  if (outcome.value === 'not shown' && outcome.cautions.length === 0) return 'not shown without a reason';
  return words.map(sound).find((fault) => fault !== undefined);
}
