import * as formulajs from '@formulajs/formulajs';
import { CellError, type ErrorCode } from '../../../functions/kernel/cell';
import { raise } from '../errors';
import { type Value, cellOf, finite, toNumber, toTruth } from '../values';
import { numbersOf } from './collect';
import { type Arity, type FunctionTable, type WholeFunction, whole } from './definition';

/**
 * Functions that a library computes. Only those stand here whose results were held against the examples of Excel's
 * help pages; the library as a whole differs from Excel in too many places to be let through unseen.
 */
type Kind = 'number' | 'truth' | 'list';
type Compute = (...args: unknown[]) => unknown;

const CODES: readonly string[] = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'];

function readArgument(value: Value, kind: Kind): unknown {
  if (value === undefined) return undefined;
  if (kind === 'list') return numbersOf([value]);
  return kind === 'truth' ? toTruth(cellOf(value)) : toNumber(cellOf(value));
}

function resultOf(result: unknown): number {
  if (typeof result === 'number') return finite(result);
  if (result instanceof Error && CODES.includes(result.message)) throw new CellError(result.message as ErrorCode, 'these figures have no solution');
  return raise('#NUM!', 'these figures have no solution');
}

/** `needed` arguments, then optional ones; `rest` lets the last kind repeat. */
function borrowed(compute: Compute, arity: Arity, kinds: readonly Kind[], check?: (args: unknown[], result: number) => boolean): WholeFunction {
  return whole(arity, (args) => {
    const read = args.map((value, index) => readArgument(value, kinds[Math.min(index, kinds.length - 1)]!));
    const result = resultOf(compute(...read));
    return check && !check(read, result) ? raise('#NUM!', 'these figures have no solution') : result;
  }, { single: (index) => kinds[Math.min(index, kinds.length - 1)] !== 'list', emptyIsDefault: true });
}

const numbers = (count: number): Kind[] => Array.from({ length: count }, () => 'number');

/** An iteration that ends anywhere but at a root must not pass for a result. */
const CLOSE = 1e-6;
const nearZero = (terms: number[]): boolean => {
  const size = terms.reduce((sum, term) => sum + Math.abs(term), 0);
  return Math.abs(terms.reduce((sum, term) => sum + term, 0)) <= CLOSE * size;
};

function isRate([periods, payment, present, future = 0, due = 0]: unknown[], rate: number): boolean {
  const [n, pmt, pv, fv, type] = [periods, payment, present, future, due] as number[] as [number, number, number, number, number];
  if (!(rate > -1)) return false;
  const growth = (1 + rate) ** n;
  const annuity = Math.abs(rate) < 1e-9 ? n : (growth - 1) / rate;
  return nearZero([pv * growth, pmt * (1 + rate * type) * annuity, fv]);
}

function isInternalRate([flows]: unknown[], rate: number): boolean {
  return rate > -1 && nearZero((flows as number[]).map((flow, period) => flow / (1 + rate) ** period));
}

function isDatedRate([flows, dates]: unknown[], rate: number): boolean {
  const days = dates as number[];
  return rate > -1 && nearZero((flows as number[]).map((flow, index) => flow / (1 + rate) ** ((days[index]! - days[0]!) / 365)));
}

/** The library's ERF leaves its second limit out of account. */
function errorFunction(lower: number, upper: number | undefined): number {
  const from = formulajs.ERF(lower) as number;
  return upper === undefined ? from : (formulajs.ERF(upper) as number) - from;
}

/** Far out the library's ERFC loses its digits: there the continued fraction of the function, from its far end. */
function complementaryErrorFunction(x: number): number {
  if (x < 2) return 1 - (formulajs.ERF(x) as number);
  let fraction = x;
  for (let term = 100; term >= 1; term--) fraction = x + term / 2 / fraction;
  return Math.exp(-x * x) / Math.sqrt(Math.PI) / fraction;
}

