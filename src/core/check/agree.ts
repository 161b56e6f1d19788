import { type Complex, parseComplex } from '../complex';
import { SLACK } from '../judgement';

/** A figure of a sheet as far as a comparison cares. */
export type Compared = { kind: 'number'; value: number } | { kind: 'impedance'; value: Complex } | { kind: 'words'; value: string };

const words = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, '');

/** What a value is: numbers and complex text are compared as quantities, all else as words. */
export function compared(value: number | string | boolean): Compared {
  if (typeof value === 'number') return { kind: 'number', value };
  if (typeof value === 'boolean') return { kind: 'words', value: words(String(value)) };
  const z = parseComplex(value);
  if (!z || !Number.isFinite(z.re) || !Number.isFinite(z.im)) return { kind: 'words', value: words(value) };
  return /[ij]\s*$/i.test(value) ? { kind: 'impedance', value: z } : { kind: 'number', value: z.re };
}

/** Difference of the designer's figure from the checker's, per cent; undefined where there is no per cent to state. */
export function differencePct(designer: Compared, checker: Compared): number | undefined {
  if (designer.kind === 'words' || checker.kind === 'words') return undefined;
  if (designer.kind === 'number' && checker.kind === 'number') return checker.value === 0 ? undefined : 100 * (designer.value / checker.value - 1);
  const size = asComplex(checker).abs();
  return size === 0 ? undefined : (100 * distance(designer, checker)) / size;
}

const asComplex = (figure: Exclude<Compared, { kind: 'words' }>): Complex =>
  figure.kind === 'impedance' ? figure.value : parseComplex(String(figure.value))!;

function distance(designer: Compared, checker: Compared): number {
  if (designer.kind === 'words' || checker.kind === 'words') return Infinity;
  if (designer.kind === 'number' && checker.kind === 'number') return Math.abs(designer.value - checker.value);
  return asComplex(designer).sub(asComplex(checker)).abs();
}

/** Two decimals, more where two would read as no difference at all. */
const percent = (value: number): string => {
  const size = Math.abs(value);
  return size >= 0.005 ? size.toFixed(2) : String(Number(size.toPrecision(2)));
};

/**
 * Whether the designer's figure agrees with the checker's, in words.
 * @param tolerancePct allowed difference, per cent of the checker's figure
 * @param floor        allowed difference in the figures' own unit, for values near nothing
 */
export function agreement(designer: Compared, checker: Compared, tolerancePct: number, floor: number): string {
  if (designer.kind === 'words' && checker.kind === 'words') return designer.value === checker.value ? 'agrees' : 'DIFFERS in words';
  if (designer.kind === 'words' || checker.kind === 'words') return 'DIFFERS in kind';
  const apart = distance(designer, checker);
  if (apart === 0 || apart <= floor) return 'agrees';
  const difference = differencePct(designer, checker);
  if (difference === undefined) return 'DIFFERS from zero';
  if (Math.abs(difference) <= tolerancePct + 100 * SLACK) return 'agrees';
  const bothNumbers = designer.kind === 'number' && checker.kind === 'number';
  return bothNumbers ? `DIFFERS ${difference < 0 ? '-' : '+'}${percent(difference)} %` : `DIFFERS by ${percent(difference)} %`;
}
