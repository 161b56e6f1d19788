import { compareNumbers } from '../compare';
import { attempt, isError, raise } from '../errors';
import { type Value, cellOf, cellsOf, finite, isArray, isReferenceLike, sizeOf, toNumber, toTruth } from '../values';
import { forEachCell, forEachNumber, numbersOf, numbersWithTexts } from './collect';
import { ANY, type FunctionTable, type WholeFunction, whole } from './definition';

const none = (): never => raise('#DIV/0!', 'no number among the arguments');
const few = (): never => raise('#DIV/0!', 'too few numbers');

export const mean = (numbers: number[]): number => (numbers.length === 0 ? none() : finite(numbers.reduce((sum, x) => sum + x, 0) / numbers.length));

function squaredDeviations(numbers: number[]): number {
  const middle = mean(numbers);
  return numbers.reduce((sum, x) => sum + (x - middle) ** 2, 0);
}

const sampleVariance = (numbers: number[]): number => (numbers.length < 2 ? few() : squaredDeviations(numbers) / (numbers.length - 1));
const populationVariance = (numbers: number[]): number => (numbers.length < 1 ? few() : squaredDeviations(numbers) / numbers.length);

const ascending = (value: Value): number[] => numbersOf([value]).sort((a, b) => a - b);

/** A function of all numbers among its arguments. */
const ofNumbers = (compute: (numbers: number[]) => number, collect = numbersOf): WholeFunction =>
  whole([1, ANY], (args) => finite(compute(collect(args))));

/** A function of a list and one more figure. */
const ofListAnd = (compute: (sorted: number[], figure: number) => number): WholeFunction =>
  whole([2, 2], ([list, figure]) => {
    const sorted = ascending(list);
    return sorted.length === 0 ? raise('#NUM!', 'no number in the list') : compute(sorted, toNumber(cellOf(figure)));
  }, { single: [1] });

const extreme = (better: (a: number, b: number) => boolean, collect: (args: Value[]) => number[]): WholeFunction =>
  whole([1, ANY], (args) => {
    const numbers = collect(args);
    return numbers.length === 0 ? 0 : numbers.reduce((best, x) => (better(x, best) ? x : best));
  });

const median = (numbers: number[]): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  if (sorted.length === 0) return raise('#NUM!', 'no number among the arguments');
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
};

function mode(numbers: number[]): number {
  const counts = new Map<number, number>();
  for (const x of numbers) counts.set(x, (counts.get(x) ?? 0) + 1);
  let best: number | undefined;
  for (const [x, count] of counts) if (count > 1 && count > (best === undefined ? 1 : counts.get(best)!)) best = x;
  return best ?? raise('#N/A', 'no number occurs twice');
}

function ranked(sorted: number[], place: number): number {
  return sorted[place - 1] ?? raise('#NUM!', `there is no place ${place} among ${sorted.length} numbers`);
}

/** Value at a share of the way along the sorted list, straight between neighbours. */
function along(sorted: number[], position: number): number {
  const lower = Math.floor(position);
  const from = sorted[lower]!;
  return from + (position - lower) * ((sorted[lower + 1] ?? from) - from);
}

function percentileInclusive(sorted: number[], share: number): number {
  return share >= 0 && share <= 1 ? along(sorted, (sorted.length - 1) * share) : raise('#NUM!', 'the share must lie within 0 to 1');
}

function percentileExclusive(sorted: number[], share: number): number {
  const position = (sorted.length + 1) * share - 1;
  return position >= 0 && position <= sorted.length - 1 ? along(sorted, position) : raise('#NUM!', 'the share lies outside the numbers given');
}

const quarter = (value: number): number => {
  const part = Math.trunc(value);
  return part >= 0 && part <= 4 ? part / 4 : raise('#NUM!', 'the quartile must be 0 to 4');
};

function rank(args: Value[], average: boolean): number {
  const [value, list, order] = args;
  const x = toNumber(cellOf(value));
  const numbers = numbersOf([list]);
  const rising = toTruth(cellOf(order));
  let before = 0;
  let equal = 0;
  for (const y of numbers) {
    const side = compareNumbers(y, x);
    if (side === 0) equal++;
    else if (rising ? side < 0 : side > 0) before++;
  }
  if (equal === 0) return raise('#N/A', 'the number is not in the list');
  return before + 1 + (average ? (equal - 1) / 2 : 0);
}

const rankFunction = (average: boolean): WholeFunction => whole([2, 3], (args) => rank(args, average), { single: [0, 2] });

function countNumbers(args: Value[]): number {
  let count = 0;
  for (const arg of args) {
    if (isReferenceLike(arg) || isArray(arg)) forEachCell(arg, (cell) => { if (typeof cell === 'number') count++; });
    else if (!isError(attempt(() => toNumber(cellOf(arg))))) count++;
  }
  return count;
}

function countFilled(args: Value[]): number {
  let count = 0;
  for (const arg of args) {
    if (isReferenceLike(arg) || isArray(arg)) forEachCell(arg, (cell) => { if (cell !== null) count++; });
    else count++;
  }
  return count;
}

function countBlank(range: Value): number {
  if (!isReferenceLike(range)) return raise('#VALUE!', 'COUNTBLANK takes a reference');
  const { rows, columns } = sizeOf(range);
  let filled = 0;
  forEachCell(range, (cell) => { if (cell !== null && cell !== '') filled++; });
  return rows * columns - filled;
}

