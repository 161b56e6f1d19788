import type { Cell } from '../../../functions/kernel/cell';
import { raise } from '../errors';
import { Reference } from '../references';
import { type Value, cellOf, matrixOf, sizeOf, toNumber, toTruth, toWhole } from '../values';
import { type FunctionTable, whole } from './definition';
import { type Line, edgeOf, findEqual, findExtended, findFalling, findSorted, lineOf } from './search';

const notFound = (): never => raise('#N/A', 'not found');
const found = (index: number): number => (index < 0 ? notFound() : index);

/** A row, a column, a cell, or all (0) of a block, by position from 1. */
export function pick(value: Value, row: number, column: number): Value {
  const { rows, columns } = sizeOf(value);
  if (row < 0 || column < 0) return raise('#VALUE!', 'positions count from 1');
  if (row > rows || column > columns) return raise('#REF!', `row ${row}, column ${column} lies outside ${rows} × ${columns} cells`);
  if (value instanceof Reference) {
    const [top, bottom] = row === 0 ? [value.top, value.bottom] : [value.top + row - 1, value.top + row - 1];
    const [left, right] = column === 0 ? [value.left, value.right] : [value.left + column - 1, value.left + column - 1];
    return value.moved(top, left, bottom, right);
  }
  const matrix = matrixOf(value);
  const kept = row > 0 ? [matrix[row - 1]!] : matrix;
  const picked = column > 0 ? kept.map((cells) => [cells[column - 1]!]) : kept;
  return picked.length === 1 && picked[0]!.length === 1 ? picked[0]![0] : picked;
}

function index(args: Value[]): Value {
  const [table, row, column, area] = args;
  const number = area === undefined ? 1 : toWhole(cellOf(area));
  const block = table !== null && typeof table === 'object' && 'areas' in table
    ? table.areas[number - 1] ?? raise('#REF!', `there is no area ${number}`)
    : number === 1 ? table : raise('#REF!', `there is no area ${number}`);
  const first = toWhole(cellOf(row));
  if (args.length > 2) return pick(block, first, toWhole(cellOf(column)));
  const { rows, columns } = sizeOf(block);
  return rows === 1 && columns > 1 ? pick(block, 1, first) : pick(block, first, columns === 1 ? 1 : 0);
}

function match([wanted, list, type]: Value[]): number {
  const line = lineOf(list) ?? raise('#N/A', 'MATCH looks through one row or one column');
  const mode = type === undefined ? 1 : toNumber(cellOf(type));
  const cell = cellOf(wanted);
  if (mode === 0) return found(findEqual(cell, line, true)) + 1;
  return found(mode > 0 ? findSorted(cell, line) : findFalling(cell, line)) + 1;
}

function tableLookup([wanted, table, position, approximate]: Value[], edge: 'column' | 'row'): Value {
  const line = edgeOf(table, edge);
  const place = toWhole(cellOf(position));
  const { rows, columns } = sizeOf(table);
  if (place < 1) return raise('#VALUE!', 'the position counts from 1');
  if (place > (edge === 'column' ? columns : rows)) return raise('#REF!', `there is no ${edge} ${place} in the table`);
  const cell = cellOf(wanted);
  const sorted = approximate === undefined || toTruth(cellOf(approximate));
  const at = found(sorted ? findSorted(cell, line) : findEqual(cell, line, true)) + 1;
  return edge === 'column' ? pick(table, at, place) : pick(table, place, at);
}

function lookup([wanted, list, results]: Value[]): Value {
  const cell = cellOf(wanted);
  if (results !== undefined) {
    const from = lineOf(list) ?? raise('#N/A', 'LOOKUP looks through one row or one column');
    const to = lineOf(results) ?? raise('#N/A', 'the results of LOOKUP are one row or one column');
    const at = found(findSorted(cell, from)) + 1;
    return pick(results, to.isColumn ? at : 1, to.isColumn ? 1 : at);
  }
  // The form with one array looks along its longer edge and answers from the last line.
  const { rows, columns } = sizeOf(list);
  const edge = columns > rows ? 'row' : 'column';
  const at = found(findSorted(cell, edgeOf(list, edge))) + 1;
  return edge === 'column' ? pick(list, at, columns) : pick(list, rows, at);
}

function extendedLookup([wanted, list, results, otherwise, mode, search]: Value[]): Value {
  const line = lineOf(list) ?? raise('#VALUE!', 'XLOOKUP looks through one row or one column');
  const [looked, given] = [sizeOf(list), sizeOf(results)];
  const fits = line.isColumn ? given.rows === looked.rows : given.columns === looked.columns;
  if (!fits) raise('#VALUE!', 'the results are not as long as the list looked through');
  const at = findExtended(cellOf(wanted), line, optional(mode, 0), optional(search, 1));
  if (at < 0) return otherwise === undefined ? notFound() : otherwise;
  return pick(results, line.isColumn ? at + 1 : 0, line.isColumn ? 0 : at + 1);
}

function extendedMatch([wanted, list, mode, search]: Value[]): number {
  const line: Line = lineOf(list) ?? raise('#VALUE!', 'XMATCH looks through one row or one column');
  return found(findExtended(cellOf(wanted), line, optional(mode, 0), optional(search, 1))) + 1;
}

const optional = (value: Value, fallback: number): number => (value === undefined ? fallback : toWhole(cellOf(value)));

const transposed = (value: Value): Cell[][] => {
  const matrix = matrixOf(value);
  return matrix[0]!.map((_, column) => matrix.map((cells) => cells[column]!));
};

export const lookupFunctions: FunctionTable = {
  INDEX: whole([2, 4], index, { single: [1, 2, 3], arrays: true }),
  MATCH: whole([2, 3], match, { single: [0, 2], arrays: true }),
  VLOOKUP: whole([3, 4], (args) => tableLookup(args, 'column'), { single: [0, 2, 3] }),
  HLOOKUP: whole([3, 4], (args) => tableLookup(args, 'row'), { single: [0, 2, 3] }),
  LOOKUP: whole([2, 3], lookup, { single: [0], arrays: true }),
  XLOOKUP: whole([3, 6], extendedLookup, { single: [0, 4, 5], arrays: true, takesErrors: true, emptyIsDefault: true }),
  XMATCH: whole([2, 4], extendedMatch, { single: [0, 2, 3], arrays: true, emptyIsDefault: true }),
  TRANSPOSE: whole([1, 1], ([value]) => transposed(value), { arrays: true }),
};
