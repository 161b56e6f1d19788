import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { NotSupported } from '../evaluate';
import type { Box } from '../xlsx/address';
import type { BookCell } from './cells';

/** A reason for not computing that comes from another cell. */
export class FromCell extends NotSupported {
  constructor(cause: NotSupported, readonly cell: BookCell) {
    super(cause.code, cause.message);
  }
}

/** A value as the formulas see it that read its cell. */
export const passedOn = (value: Cell, cell: BookCell): Cell => (value instanceof NotSupported && !(value instanceof FromCell) ? new FromCell(value, cell) : value);

/** Puts a result into its cell, or into all cells of its array. */
export function keep(cell: BookCell, result: Cell | Matrix, round: number): void {
  cell.round = round;
  if (!cell.array) {
    cell.value = Array.isArray(result) ? result[0]![0]! : result;
    return;
  }
  const values = spread(cell.array, result, cell.dynamic);
  for (let row = cell.array.top; row <= cell.array.bottom; row++) {
    for (let column = cell.array.left; column <= cell.array.right; column++) {
      const place = row === cell.row && column === cell.column ? cell : cell.sheet.at(row, column)!;
      if (place === cell || place.owner === cell) place.value = values(row - cell.array.top, column - cell.array.left);
    }
  }
}

/**
 * What each cell of an array's place shows. An array of fixed place repeats single rows, columns and cells, and shows #N/A past
 * its values (Excel's array formulas). One that spills has to fit the place that the file has for it.
 */
export function spread({ top, left, bottom, right }: Box, result: Cell | Matrix, dynamic: boolean): (row: number, column: number) => Cell {
  if (!Array.isArray(result)) {
    const alone = dynamic && (top !== bottom || left !== right) && !(result instanceof NotSupported);
    return alone ? () => sizeChanged(1, 1, bottom - top + 1, right - left + 1) : () => result;
  }
  const [rows, columns] = [result.length, result[0]!.length];
  if (dynamic && (rows !== bottom - top + 1 || columns !== right - left + 1)) return () => sizeChanged(rows, columns, bottom - top + 1, right - left + 1);
  const past = new CellError('#N/A', 'the array has no value for this cell');
  return (row, column) => result[rows === 1 ? 0 : row]?.[columns === 1 ? 0 : column] ?? past;
}

const sizeChanged = (rows: number, columns: number, heldRows: number, heldColumns: number): NotSupported =>
  new NotSupported('#UNSUPPORTED!', `the array has ${rows} × ${columns} cells now (rows × columns), the file holds ${heldRows} × ${heldColumns}; open and save it in a spreadsheet program`);
