import type { Cell, Matrix } from '../../../functions/kernel/cell';
import { compare } from '../compare';
import { isError, raise } from '../errors';
import { boundedArray } from '../limits';
import { type Value, cellOf, cellsOf, matrixOf, sizeOf, toNumber, toTruth, toWhole } from '../values';
import { ANY, type FunctionTable, type WholeFunction, whole } from './definition';
import { filler, padding, transpose } from './shape';

const isSet = (value: Value): boolean => value !== undefined && toTruth(cellOf(value));
const optional = (value: Value, fallback: number): number => (value === undefined ? fallback : toNumber(cellOf(value)));
const empty = (): never => raise('#CALC!', 'the array is empty');

/** Sorting order: numbers, text, truth values, errors; blanks last whichever way it goes. */
function order(a: Cell, b: Cell, direction: number): number {
  if (a === null || b === null) return a === b ? 0 : a === null ? 1 : -1;
  if (isError(a) || isError(b)) return (isError(a) && isError(b) ? 0 : isError(a) ? 1 : -1) * direction;
  return compare(a, b) * direction;
}

const direction = (value: Value): number => {
  const way = optional(value, 1);
  return way === 1 || way === -1 ? way : raise('#VALUE!', 'the order is 1 or -1');
};

function sort([array, index, way, byColumn]: Value[]): Matrix {
  const turned = isSet(byColumn);
  const rows = turned ? transpose(matrixOf(array)) : matrixOf(array);
  const keys = index === undefined ? [1] : cellsOf(index).map(toWhole);
  const ways = way === undefined ? [1] : cellsOf(way).map(direction);
  for (const key of keys) if (key < 1 || key > rows[0]!.length) raise('#VALUE!', `there is no ${turned ? 'row' : 'column'} ${key} to sort by`);
  const sorted = [...rows].sort((a, b) => {
    for (let level = 0; level < keys.length; level++) {
      const side = order(a[keys[level]! - 1]!, b[keys[level]! - 1]!, ways[level] ?? ways[0]!);
      if (side !== 0) return side;
    }
    return 0;
  });
  return turned ? transpose(sorted) : sorted;
}

function sortBy([array, ...rest]: Value[]): Matrix {
  const matrix = matrixOf(array);
  const keys: { cells: Cell[]; way: number }[] = [];
  for (let at = 0; at < rest.length; at += 2) keys.push({ cells: cellsOf(rest[at]), way: direction(rest[at + 1]) });
  const { rows, columns } = sizeOf(rest[0]);
  const byColumn = rows === 1 && columns > 1;
  const lines = byColumn ? transpose(matrix) : matrix;
  if (keys.some(({ cells }) => cells.length !== lines.length)) raise('#VALUE!', 'a list to sort by differs in length from the array');
  const places = lines.map((_, place) => place).sort((a, b) => {
    for (const { cells, way } of keys) {
      const side = order(cells[a]!, cells[b]!, way);
      if (side !== 0) return side;
    }
    return 0;
  });
  const sorted = places.map((place) => lines[place]!);
  return byColumn ? transpose(sorted) : sorted;
}

function filter([array, include, otherwise]: Value[]): Value {
  for (const value of [array, include]) if (isError(value)) throw value;
  const matrix = matrixOf(array);
  const mask = matrixOf(include);
  const byRow = mask[0]!.length === 1 && mask.length === matrix.length;
  if (!byRow && !(mask.length === 1 && mask[0]!.length === matrix[0]!.length)) {
    return raise('#VALUE!', 'what to include must be one column as long as the array, or one row as wide');
  }
  const kept = byRow
    ? matrix.filter((_, row) => toTruth(mask[row]![0]))
    : matrix.map((cells) => cells.filter((_, column) => toTruth(mask[0]![column])));
  if (kept.length > 0 && kept[0]!.length > 0) return kept;
  return otherwise === undefined ? raise('#CALC!', 'nothing is left after the filter') : otherwise;
}

const identity = (cell: Cell): string =>
  isError(cell) ? cell.code : typeof cell === 'string' ? `"${cell.toLowerCase()}` : cell === null ? '' : `${typeof cell}${cell}`;

function unique([array, byColumn, exactlyOnce]: Value[]): Matrix {
  const turned = isSet(byColumn);
  const rows = turned ? transpose(matrixOf(array)) : matrixOf(array);
  const counts = new Map<string, number>();
  const keys = rows.map((row) => JSON.stringify(row.map(identity)));
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  const seen = new Set<string>();
  const kept = rows.filter((_, place) => {
    const key = keys[place]!;
    if (isSet(exactlyOnce)) return counts.get(key) === 1;
    return seen.has(key) ? false : seen.add(key);
  });
  if (kept.length === 0) return empty();
  return turned ? transpose(kept) : kept;
}

function sequence([rowCount, columnCount, first, step]: Value[]): Matrix {
  const rows = Math.trunc(optional(rowCount, 1));
  const columns = Math.trunc(optional(columnCount, 1));
  if (rows < 0 || columns < 0) return raise('#VALUE!', 'a count below 0');
  if (rows === 0 || columns === 0) return empty();
  boundedArray(rows, columns);
  const [start, by] = [optional(first, 1), optional(step, 1)];
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => start + (row * columns + column) * by));
}

