import { parseComplex } from '../core/complex';
import { figure, rounded } from '../core/figure';
import { type Cell, CellError } from '../functions/kernel/cell';
import { roundedImpedance } from '../functions/kernel/explain';

/** A cell as a reader wants it: figures and complex text to so many digits, whole numbers in full, an error by its code. */
export function roundedCell(cell: Cell, digits: number): string {
  if (cell === null) return '';
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (typeof cell === 'number') return Number.isInteger(cell) ? figure(cell) : rounded(cell, digits);
  const z = /\d[ij]$/.test(cell) ? parseComplex(cell) : undefined;
  return z ? roundedImpedance(z, digits) : cell;
}
