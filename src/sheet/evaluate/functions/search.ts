import type { Cell } from '../../../functions/kernel/cell';
import { compare, kindRank, sameKindAndValue } from '../compare';
import { isError, raise } from '../errors';
import { Reference } from '../references';
import { type Value, matrixOf } from '../values';
import { Wildcard, hasWildcards } from '../wildcards';

/** A row or column that is looked through; a reference is read only as far as the search goes. */
export interface Line {
  length: number;
  at: (index: number) => Cell;
}

/** One row or one column as a line; undefined for a block. */
export function lineOf(value: Value): Line & { isColumn: boolean } | undefined {
  if (value instanceof Reference) {
    const { rows, columns } = value.filled();
    if (value.columns === 1) return { isColumn: true, length: rows, at: (index) => value.at(index, 0) };
    return value.rows === 1 ? { isColumn: false, length: columns, at: (index) => value.at(0, index) } : undefined;
  }
  const matrix = matrixOf(value);
  if (matrix[0]!.length === 1) return { isColumn: true, length: matrix.length, at: (index) => matrix[index]![0]! };
  return matrix.length === 1 ? { isColumn: false, length: matrix[0]!.length, at: (index) => matrix[0]![index]! } : undefined;
}

/** First column or row of a table. */
export function edgeOf(table: Value, edge: 'column' | 'row'): Line {
  if (table instanceof Reference) {
    const { rows, columns } = table.filled();
    return edge === 'column' ? { length: rows, at: (index) => table.at(index, 0) } : { length: columns, at: (index) => table.at(0, index) };
  }
  const matrix = matrixOf(table);
  return edge === 'column'
    ? { length: matrix.length, at: (index) => matrix[index]![0]! }
    : { length: matrix[0]!.length, at: (index) => matrix[0]![index]! };
}

/** Test of a cell against a value looked for; text may hold wildcards where the function takes them. */
export function matcher(wanted: Cell, wildcards: boolean): (cell: Cell) => boolean {
  if (isError(wanted)) throw wanted;
  const asked = wanted ?? 0;
  if (wildcards && typeof asked === 'string' && hasWildcards(asked)) {
    const pattern = new Wildcard(asked);
    return (cell) => typeof cell === 'string' && pattern.matches(cell);
  }
  if (typeof asked === 'number') return (cell) => typeof cell === 'number' && (cell === asked || compare(cell, asked) === 0);
  return (cell) => sameKindAndValue(cell, asked);
}

/** Index of the first (or last) cell equal to the value, -1 if none. */
export function findEqual(wanted: Cell, line: Line, wildcards: boolean, fromEnd = false): number {
  const matches = matcher(wanted, wildcards);
  if (fromEnd) {
    for (let index = line.length - 1; index >= 0; index--) if (matches(line.at(index))) return index;
    return -1;
  }
  for (let index = 0; index < line.length; index++) if (matches(line.at(index))) return index;
  return -1;
}

/** Last cell not above the value in a rising line, by halving as Excel does; cells of other kinds are stepped over. */
export function findSorted(wanted: Cell, line: Line): number {
  if (isError(wanted)) throw wanted;
  const asked = wanted ?? 0;
  const kind = kindRank(asked);
  let low = 0;
  let high = line.length - 1;
  let best = -1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    let probe = middle;
    while (probe >= low && kindRank(line.at(probe)) !== kind) probe--;
    if (probe < low) {
      low = middle + 1;
      continue;
    }
    if (compare(line.at(probe), asked) <= 0) {
      best = probe;
      low = middle + 1;
    } else high = probe - 1;
  }
  return best;
}

/** Smallest value at or above the one looked for in a falling line, up to the first that breaks the order. */
export function findFalling(wanted: Cell, line: Line): number {
  if (isError(wanted)) throw wanted;
  const asked = wanted ?? 0;
  let best = -1;
  for (let index = 0; index < line.length; index++) {
    const cell = line.at(index);
    if (kindRank(cell) !== kindRank(asked)) continue;
    const side = compare(cell, asked);
    if (side < 0) break;
    best = index;
    if (side === 0) break;
  }
  return best;
}

/** Nearest cell below (-1) or above (+1) the value in any order; an equal one wins. */
export function findNearest(wanted: Cell, line: Line, side: -1 | 1, fromEnd: boolean): number {
  const asked = wanted ?? 0;
  let best = -1;
  let bestCell: Cell = null;
  for (let step = 0; step < line.length; step++) {
    const index = fromEnd ? line.length - 1 - step : step;
    const cell = line.at(index);
    if (cell === null || isError(cell) || kindRank(cell) !== kindRank(asked)) continue;
    const order = compare(cell, asked);
    if (order === 0) return index;
    if (Math.sign(order) === side && (best < 0 || Math.sign(compare(cell, bestCell)) === -side)) {
      best = index;
      bestCell = cell;
    }
  }
  return best;
}

/** Match of XLOOKUP and XMATCH: mode 0 equal, -1 or next below, 1 or next above, 2 wildcards; search 1, -1 from the end, ±2 sorted. */
export function findExtended(wanted: Cell, line: Line, mode: number, search: number): number {
  if (isError(wanted)) throw wanted;
  if (![0, -1, 1, 2].includes(mode)) raise('#VALUE!', `there is no match mode ${mode}`);
  if (![1, -1, 2, -2].includes(search)) raise('#VALUE!', `there is no search mode ${search}`);
  // A sorted list searched in order gives the same place; only its speed would differ.
  const fromEnd = search === -1;
  if (mode === 0 || mode === 2) return findEqual(wanted, line, mode === 2, fromEnd);
  return findNearest(wanted, line, mode as -1 | 1, fromEnd);
}