/** Pairs of two lists of one length, where both are numbers. */
export function pairsOf(first: Value, second: Value): [number, number][] {
  const [xs, ys] = [cellsOf(first), cellsOf(second)];
  if (xs.length !== ys.length) raise('#N/A', `the lists differ in length: ${xs.length} and ${ys.length}`);
  const pairs: [number, number][] = [];
  xs.forEach((x, index) => {
    const y = ys[index]!;
    if (isError(x)) throw x;
    if (isError(y)) throw y;
    if (typeof x === 'number' && typeof y === 'number') pairs.push([x, y]);
  });
  return pairs.length > 0 ? pairs : none();
}

function moments(pairs: [number, number][]) {
  const [mx, my] = [mean(pairs.map(([x]) => x)), mean(pairs.map(([, y]) => y))];
  let [xx, yy, xy] = [0, 0, 0];
  for (const [x, y] of pairs) {
    xx += (x - mx) ** 2;
    yy += (y - my) ** 2;
    xy += (x - mx) * (y - my);
  }
  return { mx, my, xx, yy, xy, count: pairs.length };
}

const ratio = (a: number, b: number): number => (b === 0 ? few() : finite(a / b));
const correlation = (args: Value[]): number => {
  const { xx, yy, xy } = moments(pairsOf(args[0], args[1]));
  return ratio(xy, Math.sqrt(xx * yy));
};
/** Straight line through points: known y first, as Excel has it. */
const line = (ys: Value, xs: Value) => {
  const { mx, my, xx, xy } = moments(pairsOf(xs, ys));
  const slope = ratio(xy, xx);
  return { slope, intercept: my - slope * mx };
};
const forecast = whole([3, 3], ([x, ys, xs]) => {
  const { slope, intercept } = line(ys, xs);
  return intercept + slope * toNumber(cellOf(x));
}, { single: [0] });

function trimmedMean(sorted: number[], share: number): number {
  if (!(share >= 0 && share < 1)) return raise('#NUM!', 'the share must lie within 0 to 1');
  const cut = Math.floor((sorted.length * share) / 2);
  return mean(sorted.slice(cut, sorted.length - cut));
}

const positiveOnly = (numbers: number[]): number[] =>
  numbers.length > 0 && numbers.every((x) => x > 0) ? numbers : raise('#NUM!', 'takes numbers above 0');

const stdevS = ofNumbers((numbers) => Math.sqrt(sampleVariance(numbers)));
const stdevP = ofNumbers((numbers) => Math.sqrt(populationVariance(numbers)));
const varS = ofNumbers(sampleVariance);
const varP = ofNumbers(populationVariance);
const percentileInc = ofListAnd(percentileInclusive);
const quartileInc = ofListAnd((sorted, part) => percentileInclusive(sorted, quarter(part)));

export const statisticsFunctions: FunctionTable = {
  AVERAGE: whole([1, ANY], (args) => {
    let [total, count] = [0, 0];
    forEachNumber(args, (x) => { total += x; count++; });
    return count === 0 ? none() : finite(total / count);
  }),
  AVERAGEA: ofNumbers(mean, numbersWithTexts),
  COUNT: whole([1, ANY], countNumbers, { takesErrors: true }),
  COUNTA: whole([1, ANY], countFilled, { takesErrors: true }),
  COUNTBLANK: whole([1, 1], ([range]) => countBlank(range)),
  MAX: extreme((a, b) => a > b, numbersOf),
  MIN: extreme((a, b) => a < b, numbersOf),
  MAXA: extreme((a, b) => a > b, numbersWithTexts),
  MINA: extreme((a, b) => a < b, numbersWithTexts),
  MEDIAN: ofNumbers(median),
  MODE: ofNumbers(mode),
  'MODE.SNGL': ofNumbers(mode),
  LARGE: ofListAnd((sorted, place) => ranked([...sorted].reverse(), Math.ceil(place))),
  SMALL: ofListAnd((sorted, place) => ranked(sorted, Math.ceil(place))),
  RANK: rankFunction(false),
  'RANK.EQ': rankFunction(false),
  'RANK.AVG': rankFunction(true),
  PERCENTILE: percentileInc,
  'PERCENTILE.INC': percentileInc,
  'PERCENTILE.EXC': ofListAnd(percentileExclusive),
  QUARTILE: quartileInc,
  'QUARTILE.INC': quartileInc,
  'QUARTILE.EXC': ofListAnd((sorted, part) => percentileExclusive(sorted, quarter(part))),
  STDEV: stdevS,
  'STDEV.S': stdevS,
  STDEVP: stdevP,
  'STDEV.P': stdevP,
  VAR: varS,
  'VAR.S': varS,
  VARP: varP,
  'VAR.P': varP,
  DEVSQ: ofNumbers(squaredDeviations),
  AVEDEV: ofNumbers((numbers) => {
    const middle = mean(numbers);
    return mean(numbers.map((x) => Math.abs(x - middle)));
  }),
  GEOMEAN: ofNumbers((numbers) => Math.exp(mean(positiveOnly(numbers).map(Math.log)))),
  HARMEAN: ofNumbers((numbers) => 1 / mean(positiveOnly(numbers).map((x) => 1 / x))),
  TRIMMEAN: ofListAnd(trimmedMean),
  CORREL: whole([2, 2], correlation),
  PEARSON: whole([2, 2], correlation),
  RSQ: whole([2, 2], (args) => correlation(args) ** 2),
  SLOPE: whole([2, 2], ([ys, xs]) => line(ys, xs).slope),
  INTERCEPT: whole([2, 2], ([ys, xs]) => line(ys, xs).intercept),
  FORECAST: forecast,
  'FORECAST.LINEAR': forecast,
  'COVARIANCE.P': whole([2, 2], ([a, b]) => {
    const { xy, count } = moments(pairsOf(a, b));
    return xy / count;
  }),
  'COVARIANCE.S': whole([2, 2], ([a, b]) => {
    const { xy, count } = moments(pairsOf(a, b));
    return ratio(xy, count - 1);
  }),
};
