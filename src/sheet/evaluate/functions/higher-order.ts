import type { Cell, Matrix } from '../../../functions/kernel/cell';
import { attempt, raise } from '../errors';
import { lambdaOf } from '../lambda';
import { boundedArray } from '../limits';
import { type Value, cellOf, matrixOf, toWhole } from '../values';
import { ANY, type FunctionTable, whole } from './definition';
import { filler, transpose } from './shape';

/** One cell of a result: an array inside an array is an error in Excel. */
function oneCell(compute: () => Value): Cell {
  return attempt(() => {
    const matrix = matrixOf(compute());
    return matrix.length === 1 && matrix[0]!.length === 1 ? matrix[0]![0]! : raise('#CALC!', 'the LAMBDA gave an array where one value belongs');
  });
}

function map(args: Value[]): Matrix {
  const arrays = args.slice(0, -1).map((value) => matrixOf(value));
  const call = lambdaOf(args[args.length - 1], arrays.length, 'MAP');
  const rows = Math.max(...arrays.map((matrix) => matrix.length));
  const columns = Math.max(...arrays.map((matrix) => matrix[0]!.length));
  boundedArray(rows, columns);
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => {
    const cells = arrays.map((matrix) => (matrix[row] === undefined || column >= matrix[row].length ? filler : matrix[row][column]!));
    return oneCell(() => call(...cells));
  }));
}

function reduce([start, array, lambda]: Value[]): Value {
  const call = lambdaOf(lambda, 2, 'REDUCE');
  let result = start ?? null;
  for (const cell of matrixOf(array).flat()) result = attempt(() => call(result, cell)) ?? null;
  return result;
}

function scan([start, array, lambda]: Value[]): Matrix {
  const call = lambdaOf(lambda, 2, 'SCAN');
  let result: Value = start ?? null;
  return matrixOf(array).map((row) => row.map((cell) => {
    const before = result;
    result = oneCell(() => call(before, cell));
    return result;
  }));
}

function makeArray([rowCount, columnCount, lambda]: Value[]): Matrix {
  const [rows, columns] = [toWhole(cellOf(rowCount)), toWhole(cellOf(columnCount))];
  if (rows < 1 || columns < 1) return raise('#VALUE!', 'an array has at least one row and one column');
  boundedArray(rows, columns);
  const call = lambdaOf(lambda, 2, 'MAKEARRAY');
  return Array.from({ length: rows }, (_, row) => Array.from({ length: columns }, (__, column) => oneCell(() => call(row + 1, column + 1))));
}

const byRow = (matrix: Matrix, call: (row: Matrix) => Value): Matrix => matrix.map((row) => [oneCell(() => call([row]))]);

export const higherOrderFunctions: FunctionTable = {
  MAP: whole([2, ANY], map, { arrays: true }),
  REDUCE: whole([3, 3], reduce, { arrays: true, emptyIsDefault: true }),
  SCAN: whole([3, 3], scan, { arrays: true, emptyIsDefault: true }),
  MAKEARRAY: whole([3, 3], makeArray, { arrays: true }),
  BYROW: whole([2, 2], ([array, lambda]) => byRow(matrixOf(array), lambdaOf(lambda, 1, 'BYROW')), { arrays: true }),
  BYCOL: whole([2, 2], ([array, lambda]) => {
    const call = lambdaOf(lambda, 1, 'BYCOL');
    return transpose(byRow(transpose(matrixOf(array)), (row) => call(transpose(row))));
  }, { arrays: true }),
  ISOMITTED: whole([1, 1], ([value]) => value === undefined, { emptyIsDefault: true }),
};

