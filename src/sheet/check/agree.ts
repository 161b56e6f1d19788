import { parseComplex } from '../../core/complex';
import type { Cell } from '../../functions/kernel/cell';
import { sameValue } from '../book';

/** How far a stored value may stand from the computed one, as a part of it. One part in 10⁹ covers how programs write figures. */
export const LEAST_TOLERANCE = 1e-9;

const complexOf = (cell: Cell) => (typeof cell === 'string' && /[ij]\s*$/.test(cell) ? parseComplex(cell) : undefined);

/** Difference of a stored value from the computed one in parts of it; undefined where neither is a figure. */
export function relativeDifference(stored: Cell, computed: Cell): number | undefined {
  if (typeof stored === 'number' && typeof computed === 'number') return stored === computed ? 0 : (stored - computed) / Math.abs(computed);
  const [z, w] = [complexOf(stored), complexOf(computed)];
  return z && w ? z.sub(w).abs() / w.abs() : undefined;
}

/** What is left of terms that cancel but for their last bits, where one program says 0 and another does not. */
const RESIDUE = 1e-12;

const isResidue = (a: Cell, b: Cell): boolean => typeof a === 'number' && typeof b === 'number' && Math.max(Math.abs(a), Math.abs(b)) <= RESIDUE;

/** Whether a stored value agrees with the computed one. A formula that gives empty text may be stored as nothing. */
export function agrees(stored: Cell, computed: Cell, tolerance: number): boolean {
  if (sameValue(stored, computed) || (stored === null && computed === '') || isResidue(stored, computed)) return true;
  const difference = relativeDifference(stored, computed);
  return difference !== undefined && Math.abs(difference) <= Math.max(tolerance, LEAST_TOLERANCE);
}
