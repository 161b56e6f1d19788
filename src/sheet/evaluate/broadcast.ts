import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { trapped } from './errors';
import { boundedArray } from './limits';
import { isArray } from './values';

const notThere = new CellError('#N/A', 'the arrays differ in size');

/** The cell of an argument that belongs to a place of the result: single rows, columns and cells repeat. */
function placed(value: Cell | Matrix, row: number, column: number): Cell {
  if (!isArray(value)) return value;
  const cells = value.length === 1 ? value[0] : value[row];
  if (cells === undefined) return notThere;
  const cell = cells.length === 1 ? cells[0] : cells[column];
  return cell === undefined ? notThere : cell;
}

/** Applies a function of cells to arrays place by place; the error of one place stays in that place. */
export function broadcast(apply: (cells: Cell[]) => Cell, values: (Cell | Matrix)[]): Cell | Matrix {
  if (!values.some(isArray)) return apply(values as Cell[]);
  let rows = 1;
  let columns = 1;
  for (const value of values) {
    if (!isArray(value)) continue;
    rows = Math.max(rows, value.length);
    columns = Math.max(columns, value[0]?.length ?? 0);
  }
  boundedArray(rows, columns);
  const result: Matrix = [];
  for (let row = 0; row < rows; row++) {
    const cells: Cell[] = [];
    for (let column = 0; column < columns; column++) {
      try {
        cells.push(apply(values.map((value) => placed(value, row, column))));
      } catch (thrown) {
        cells.push(trapped(thrown));
      }
    }
    result.push(cells);
  }
  return result;
}
