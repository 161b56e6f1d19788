import fc from 'fast-check';
import type { Matrix } from '../../src/functions/kernel/cell';

/** A figure anywhere between two others, evenly: doubles drawn by their bits crowd at the ends. */
export const between = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: 1e6 }).map((part) => min + ((max - min) * part) / 1e6);

/** A time-current curve: from a first point on, each next one so many times further right and so many times lower; steps and level stretches where asked. */
export function fallingCurve({ steps = false } = {}): fc.Arbitrary<Matrix> {
  const start = fc.tuple(between(50, 400), between(1, 500));
  const move = steps
    ? fc.oneof({ weight: 4, arbitrary: fc.tuple(between(1.05, 2.5), between(1.05, 20)) }, { weight: 1, arbitrary: fc.tuple(between(1.05, 2.5), fc.constant(1)) }, { weight: 1, arbitrary: fc.tuple(fc.constant(1), between(1.05, 20)) })
    : fc.tuple(between(1.05, 2.5), between(1.05, 20));
  return fc.tuple(start, fc.array(move, { minLength: 2, maxLength: 6 })).map(([[x0, y0], moves]) => {
    const rows = [[x0, y0]];
    for (const [right, down] of moves) {
      const [x, y] = rows[rows.length - 1] as [number, number];
      const twice = rows.length > 1 && rows[rows.length - 2]![0] === x;
      rows.push([x * (right === 1 && twice ? 1.1 : right), y / down]);
    }
    return rows;
  }).filter((rows) => rows[rows.length - 1]![0]! > rows[0]![0]!);
}

/** A current inside a curve that was moved by a factor, by its share of the way in logarithm. */
export const currentInside = (curve: Matrix, share: number, factor = 1): number => {
  const [first, last] = [curve[0]![0] as number, curve[curve.length - 1]![0] as number];
  return first * factor * (last / first) ** share;
};

/** Settings of a release whose stages stand in order, with stages off now and then. */
export const releases = fc
  .record({
    ir: between(20, 600), tr: between(0.5, 30), sd: between(1.5, 12), tsd: between(0.05, 1), ii: between(1, 3), time: between(0.01, 0.08),
    shortOn: fc.boolean(), instantaneousOn: fc.boolean(), delayed: between(0, 25), tolerance: between(0, 25), ramp: fc.option(between(1, 2)), multiple: fc.constantFrom(6, 7.2, 3),
  })
  .map((r) => {
    const isd = r.ir * r.sd;
    return {
      ir: r.ir,
      stages: [r.ir, r.tr, r.shortOn ? isd : 'off', r.shortOn ? r.tsd : '', r.instantaneousOn ? isd * r.ii : 'off', r.instantaneousOn ? r.time : ''] as (number | string)[],
      options: [r.delayed, r.tolerance, r.ramp === null ? 'off' : isd * r.ramp, r.multiple] as (number | string)[],
    };
  });

/** Arguments that a sheet may hold by mistake. */
export const hostile = fc.constantFrom<readonly unknown[]>(
  [null], [''], [' '], [0], [-1], [1e-320], [1e308], [-1e308], [true], [false], ['off'], ['slow'], ['fast'], ['gG'], ['trip'], ['63 kA'], ['1,5'], ['185 kg'], ['NaN'], ['Infinity'], [NaN], [Infinity],
  [0.1], [1], [6], [100], [1250], [5000], [Number.MIN_VALUE], [Number.MAX_SAFE_INTEGER], [[[1, 2], [3, 4]]], [[[100, 10], [200, 1]]], [[[200, 10], [100, 1]]], [[[100, 10], [100, 10]]], [[['A', 's'], [100, 10], [1e300, 1e-300]]],
  [[[1e-300, 1e300], [1e300, 1e-300]]], [[[null, null]]], [[[1], [2]]], [[['x', 'y']]], [[[NaN, 1], [2, 3]]],
).map(([value]) => value);
