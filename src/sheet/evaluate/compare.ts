import type { Cell } from '../../functions/kernel/cell';
import { isError } from './errors';
import { to15Digits } from './number-text';

/** Excel's order of kinds: numbers before text before truth values. */
export const kindRank = (cell: Cell): number => {
  switch (typeof cell) {
    case 'number': return 0;
    case 'string': return 1;
    case 'boolean': return 2;
    default: return 3;
  }
};

/** Two numbers that agree in 15 digits are equal; farther apart than that, rounding cannot change their order. */
export function compareNumbers(a: number, b: number): number {
  if (a === b) return 0;
  if (Math.abs(a - b) <= 1e-14 * Math.max(Math.abs(a), Math.abs(b))) {
    const [x, y] = [to15Digits(a), to15Digits(b)];
    return x < y ? -1 : x > y ? 1 : 0;
  }
  return a < b ? -1 : 1;
}

const compareTexts = (a: string, b: string): number => {
  if (a === b) return 0;
  const [x, y] = [a.toLowerCase(), b.toLowerCase()];
  return x < y ? -1 : x > y ? 1 : 0;
};

/** A blank beside a value stands for 0, "" or FALSE, whichever is of the other's kind. */
const blankBeside = (other: Cell): Cell => (typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0);

/** Negative, 0 or positive, in Excel's order; an error on either side is thrown. */
export function compare(a: Cell, b: Cell): number {
  if (typeof a === 'number' && typeof b === 'number') return compareNumbers(a, b);
  if (isError(a)) throw a;
  if (isError(b)) throw b;
  const left = a ?? blankBeside(b);
  const right = b ?? blankBeside(a);
  const byKind = kindRank(left) - kindRank(right);
  if (byKind !== 0) return byKind;
  if (typeof left === 'string') return compareTexts(left, right as string);
  return compareNumbers(Number(left), Number(right));
}

/** Equal in kind and value, as lookups ask; a blank or an error equals nothing. */
export const sameKindAndValue = (a: Cell, b: Cell): boolean =>
  a !== null && b !== null && !isError(a) && !isError(b) && kindRank(a) === kindRank(b) && compare(a, b) === 0;