const stack = (args: Value[], downwards: boolean): Matrix => {
  const blocks = args.map((value) => matrixOf(value)).map((block) => (downwards ? block : transpose(block)));
  const width = Math.max(...blocks.map((block) => block[0]!.length));
  boundedArray(blocks.reduce((sum, block) => sum + block.length, 0), width);
  const joined = blocks.flatMap((block) => block.map((row) => [...row, ...Array<Cell>(width - row.length).fill(filler)]));
  return downwards ? joined : transpose(joined);
};

/** Keeps (or leaves out) lines from the start, or from the end where the count is negative. */
function cut(lines: number, count: Value, keep: boolean): [from: number, to: number] {
  if (count === undefined) return [0, lines];
  const wanted = toWhole(cellOf(count));
  if (keep && wanted === 0) return empty();
  const size = Math.min(Math.abs(wanted), lines);
  if (keep) return wanted > 0 ? [0, size] : [lines - size, lines];
  return wanted >= 0 ? [size, lines] : [0, lines - size];
}

const cutter = (keep: boolean): WholeFunction => whole([2, 3], ([array, rows, columns]) => {
  const matrix = matrixOf(array);
  const [top, bottom] = cut(matrix.length, rows, keep);
  const [left, right] = cut(matrix[0]!.length, columns, keep);
  if (bottom <= top || right <= left) return empty();
  return matrix.slice(top, bottom).map((row) => row.slice(left, right));
}, { single: [1, 2], arrays: true, emptyIsDefault: true });

function chooseLines(lines: Matrix, args: Value[]): Matrix {
  return args.flatMap((value) => cellsOf(value)).map((cell) => {
    const place = toWhole(cell);
    const line = place > 0 ? lines[place - 1] : place < 0 ? lines[lines.length + place] : undefined;
    return line ?? raise('#VALUE!', `there is no line ${place} among ${lines.length}`);
  });
}

/** All cells in one line; mode 1 leaves out blanks, 2 errors, 3 both. */
function inOneLine([array, ignore, byColumn]: Value[]): Cell[] {
  const mode = optional(ignore, 0);
  const matrix = isSet(byColumn) ? transpose(matrixOf(array)) : matrixOf(array);
  const kept = matrix.flat().filter((cell) => !((mode & 1) === 1 && cell === null) && !((mode & 2) === 2 && isError(cell)));
  return kept.length > 0 ? kept : empty();
}

function wrap([line, length, pad]: Value[]): Matrix {
  const cells = cellsOf(line);
  const size = toWhole(cellOf(length));
  if (size < 1) return raise('#NUM!', 'the length of a line must be 1 or more');
  const rows: Matrix = [];
  for (let at = 0; at < cells.length; at += size) {
    const row = cells.slice(at, at + size);
    rows.push([...row, ...Array<Cell>(Math.min(size, cells.length) - row.length).fill(padding(pad))]);
  }
  return rows;
}

function expand([array, rowCount, columnCount, pad]: Value[]): Matrix {
  const matrix = matrixOf(array);
  const rows = optional(rowCount, matrix.length);
  const columns = optional(columnCount, matrix[0]!.length);
  if (rows < matrix.length || columns < matrix[0]!.length) return raise('#VALUE!', 'EXPAND cannot make an array smaller');
  boundedArray(rows, columns);
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => matrix[row]?.[column] ?? (row < matrix.length && column < matrix[0]!.length ? null : padding(pad))));
}

const array = { arrays: true, emptyIsDefault: true } as const;

export const arrayFunctions: FunctionTable = {
  SORT: whole([1, 4], sort, array),
  SORTBY: whole([2, ANY], sortBy, array),
  FILTER: whole([2, 3], filter, { ...array, takesErrors: true }),
  UNIQUE: whole([1, 3], unique, array),
  SEQUENCE: whole([1, 4], sequence, array),
  VSTACK: whole([1, ANY], (args) => stack(args, true), { arrays: true, takesErrors: true }),
  HSTACK: whole([1, ANY], (args) => stack(args, false), { arrays: true, takesErrors: true }),
  TAKE: cutter(true),
  DROP: cutter(false),
  CHOOSEROWS: whole([2, ANY], ([value, ...places]) => chooseLines(matrixOf(value), places), { arrays: true }),
  CHOOSECOLS: whole([2, ANY], ([value, ...places]) => transpose(chooseLines(transpose(matrixOf(value)), places)), { arrays: true }),
  TOROW: whole([1, 3], (args) => [inOneLine(args)], array),
  TOCOL: whole([1, 3], (args) => inOneLine(args).map((cell) => [cell]), array),
  WRAPROWS: whole([2, 3], wrap, { ...array, single: [1] }),
  WRAPCOLS: whole([2, 3], (args) => transpose(wrap(args)), { ...array, single: [1] }),
  EXPAND: whole([2, 4], expand, { ...array, single: [1, 2] }),
};

