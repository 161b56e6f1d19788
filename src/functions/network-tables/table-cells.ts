import { outOfRange, missing } from '../../core/refusal';
import { type Argument, type Cell, type Matrix, isMatrix } from '../kernel/cell';
import type { Reading } from '../kernel/kind';
import { isBlankCell } from '../kernel/scalar';

/** A table as the host handed it over: rows as they stand, blank ones at the end left away. */
export interface TableCells {
  /** Name of the argument, for messages. */
  readonly name: string;
  readonly rows: Matrix;
  readonly reading: Reading;
}

/** Greatest number of rows; more is a whole sheet selected by mistake. */
const MOST_ROWS = 200_000;

/** Blank, or a 0 that may be a blank where the host cannot tell them apart. */
const perhapsBlank = (cell: Cell | undefined, reading: Reading): boolean => isBlankCell(cell) || (cell === 0 && reading.blankArrivesAsZero);

export function tableCells(argument: Argument, name: string, reading: Reading): TableCells {
  const matrix: Matrix = isMatrix(argument) ? argument : [[argument ?? null]];
  let count = matrix.length;
  while (count > 0 && matrix[count - 1]!.every((cell) => perhapsBlank(cell, reading))) count -= 1;
  if (count === 0) throw missing(name);
  if (count > MOST_ROWS) throw outOfRange(name, `${count} rows, takes up to ${MOST_ROWS}`);
  return { name, rows: matrix.slice(0, count), reading };
}
