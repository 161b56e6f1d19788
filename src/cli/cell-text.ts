import { type Cell, CellError, type Matrix } from '../functions/kernel/cell';
import { oneLine } from './terminal';

/** A cell as one line of output: `143`, `TRUE`, `pass`, `#N/A missing: csa_mm2`. */
export function cellLine(cell: Cell): string {
  if (cell === null) return '';
  if (cell instanceof CellError) return oneLine(cell.message === '' ? cell.code : `${cell.code} ${cell.message}`);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return typeof cell === 'number' ? String(cell) : oneLine(cell);
}

const element = (cell: Cell): string => {
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === 'string') return `"${oneLine(cell).replace(/"/g, '""')}"`;
  return cell === null ? '""' : cellLine(cell);
};

/** A value as one line; several cells in the form of an inline array. */
export const valueLine = (value: Cell | Matrix): string =>
  Array.isArray(value) ? `{${value.map((row) => row.map(element).join(',')).join(';')}}` : cellLine(value);

export type JsonCell = number | string | boolean | null | { error: string; message: string };

export const jsonCell = (cell: Cell): JsonCell => (cell instanceof CellError ? { error: cell.code, message: cell.message } : cell);

/** True where any cell is an error. */
export const hasError = (value: Cell | Matrix): boolean =>
  Array.isArray(value) ? value.some((row) => row.some((cell) => cell instanceof CellError)) : value instanceof CellError;
