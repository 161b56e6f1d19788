import type { Kind } from '../../src/functions/kernel/kind';
import { type Argument, type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';

/** Arguments that people and files really hand to functions, and worse. All random choices come from one seed. */

export interface Random {
  /** Between 0 and 1. */
  (): number;
}

/** Small generator with a seed (mulberry32): the same seed gives the same tuples everywhere. */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;

const cells: readonly (() => Cell)[] = [
  ...[NaN, Infinity, -Infinity, 1e308, -1e308, 5e-324, 1e-300, -0, 0, 1, -1, 0.5, 2, 3, 25, 400, 1e6, 1e15, 2 ** 53, 46351].map((value) => () => value),
  ...['', ' ', '\u00a0', '\t\n', '∞', '-∞', '1,5', '1.500,00', "1'000", '1 2', '0x10', '12 kA', '12kA', '63 kg', '-5 %', '5 °C', '1e999', '1e-999', '−3 m', '400 V', '1 1', '2026-11-25', '25.11.2026', '12:30', 'off', 'max'].map((value) => () => value),
  ...['1+i', 'i', '-i', '0', '1e308+1e308i', '1e200+1e200i', '1+∞i', '1+2i+3i', '2j', '1e-320+1e-320i', '0.0001', '+', 'e', '.'].map((value) => () => value),
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf', 'CABLE_WITHSTAND', 'JW.VALID_RANGE', 'SHOW_WORKING', 'A1:B2', '=1/0', '<b>&amp;"\'', '⚡️🔥', '👩‍🔧', 'ﷺ\u202e', '\u0000', '\ud800'].map((value) => () => value),
  () => '9'.repeat(30000), () => `${'9'.repeat(30000)}x`, () => `${'9'.repeat(20000)}\n1`, () => ' '.repeat(30000), () => `${' '.repeat(20000)}j x`, () => '⚡'.repeat(20000), () => 'ab '.repeat(12000),
  () => true, () => false, () => null,
  () => new CellError('#REF!'), () => new CellError('#N/A', 'missing: something'), () => new CellError('#DIV/0!'),
];

export const hostileCell = (random: Random): Cell => pick(random, cells)();

const rising = (rows: number): Matrix => Array.from({ length: rows }, (_, i) => [i + 1, 1000 / (i + 1)]);

/** A range: ragged, empty, large, or of hostile cells. */
export function hostileRange(random: Random): Matrix {
  return pick<() => Matrix>(random, [
    () => [],
    () => [[]],
    () => [[null]],
    () => [[1, 2], [3]],
    () => [[1], [2, 3]],
    () => [[null, null], [null, null]],
    () => rising(300),
    () => [['A', 's'], ...rising(4)],
    () => [[1, 5], [1, 4], [1, 3]],
    () => [[1, 1e308], [2, 5e-324]],
    () => [[5e-324, 1], [1e308, 1]],
    () => Array.from({ length: 200 }, () => [null, null, null]),
    () => Array.from({ length: 1 + Math.floor(random() * 4) }, () => Array.from({ length: 1 + Math.floor(random() * 8) }, () => hostileCell(random))),
    () => Array.from({ length: 1 + Math.floor(random() * 4) }, () => [hostileCell(random)]),
    () => [[hostileCell(random), hostileCell(random)]],
  ])();
}

/** A range with a few of its cells spoiled, or with a row twice, missing or moved. */
export function spoiledRange(range: Matrix, random: Random): Matrix {
  const rows = range.map((row) => [...row]);
  for (let spoiled = 1 + Math.floor(random() * 3); spoiled > 0; spoiled -= 1) {
    const row = rows[Math.floor(random() * rows.length)];
    if (row && row.length > 0) row[Math.floor(random() * row.length)] = random() < 0.3 ? pick(random, range.flat()) : hostileCell(random);
  }
  const place = Math.floor(random() * rows.length);
  if (random() < 0.15) rows.splice(place, 1);
  if (random() < 0.15 && rows.length > 0) rows.push([...pick(random, rows)]);
  if (random() < 0.1) rows.reverse();
  return rows;
}

export const hostileArgument = (random: Random): Argument => {
  const choice = random();
  return choice < 0.08 ? undefined : choice < 0.3 ? hostileRange(random) : hostileCell(random);
};

/** A number within the bounds of a kind: at their ends, next to them, or anywhere between. */
function fairNumber({ bounds }: Kind<unknown>, random: Random): number {
  if (bounds?.listed) return pick(random, bounds.listed);
  const signed = bounds?.sign === 'any' ? -1000 : bounds?.sign === 'atLeast 0' ? 0 : undefined;
  const low = bounds?.atLeast ?? signed;
  const high = bounds?.upTo ?? bounds?.below ?? Math.max(1e6, 2 * (low ?? 0));
  const least = low ?? (bounds?.above === undefined ? pick(random, [5e-324, high * 1e-9, high * 1e-3]) : bounds.above + (high - bounds.above) * 1e-6);
  return pick(random, [least, bounds?.upTo ?? least, least + (high - least) * random(), least + (high - least) * random(), least + (high - least) * 1e-2 * random()]);
}

/** An argument as its kind asks for it. */
export function fairArgument(kind: Kind<unknown>, random: Random): Argument {
  switch (kind.type) {
    case 'quantity': case 'number': case 'setting':
      return fairNumber(kind, random);
    case 'count':
      return kind.bounds?.listed ? pick(random, kind.bounds.listed) : 1 + Math.floor(random() * (kind.bounds?.upTo ?? 5));
    case 'flag':
      return random() < 0.5;
    case 'word':
      return pick(random, Object.entries(kind.words ?? {}).flat(2));
    case 'impedance': case 'impedances':
      return pick<Argument>(random, ['1+2i', '0.1', 3, '0+5i', '1e-9+1e-9i', '1e6+1e9i', [[1, 2]]]);
    case 'points':
      return pick(random, [rising(6), [[100, 50], [1000, 0.5], [10000, 0.5]], [[1, 1], [10, 10], [100, 20]]]);
    case 'text':
      return pick(random, ['CABLE_WITHSTAND', 'FAULT_3PH_MAX', 'A', 'kA', 'mA', 'board 1']);
    default:
      return pick<Argument>(random, [1, 'pass', [[1], [2]], '2+3i']);
  }
}
