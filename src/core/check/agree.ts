import { type Complex, parseComplex } from '../complex';
import { rounded } from '../figure';
import { SLACK, atMost } from '../judgement';
import { type Working, silent } from '../working';

/** What a sheet holds in a cell; null is blank, an object with a code is an error. */
export type SheetCell = number | string | boolean | null | { readonly code: string };

/** A figure of a sheet as far as a comparison cares. */
export type Compared = { kind: 'number'; value: number } | { kind: 'impedance'; value: Complex } | { kind: 'words'; value: string };

const words = (text: string): string => text.toLowerCase().replace(/\s/g, '');

/** What a value is: numbers and complex text are compared as quantities, all else as words. */
export function compared(value: number | string | boolean): Compared {
  if (typeof value === 'number') return { kind: 'number', value };
  if (typeof value === 'boolean') return { kind: 'words', value: words(String(value)) };
  const z = parseComplex(value);
  if (!z || !Number.isFinite(z.re) || !Number.isFinite(z.im)) return { kind: 'words', value: words(value) };
  return /[ij]/.test(value) ? { kind: 'impedance', value: z } : { kind: 'number', value: z.re };
}

/**
 * Difference of the designer's figure from the checker's, per cent: 100·(d/c − 1), of impedances 100·|d − c|/|c|.
 * Undefined where there is no per cent to state: words, a checker's figure of zero, a ratio beyond all numbers.
 */
export function differencePct(designer: Compared, checker: Compared, work: Working = silent): number | undefined {
  if (designer.kind === 'words' || checker.kind === 'words') return undefined;
  const bothNumbers = designer.kind === 'number' && checker.kind === 'number';
  const difference = bothNumbers ? 100 * (designer.value / checker.value - 1) : (100 * distance(designer, checker)) / size(checker);
  if (!Number.isFinite(difference)) return undefined;
  const formula = bothNumbers ? '100·(designer/checker − 1)' : '100·|designer − checker|/|checker|';
  work.step('difference', formula, { designer: designer.value, checker: checker.value }, [difference, '%']);
  return difference;
}

type Quantity = Exclude<Compared, { kind: 'words' }>;

const parts = (figure: Quantity): readonly [number, number] => (figure.kind === 'impedance' ? [figure.value.re, figure.value.im] : [figure.value, 0]);

export const size = (figure: Quantity): number => Math.hypot(...parts(figure));

function distance(designer: Quantity, checker: Quantity): number {
  const [[dr, dx], [cr, cx]] = [parts(designer), parts(checker)];
  return Math.hypot(dr - cr, dx - cx);
}

/** Two decimals, more where two would read as no difference at all. */
const percent = (value: number): string => {
  const figure = Math.abs(value);
  if (figure >= 1e15) return rounded(figure, 6);
  return figure >= 0.005 ? figure.toFixed(2) : String(Number(figure.toPrecision(2)));
};

/**
 * Whether the designer's figure agrees with the checker's, in words. Own rule.
 * @param tolerancePct allowed difference, per cent of the checker's figure
 * @param floor        allowed difference in the figures' own unit, for values near nothing
 */
export function agreement(designer: Compared, checker: Compared, tolerancePct: number, floor: number): string {
  if (designer.kind === 'words' && checker.kind === 'words') return designer.value === checker.value ? 'agrees' : 'DIFFERS in words';
  if (designer.kind === 'words' || checker.kind === 'words') return 'DIFFERS in kind';
  if (atMost(distance(designer, checker), floor)) return 'agrees';
  const difference = differencePct(designer, checker);
  if (difference === undefined) return size(checker) === 0 ? 'DIFFERS from zero' : 'DIFFERS beyond any per cent';
  if (Math.abs(difference) <= tolerancePct + 100 * SLACK) return 'agrees';
  const bothNumbers = designer.kind === 'number' && checker.kind === 'number';
  return bothNumbers ? `DIFFERS ${difference < 0 ? '-' : '+'}${percent(difference)} %` : `DIFFERS by ${percent(difference)} %`;
}

export interface Finding {
  /** "agrees", or what is the matter. */
  finding: string;
  differencePct?: number | undefined;
}

/** Two cells of a sheet compared: a blank is a finding and no error, and so is an error in a cell. */
export function compareCells(designer: SheetCell, checker: SheetCell, tolerancePct: number, floor: number, work: Working = silent): Finding {
  if (isError(designer) || isError(checker)) return { finding: 'error in a cell' };
  if (designer === null && checker === null) return { finding: 'both are missing' };
  if (designer === null || checker === null) return { finding: 'one is missing' };
  const [d, c] = [compared(designer), compared(checker)];
  return { finding: agreement(d, c, tolerancePct, floor), differencePct: differencePct(d, c, work) };
}

const isError = (cell: SheetCell): cell is { readonly code: string } => typeof cell === 'object' && cell !== null;