const erfc = borrowed(complementaryErrorFunction as Compute, [1, 1], numbers(1));
const normal = (compute: Compute, kinds: readonly Kind[]): WholeFunction => borrowed(compute, [kinds.length, kinds.length], kinds);
const normDist = normal(formulajs.NORMDIST as Compute, ['number', 'number', 'number', 'truth']);
const normInv = normal(formulajs.NORMINV as Compute, numbers(3));
const normSInv = normal(formulajs.NORMSINV as Compute, numbers(1));
const gammaLn = borrowed(formulajs.GAMMALN as Compute, [1, 1], numbers(1));

export const longTailFunctions: FunctionTable = {
  PMT: borrowed(formulajs.PMT as Compute, [3, 5], numbers(5)),
  PV: borrowed(formulajs.PV as Compute, [3, 5], numbers(5)),
  FV: borrowed(formulajs.FV as Compute, [3, 5], numbers(5)),
  NPER: borrowed(formulajs.NPER as Compute, [3, 5], numbers(5)),
  RATE: borrowed(formulajs.RATE as Compute, [3, 6], numbers(6), isRate),
  IPMT: borrowed(formulajs.IPMT as Compute, [4, 6], numbers(6)),
  PPMT: borrowed(formulajs.PPMT as Compute, [4, 6], numbers(6)),
  CUMIPMT: borrowed(formulajs.CUMIPMT as Compute, [6, 6], numbers(6)),
  CUMPRINC: borrowed(formulajs.CUMPRINC as Compute, [6, 6], numbers(6)),
  NPV: borrowed((rate, ...flows) => formulajs.NPV(rate, ...flows.flat()), [2, 255], ['number', 'list']),
  IRR: borrowed(formulajs.IRR as Compute, [1, 2], ['list', 'number'], isInternalRate),
  MIRR: borrowed(formulajs.MIRR as Compute, [3, 3], ['list', 'number', 'number']),
  XNPV: borrowed(formulajs.XNPV as Compute, [3, 3], ['number', 'list', 'list']),
  XIRR: borrowed(formulajs.XIRR as Compute, [2, 3], ['list', 'list', 'number'], isDatedRate),
  SLN: borrowed(formulajs.SLN as Compute, [3, 3], numbers(3)),
  SYD: borrowed(formulajs.SYD as Compute, [4, 4], numbers(4)),
  DDB: borrowed(formulajs.DDB as Compute, [4, 5], numbers(5)),
  EFFECT: borrowed(formulajs.EFFECT as Compute, [2, 2], numbers(2)),
  NOMINAL: borrowed(formulajs.NOMINAL as Compute, [2, 2], numbers(2)),

  ERF: borrowed(errorFunction as Compute, [1, 2], numbers(2)),
  'ERF.PRECISE': borrowed(formulajs.ERF as Compute, [1, 1], numbers(1)),
  ERFC: erfc,
  'ERFC.PRECISE': erfc,
  GAMMALN: gammaLn,
  'GAMMALN.PRECISE': gammaLn,
  STANDARDIZE: borrowed(formulajs.STANDARDIZE as Compute, [3, 3], numbers(3)),
  NORMDIST: normDist,
  'NORM.DIST': normDist,
  NORMINV: normInv,
  'NORM.INV': normInv,
  NORMSDIST: normal((z) => formulajs.NORMSDIST(z, true), numbers(1)),
  'NORM.S.DIST': normal(formulajs.NORMSDIST as Compute, ['number', 'truth']),
  NORMSINV: normSInv,
  'NORM.S.INV': normSInv,
  'BINOM.DIST': normal(formulajs.BINOMDIST as Compute, ['number', 'number', 'number', 'truth']),
  BINOMDIST: normal(formulajs.BINOMDIST as Compute, ['number', 'number', 'number', 'truth']),
  'POISSON.DIST': normal(formulajs.POISSONDIST as Compute, ['number', 'number', 'truth']),
  POISSON: normal(formulajs.POISSONDIST as Compute, ['number', 'number', 'truth']),
  'WEIBULL.DIST': normal(formulajs.WEIBULLDIST as Compute, ['number', 'number', 'number', 'truth']),
  WEIBULL: normal(formulajs.WEIBULLDIST as Compute, ['number', 'number', 'number', 'truth']),
};
