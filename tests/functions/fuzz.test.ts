import { parseComplex } from '../../src/core/complex';
import { Recorder } from '../../src/core/working';
import { type HostTraits, type Outcome, call } from '../../src/functions/kernel/call';
import { type Argument, type Cell, CellError, type Matrix, isMatrix } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { assumedOf, stepsOf, workingLine } from '../../src/functions/kernel/explain';
import { catalogue } from '../../src/sheet/catalogue';
import { compile, emptyWorkbook, evaluate } from '../../src/sheet/evaluate';
import { type Random, fairArgument, hostileArgument, pick, randomFrom, spoiledRange } from '../support/hostile';

/** Every function with hostile arguments: a value of its declared kind or a refusal in words, and nothing else. */
const SEED = Number(process.env['FUZZ_SEED'] ?? 20261125);
const TUPLES = Number(process.env['FUZZ_TUPLES'] ?? 300);

const hosts: readonly HostTraits[] = [{ blankArrivesAsZero: false }, { blankArrivesAsZero: true }];

/** Arguments of the examples of a declaration, as the evaluator hands them over. */
function exampleArguments({ declaration, member }: Entry): Argument[][] {
  return declaration.examples.flatMap((formula) => {
    let outermost: Argument[] = [];
    let outerName = '';
    const find = (name: string) => {
      const entry = catalogue.find(name);
      return entry && ((args: readonly Argument[]) => {
        outermost = [...args];
        outerName = entry.member.name;
        return call(catalogue, entry, args).value;
      });
    };
    evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions: { find }, sheet: '', row: 0, column: 0 });
    return declaration.members.some(({ name }) => name === outerName) && Object.keys(member.parameters).length >= outermost.length ? [outermost] : [];
  });
}

/** Fair arguments, some of them spoiled now and then; of a question, those of another function behind its name. */
function fairTuple({ member }: Entry, random: Random): Argument[] {
  const kinds = Object.values(member.parameters);
  const spoil = random() < 0.5 ? 0 : 0.2;
  if (kinds[1]?.type === 'raw') {
    const other = pick(random, catalogue.entries);
    return [other.member.name, ...(other.member === member ? [] : fairTuple(other, random))];
  }
  return kinds.map((kind) => (random() < spoil ? hostileArgument(random) : fairArgument(kind, random)));
}

/** An example with one or two arguments changed. */
function changedExample({ member }: Entry, example: readonly Argument[], random: Random): Argument[] {
  const kinds = Object.values(member.parameters);
  const argv = [...example];
  for (let changes = 1 + Math.floor(random() * 2); changes > 0; changes -= 1) {
    const place = Math.floor(random() * Math.max(1, kinds.length, argv.length));
    const there = argv[place];
    const kind = kinds[place];
    if (isMatrix(there) && random() < 0.7) argv[place] = spoiledRange(there, random);
    else argv[place] = random() < 0.5 || kind === undefined ? hostileArgument(random) : fairArgument(kind, random);
  }
  return Array.from(argv);
}

function tuple(entry: Entry, examples: readonly Argument[][], random: Random): Argument[] {
  const choice = random();
  if (choice < 0.15) return Array.from({ length: Math.floor(random() * (Object.keys(entry.member.parameters).length + 3)) }, () => hostileArgument(random));
  return choice < 0.6 && examples.length > 0 ? changedExample(entry, pick(random, examples), random) : fairTuple(entry, random);
}

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

function faultOfValue(value: Cell | Matrix, { member }: Entry, argv: readonly Argument[]): string | undefined {
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
function faultOfWords(outcome: Outcome): string | undefined {
  const words = [...outcome.cautions, assumedOf(outcome), ...(outcome.error ? [] : [workingLine(outcome), ...stepsOf(outcome).flatMap(({ step, value, inputs }) => [step, value, inputs])])];
  if (outcome.value === 'not shown' && outcome.cautions.length === 0) return 'not shown without a reason';
  return words.map(sound).find((fault) => fault !== undefined);
}

function shownArguments(argv: readonly Argument[]): string {
  const plain = (value: unknown): unknown => (typeof value === 'number' ? (Object.is(value, -0) ? '-0' : Number.isFinite(value) ? value : String(value)) : value instanceof CellError ? value.code : typeof value === 'string' && value.length > 60 ? `${value.slice(0, 20)}… (${value.length})` : value);
  return JSON.stringify(argv, (_key, value: unknown) => (value === undefined ? '(left out)' : plain(value))).slice(0, 600);
}

describe(`hostile tuples (FUZZ_SEED=${SEED})`, () => {
  test.each(catalogue.entries.map((entry, place) => [entry.member.name, entry, place] as const))('%s', (name, entry, place) => {
    const random = randomFrom(SEED + 7919 * place);
    const examples = exampleArguments(entry);
    const faults: string[] = [];
    for (let round = 0; round < TUPLES && faults.length < 5; round += 1) {
      const argv = tuple(entry, examples, random);
      const outcome = call(catalogue, entry, argv, hosts[random() < 0.3 ? 1 : 0], new Recorder());
      const fault = faultOfValue(outcome.value, entry, argv) ?? faultOfWords(outcome);
      if (fault) faults.push(`FUZZ_SEED=${SEED} ${name}(${shownArguments(argv)}) gave ${fault}`);
    }
    expect(faults).toEqual([]);
  });
});
