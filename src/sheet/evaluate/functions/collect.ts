import type { Cell } from '../../../functions/kernel/cell';
import { isError } from '../errors';
import { Reference, Union } from '../references';
import { type Value, dereference, isArray, isReferenceLike, toNumber } from '../values';

/** Every cell of a value, row by row, without building an array of a reference. */
export function forEachCell(value: Value, visit: (cell: Cell) => void): void {
  if (value instanceof Union) return value.areas.forEach((area) => forEachCell(area, visit));
  if (value instanceof Reference) {
    const { rows, columns } = value.filled();
    for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) visit(value.at(row, column));
    return;
  }
  const cells = dereference(value);
  if (!isArray(cells)) return visit(cells);
  for (const row of cells) for (const cell of row) visit(cell);
}

/**
 * The numbers of some arguments, as SUM takes them: in ranges and arrays text, truth values and blanks do not count;
 * given directly they are read as numbers. The first error is thrown.
 */
export function forEachNumber(args: Value[], visit: (value: number) => void): void {
  for (const arg of args) {
    if (!isReferenceLike(arg) && !isArray(arg)) {
      visit(toNumber(dereference(arg) as Cell));
      continue;
    }
    forEachCell(arg, (cell) => {
      if (typeof cell === 'number') visit(cell);
      else if (isError(cell)) throw cell;
    });
  }
}

export function numbersOf(args: Value[]): number[] {
  const numbers: number[] = [];
  forEachNumber(args, (value) => numbers.push(value));
  return numbers;
}

/** As numbersOf, but in ranges text counts as 0 and truth values as 0 and 1 (AVERAGEA, MAXA …). */
export function numbersWithTexts(args: Value[]): number[] {
  const numbers: number[] = [];
  for (const arg of args) {
    if (!isReferenceLike(arg) && !isArray(arg)) numbers.push(toNumber(dereference(arg) as Cell));
    else {
      forEachCell(arg, (cell) => {
        if (isError(cell)) throw cell;
        if (cell !== null) numbers.push(typeof cell === 'string' ? 0 : Number(cell));
      });
    }
  }
  return numbers;
}
