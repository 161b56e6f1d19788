import fc from 'fast-check';
import { CellError } from '../../src/functions/kernel/cell';
import { run } from '../support/run';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const electrodes = fc.constantFrom('VCB', 'VCBB', 'HCB', 'VOA', 'HOA');
/** Arguments of the arc functions within the range of the model. */
const arc = fc.record({ fault: between(0.5, 106), gap: between(6.35, 76.2), electrodes, volts: between(208, 600), time: between(1, 10000), reduced: fc.boolean() });
const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(a), Math.abs(b)));

describe('arc', () => {
  test('the arc lowers the current, and the reduced case lowers it further', () => {
    fc.assert(fc.property(arc, ({ fault, gap, electrodes, volts }) => {
      const full = number(run('ARC_CURRENT', fault, gap, electrodes, volts));
      const reduced = number(run('ARC_CURRENT', fault, gap, electrodes, volts, true));
      expect(full).toBeLessThan(fault);
      expect(reduced).toBeLessThan(full);
      expect(reduced).toBeGreaterThan(0.8 * full);
    }));
  });
  test('a lower voltage or a wider gap gives a lower arcing current', () => {
    fc.assert(fc.property(arc, between(1.001, 1.5), ({ fault, gap, electrodes, volts }, more) => {
      const here = number(run('ARC_CURRENT', fault, gap, electrodes, volts));
      if (volts * more <= 600) expect(number(run('ARC_CURRENT', fault, gap, electrodes, volts * more))).toBeGreaterThan(here);
      if (gap * more <= 76.2) expect(number(run('ARC_CURRENT', fault, gap * more, electrodes, volts))).toBeLessThan(here);
    }));
  });
  test('energy grows with time in proportion and falls with distance by the exponent of its table', () => {
    const k12: Record<string, number> = { VCB: -1.598, VCBB: -1.809, HCB: -2.03, VOA: -1.598, HOA: -1.99 };
    fc.assert(fc.property(arc, between(305, 2500), ({ fault, gap, electrodes, volts, time, reduced }, distance) => {
      const energy = (ms: number, mm: number) => number(run('ARC_ENERGY', fault, ms, gap, mm, electrodes, volts, 1, reduced));
      near(energy(time / 2, distance), energy(time, distance) / 2);
      near(energy(time, 2 * distance), energy(time, distance) * 2 ** k12[electrodes]!);
    }));
  });
  test('at the boundary the energy is the limit; inside 305 mm it is refused', () => {
    fc.assert(fc.property(arc, between(0.5, 200), ({ fault, gap, electrodes, volts, time, reduced }, limit) => {
      const boundary = run('ARC_BOUNDARY', fault, time, gap, electrodes, volts, 1, reduced, limit);
      if (boundary instanceof CellError) {
        expect(boundary.code).toBe('#NUM!');
        expect(number(run('ARC_ENERGY', fault, time, gap, 305, electrodes, volts, 1, reduced))).toBeLessThan(limit * (1 + 1e-9));
      } else if ((boundary as number) <= 5000) {
        near(number(run('ARC_ENERGY', fault, time, gap, boundary as number, electrodes, volts, 1, reduced)), limit);
      }
    }));
  });
  test('the energy is inverse to the box factor, which stays within what ARC_ENERGY takes', () => {
    fc.assert(fc.property(arc, between(305, 3000), between(150, 3000), between(50, 1000), ({ fault, gap, electrodes, volts }, width, height, depth) => {
      const factor = number(run('ARC_BOX_FACTOR', width, height, depth, gap, electrodes, volts));
      const plain = number(run('ARC_ENERGY', fault, 100, gap, 455, electrodes, volts));
      near(number(run('ARC_ENERGY', fault, 100, gap, 455, electrodes, volts, factor)), plain / factor);
    }));
  });
  test('a fuse is never faster at a lower current or with more tolerance, nor faster than the floor', () => {
    const curve = [[900, 10], [1100, 5], [1600, 1], [2400, 0.2], [3600, 0.04], [5500, 0.01]];
    fc.assert(fc.property(between(1.4, 20), between(1.4, 20), between(0, 50), between(0, 50), between(10, 100), (a, b, p, q, floor) => {
      const time = (kA: number, pct: number) => number(run('ARC_TIME_FUSE', curve, kA, pct, floor));
      expect(time(Math.max(a, b), p)).toBeLessThanOrEqual(time(Math.min(a, b), p) * (1 + 1e-9));
      expect(time(a, Math.min(p, q))).toBeLessThanOrEqual(time(a, Math.max(p, q)) * (1 + 1e-9));
      expect(time(a, p)).toBeGreaterThanOrEqual(floor);
    }));
  });
});

describe('forces', () => {
  test('square of the peak, inverse to the spacing, √3/2 of a pair for three bars', () => {
    fc.assert(fc.property(between(1, 350), between(0.1, 10), between(0.01, 1), (peak, span, spacing) => {
      const force = number(run('BUSBAR_FORCE', peak, span, spacing));
      near(number(run('BUSBAR_FORCE', 2 * peak, span, spacing)), 4 * force);
      near(number(run('BUSBAR_FORCE', peak, span, 2 * spacing)), force / 2);
      near(number(run('BUSBAR_FORCE', peak, span, spacing, 2)) * Math.sqrt(0.75), force);
      near(number(run('BUSBAR_FORCE', `${peak} kA`, `${span * 1000} mm`, `${spacing * 100} cm`)), force);
      // A pair of cables a metre long is a pair of bars.
      near(number(run('CLEAT_FORCE', peak, spacing, 'pair')), number(run('BUSBAR_FORCE', peak, 1, spacing, 2)));
      near(number(run('CLEAT_FORCE', peak, spacing, 'flat')) / 0.17, number(run('CLEAT_FORCE', peak, spacing, 'pair')) / 0.2);
    }));
  });
  test('stress is in proportion to force and span, inverse to the modulus', () => {
    fc.assert(fc.property(between(1, 1e5), between(0.1, 5), between(1, 1e6), between(0.5, 1), (force, span, modulus, beta) => {
      const stress = number(run('BUSBAR_STRESS', force, span, modulus, beta));
      near(number(run('BUSBAR_STRESS', 2 * force, span, modulus, beta)), 2 * stress);
      near(number(run('BUSBAR_STRESS', force, 2 * span, modulus, beta)), 2 * stress);
      near(number(run('BUSBAR_STRESS', force, span, 2 * modulus, beta)), stress / 2);
    }));
  });
});
