import { isError, raise } from '../errors';
import { boundedArray } from '../limits';
import { type Value, cellOf, finite, matrixOf, toWhole } from '../values';
import { forEachNumber, numbersOf } from './collect';
import { type FunctionTable, whole } from './definition';

/** Larger ones would take minutes. */
const LARGEST = 200;

function numbers(value: Value): number[][] {
  return matrixOf(value).map((row) => row.map((cell) => {
    if (isError(cell)) throw cell;
    return typeof cell === 'number' ? cell : raise('#VALUE!', 'a matrix takes numbers only, no text and no blanks');
  }));
}

function square(value: Value): number[][] {
  const matrix = numbers(value);
  if (matrix.length !== matrix[0]!.length) return raise('#VALUE!', `the matrix is not square: ${matrix.length} × ${matrix[0]!.length}`);
  return matrix.length <= LARGEST ? matrix : raise('#NUM!', `a matrix over ${LARGEST} × ${LARGEST} is not taken here`);
}

function multiply([first, second]: Value[]): number[][] {
  const [a, b] = [numbers(first), numbers(second)];
  if (a[0]!.length !== b.length) return raise('#VALUE!', `${a[0]!.length} columns do not fit ${b.length} rows`);
  boundedArray(a.length, b[0]!.length);
  return a.map((row) => b[0]!.map((_, column) => finite(row.reduce((sum, x, at) => sum + x * b[at]![column]!, 0))));
}

/** Gauss elimination with the largest pivot; the right-hand columns follow along. Returns the determinant, 0 where there is none. */
function eliminate(matrix: number[][], right: number[][]): number {
  let determinant = 1;
  for (let step = 0; step < matrix.length; step++) {
    let best = step;
    for (let row = step + 1; row < matrix.length; row++) if (Math.abs(matrix[row]![step]!) > Math.abs(matrix[best]![step]!)) best = row;
    const pivot = matrix[best]![step]!;
    if (pivot === 0) return 0;
    if (best !== step) {
      [matrix[step], matrix[best]] = [matrix[best]!, matrix[step]!];
      [right[step], right[best]] = [right[best]!, right[step]!];
      determinant = -determinant;
    }
    determinant *= pivot;
    for (let row = 0; row < matrix.length; row++) {
      const factor = row === step ? 0 : matrix[row]![step]! / pivot;
      if (factor === 0) continue;
      matrix[row] = matrix[row]!.map((x, column) => x - factor * matrix[step]![column]!);
      right[row] = right[row]!.map((x, column) => x - factor * right[step]![column]!);
    }
  }
  return determinant;
}

const unit = (size: number): number[][] => Array.from({ length: size }, (_, row) => Array.from({ length: size }, (__, column) => (row === column ? 1 : 0)));

function inverse(value: Value): number[][] {
  const matrix = square(value);
  const right = unit(matrix.length);
  if (eliminate(matrix, right) === 0) return raise('#NUM!', 'the matrix has no inverse');
  return right.map((row, at) => row.map((x) => finite(x / matrix[at]![at]!)));
}

function unitMatrix(size: number): number[][] {
  if (size < 1) return raise('#VALUE!', 'a matrix has at least one row');
  boundedArray(size, size);
  return unit(size);
}

/** Counts of the numbers up to each limit, and of those past the last. */
function frequency([data, limits]: Value[]): number[][] {
  const bins = numbersOf([limits]).map((limit, place) => ({ limit, place })).sort((a, b) => a.limit - b.limit);
  const counts = Array<number>(bins.length + 1).fill(0);
  forEachNumber([data], (x) => {
    const bin = bins.find(({ limit }) => x <= limit);
    counts[bin ? bin.place : bins.length]!++;
  });
  return counts.map((count) => [count]);
}

export const matrixFunctions: FunctionTable = {
  MMULT: whole([2, 2], multiply, { arrays: true }),
  MDETERM: whole([1, 1], ([value]) => finite(eliminate(square(value), unit(matrixOf(value).length))), { arrays: true }),
  MINVERSE: whole([1, 1], ([value]) => inverse(value), { arrays: true }),
  MUNIT: whole([1, 1], ([size]) => unitMatrix(toWhole(cellOf(size))), { single: [0] }),
  FREQUENCY: whole([2, 2], frequency, { arrays: true }),
};
