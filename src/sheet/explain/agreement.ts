import { parseComplex } from '../../core/complex';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';

/** Rounding of the last digits, as a program that stores 15 of them leaves it. */
const SLACK = 1e-9;

const near = (a: number, b: number): boolean => Math.abs(a - b) <= SLACK * Math.max(Math.abs(a), Math.abs(b));

function sameCell(shown: Cell | undefined, worked: Cell | undefined): boolean {
  const [a, b] = [shown ?? '', worked ?? ''];
  if (a instanceof CellError || b instanceof CellError) return a instanceof CellError && b instanceof CellError && a.code === b.code;
  if (typeof a === 'number' && typeof b === 'number') return near(a, b);
  if (typeof a !== 'string' || typeof b !== 'string') return a === b;
  if (a === b) return true;
  const [z, w] = [parseComplex(a), parseComplex(b)];
  return z !== undefined && w !== undefined && near(z.re, w.re) && near(z.im, w.im);
}

/** The cell of a spill at a place in it; of a single value itself. */
export const partOf = (value: Cell | Matrix, part: readonly [number, number] | undefined): Cell | Matrix =>
  part === undefined || !Array.isArray(value) ? value : value[part[0]]?.[part[1]] ?? '';

/** Whether what a cell shows is what its formula gives now. */
export function sameValue(shown: Cell | Matrix, worked: Cell | Matrix): boolean {
  // A host may hand over the first cell of a spill only.
  const first = (value: Cell | Matrix): Cell | undefined => (Array.isArray(value) ? value[0]?.[0] : value);
  if (!Array.isArray(shown) || !Array.isArray(worked)) return sameCell(first(shown), first(worked));
  return shown.length === worked.length && shown.every((row, r) => row.length === worked[r]!.length && row.every((cell, c) => sameCell(cell, worked[r]![c])));
}
