import type { Cell } from '../../../functions/kernel/cell';
import { isError, raise } from '../errors';
import { Reference } from '../references';
import { type Value, cellOf, finite, matrixOf, sizeOf } from '../values';
import { criterion } from './criteria';
import { ANY, type FunctionTable, type WholeFunction, whole } from './definition';

/** A range that is tested or summed, cell by cell; beyond its filled part all is blank. */
interface List {
  rows: number;
  columns: number;
  filledRows: number;
  filledColumns: number;
  at: (row: number, column: number) => Cell;
}

function listOf(value: Value): List {
  if (value instanceof Reference) {
    const filled = value.filled();
    return { ...sizeOf(value), filledRows: filled.rows, filledColumns: filled.columns, at: (row, column) => value.at(row, column) };
  }
  const matrix = matrixOf(value);
  const { rows, columns } = sizeOf(matrix);
  return { rows, columns, filledRows: rows, filledColumns: columns, at: (row, column) => matrix[row]?.[column] ?? null };
}

/** The range to sum takes the size of the range that is tested, from its own top left. */
function resized(value: Value, like: List): Value {
  if (!(value instanceof Reference)) return value;
  return value.moved(value.top, value.left, value.top + like.rows - 1, value.left + like.columns - 1);
}

function criteriaOf(args: Value[]): [List, (cell: Cell) => boolean][] {
  const pairs: [List, (cell: Cell) => boolean][] = [];
  if (args.length % 2 !== 0) raise('#VALUE!', 'a criterion is missing');
  for (let index = 0; index < args.length; index += 2) pairs.push([listOf(args[index]), criterion(cellOf(args[index + 1]))]);
  const [first] = pairs[0]!;
  if (pairs.some(([list]) => list.rows !== first.rows || list.columns !== first.columns)) raise('#VALUE!', 'the ranges differ in size');
  return pairs;
}

/** Calls back for each place where all criteria are met; returns how many places past everything filled meet them too. */
function eachMatch(pairs: [List, (cell: Cell) => boolean][], visit: (row: number, column: number) => void, summed?: List): number {
  const [first] = pairs[0]!;
  const lists = [...pairs.map(([list]) => list), ...(summed ? [summed] : [])];
  const rows = Math.max(...lists.map((list) => list.filledRows));
  const columns = Math.max(...lists.map((list) => list.filledColumns));
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (pairs.every(([list, test]) => test(list.at(row, column)))) visit(row, column);
    }
  }
  return pairs.every(([, test]) => test(null)) ? first.rows * first.columns - rows * columns : 0;
}

function countMatches(args: Value[]): number {
  let count = 0;
  const beyond = eachMatch(criteriaOf(args), () => { count++; });
  return count + beyond;
}

/** The numbers of a range where the criteria are met. */
function matching(range: Value, args: Value[], takesSizeOfTested: boolean): number[] {
  const pairs = criteriaOf(args);
  const [tested] = pairs[0]!;
  const list = listOf(takesSizeOfTested ? resized(range, tested) : range);
  if (!takesSizeOfTested && (list.rows !== tested.rows || list.columns !== tested.columns)) raise('#VALUE!', 'the ranges differ in size');
  const numbers: number[] = [];
  eachMatch(pairs, (row, column) => {
    const cell = list.at(row, column);
    if (isError(cell)) throw cell;
    if (typeof cell === 'number') numbers.push(cell);
  }, list);
  return numbers;
}

type Summary = (numbers: number[]) => number;
const total: Summary = (numbers) => finite(numbers.reduce((sum, x) => sum + x, 0));
const average: Summary = (numbers) => (numbers.length === 0 ? raise('#DIV/0!', 'no number meets the criteria') : total(numbers) / numbers.length);
const greatest: Summary = (numbers) => numbers.reduce((best, x) => Math.max(best, x), numbers[0] ?? 0);
const least: Summary = (numbers) => numbers.reduce((best, x) => Math.min(best, x), numbers[0] ?? 0);

const one = (summary: Summary): WholeFunction =>
  whole([2, 3], ([tested, asked, range]) => summary(matching(range ?? tested, [tested, asked], true)), { single: [1], takesErrors: true, emptyIsDefault: true });
const several = (summary: Summary): WholeFunction =>
  whole([3, ANY], ([range, ...args]) => summary(matching(range, args, false)), { single: (index) => index > 0 && index % 2 === 0, takesErrors: true });

export const conditionalFunctions: FunctionTable = {
  COUNTIF: whole([2, 2], countMatches, { single: [1], takesErrors: true }),
  COUNTIFS: whole([2, ANY], countMatches, { single: (index) => index % 2 === 1, takesErrors: true }),
  SUMIF: one(total),
  SUMIFS: several(total),
  AVERAGEIF: one(average),
  AVERAGEIFS: several(average),
  MAXIFS: several(greatest),
  MINIFS: several(least),
};
