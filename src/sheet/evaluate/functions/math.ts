import { isError, raise } from '../errors';
import { power } from '../operators';
import { type Value, cellOf, finite, matrixOf, sizeOf, toNumber, toWhole } from '../values';
import { forEachNumber, numbersOf } from './collect';
import { ANY, type CellFunction, type FunctionTable, cells, whole } from './definition';

const ofNumber = (compute: (x: number) => number): CellFunction => cells([1, 1], (cell) => finite(compute(toNumber(cell))));

const needs = (isMet: boolean, words: string): void => {
  if (!isMet) raise('#NUM!', words);
};

const positive = (compute: (x: number) => number): CellFunction => ofNumber((x) => {
  needs(x > 0, 'a logarithm needs a number above 0');
  return compute(x);
});

/** Angles beyond this lose all digits; Excel refuses them. */
const WIDEST_ANGLE = 2 ** 27;
const ofAngle = (compute: (x: number) => number): CellFunction => ofNumber((x) => {
  needs(Math.abs(x) < WIDEST_ANGLE, 'the angle is too large');
  return compute(x);
});

function logarithm(x: number, base: number): number {
  needs(x > 0 && base > 0, 'a logarithm needs a number and a base above 0');
  if (base === 1) return raise('#DIV/0!', 'a logarithm to base 1');
  if (base === 10) return Math.log10(x);
  return base === 2 ? Math.log2(x) : Math.log(x) / Math.log(base);
}

function factorial(n: number): number {
  needs(n >= 0 && n <= 170, 'a factorial takes 0 to 170');
  let product = 1;
  for (let factor = 2; factor <= n; factor++) product *= factor;
  return product;
}

function combinations(n: number, k: number): number {
  needs(k >= 0 && n >= k, `${k} of ${n} cannot be chosen`);
  const fewer = Math.min(k, n - k);
  let count = 1;
  for (let step = 1; step <= fewer && Number.isFinite(count); step++) count = (count * (n - fewer + step)) / step;
  return Math.round(finite(count));
}

function permutations(n: number, k: number): number {
  needs(k >= 0 && n >= k, `${k} of ${n} cannot be arranged`);
  let count = 1;
  for (let factor = n - k + 1; factor <= n && Number.isFinite(count); factor++) count *= factor;
  return finite(count);
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

function wholeNumbers(args: Value[]): number[] {
  return numbersOf(args).map((value) => {
    needs(value >= 0 && value < 2 ** 53, 'takes numbers from 0 to 2^53');
    return Math.trunc(value);
  });
}

/** Arrays of one size, as SUMPRODUCT and its kin take them. */
function sameSized(args: Value[]): number[][] {
  const { rows, columns } = sizeOf(args[0]);
  for (const arg of args) {
    const size = sizeOf(arg);
    if (size.rows !== rows || size.columns !== columns) {
      raise('#VALUE!', `the arrays differ in size: ${rows} × ${columns} and ${size.rows} × ${size.columns}`);
    }
  }
  return args.map((arg) => matrixOf(arg).flat().map((cell) => {
    if (isError(cell)) throw cell;
    return typeof cell === 'number' ? cell : 0;
  }));
}

function sumProduct(args: Value[]): number {
  const lists = sameSized(args);
  const length = Math.min(...lists.map((list) => list.length));
  let sum = 0;
  for (let index = 0; index < length; index++) {
    let product = 1;
    for (const list of lists) product *= list[index]!;
    sum += product;
  }
  return finite(sum);
}

const sumOfPairs = (term: (x: number, y: number) => number) => whole([2, 2], (args) => {
  const [xs, ys] = sameSized(args) as [number[], number[]];
  return finite(xs.reduce((sum, x, index) => sum + term(x, ys[index] ?? 0), 0));
}, { arrays: true });

export function sum(args: Value[]): number {
  let total = 0;
  forEachNumber(args, (value) => { total += value; });
  return finite(total);
}

export function product(args: Value[]): number {
  const factors = numbersOf(args);
  return factors.length === 0 ? 0 : finite(factors.reduce((total, factor) => total * factor, 1));
}

export const mathFunctions: FunctionTable = {
  SUM: whole([1, ANY], sum),
  PRODUCT: whole([1, ANY], product),
  SUMSQ: whole([1, ANY], (args) => finite(numbersOf(args).reduce((total, x) => total + x * x, 0))),
  SUMPRODUCT: whole([1, ANY], sumProduct, { arrays: true }),
  SUMX2MY2: sumOfPairs((x, y) => x * x - y * y),
  SUMX2PY2: sumOfPairs((x, y) => x * x + y * y),
  SUMXMY2: sumOfPairs((x, y) => (x - y) ** 2),
  SERIESSUM: whole([4, 4], ([x, start, step, factors]) => finite(numbersOf([factors]).reduce(
    (total, factor, index) => total + factor * toNumber(cellOf(x)) ** (toNumber(cellOf(start)) + index * toNumber(cellOf(step))), 0)), { single: [0, 1, 2] }),

  ABS: ofNumber(Math.abs),
  SIGN: ofNumber(Math.sign),
  SQRT: ofNumber((x) => {
    needs(x >= 0, 'the square root of a negative number');
    return Math.sqrt(x);
  }),
  SQRTPI: ofNumber((x) => {
    needs(x >= 0, 'the square root of a negative number');
    return Math.sqrt(x * Math.PI);
  }),
  POWER: cells([2, 2], (base, exponent) => power(toNumber(base), toNumber(exponent))),
  EXP: ofNumber(Math.exp),
  LN: positive(Math.log),
  LOG10: positive(Math.log10),
  LOG: cells([1, 2], (x, base = 10) => finite(logarithm(toNumber(x), toNumber(base)))),
  PI: cells([0, 0], () => Math.PI),

  SIN: ofAngle(Math.sin),
  COS: ofAngle(Math.cos),
  TAN: ofAngle(Math.tan),
  ASIN: ofNumber(Math.asin),
  ACOS: ofNumber(Math.acos),
  ATAN: ofNumber(Math.atan),
  ATAN2: cells([2, 2], (x, y) => {
    const [across, up] = [toNumber(x), toNumber(y)];
    return across === 0 && up === 0 ? raise('#DIV/0!', 'the angle of a point at the origin') : Math.atan2(up, across);
  }),
  SINH: ofNumber(Math.sinh),
  COSH: ofNumber(Math.cosh),
  TANH: ofNumber(Math.tanh),
  ASINH: ofNumber(Math.asinh),
  ACOSH: ofNumber(Math.acosh),
  ATANH: ofNumber(Math.atanh),
  RADIANS: ofNumber((x) => (x * Math.PI) / 180),
  DEGREES: ofNumber((x) => (x * 180) / Math.PI),

  FACT: cells([1, 1], (n) => factorial(toWhole(n))),
  COMBIN: cells([2, 2], (n, k) => combinations(toWhole(n), toWhole(k))),
  PERMUT: cells([2, 2], (n, k) => permutations(toWhole(n), toWhole(k))),
  GCD: whole([1, ANY], (args) => wholeNumbers(args).reduce(gcd, 0)),
  LCM: whole([1, ANY], (args) => wholeNumbers(args).reduce((a, b) => (a === 0 || b === 0 ? 0 : finite((a / gcd(a, b)) * b)), 1)),
};
