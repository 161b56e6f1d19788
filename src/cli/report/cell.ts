import { rounded } from '../../core/figure';
import type { JsonCell } from '../cell-text';
import { oneLine } from '../terminal';

/** A value in a report: figures to six digits, errors by their code, text in quotes where it would not be told from a figure. */
export function shownCell(cell: JsonCell): string {
  if (cell === null) return '(nothing)';
  if (typeof cell === 'object') return cell.error;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (typeof cell === 'number') return rounded(cell, 6);
  return /^\s*[-+\d.,]+\s*$|^\s|\s$|^$/.test(cell) ? `"${oneLine(cell)}"` : oneLine(cell);
}

/** Per cent, signed; '' where it says nothing. */
export const shownDifference = (difference: number | null): string =>
  difference === null ? '' : `${difference > 0 ? '+' : ''}${rounded(difference, 3)} %`;
