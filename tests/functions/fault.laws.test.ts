import fc from 'fast-check';
import { complexText, complex } from '../../src/core/complex';
import { between } from '../support/curves';
import { answersCleanly, namesOf } from '../support/hostile-calls';
import { run } from '../support/run';

const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const call = (name: string, ...args: unknown[]): number => number(run(name, ...(args as never[])));
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));

const z = fc.tuple(between(0.1, 60), between(0.1, 60)).map(([r, x]) => complexText(complex(r, x)));
const volts = between(50, 1000);
const ratio = between(0, 5);

describe('short-circuit currents', () => {
  test('unlike faults of one impedance: 2-phase is √3/2, line to earth with Z0 = Z1 is the 3-phase one', () => {
    fc.assert(fc.property(z, volts, (z1, un) => {
      const ik3 = call('FAULT_3PH_MAX', z1, un);
      near(call('FAULT_2PH_MAX', z1, un), (ik3 * Math.sqrt(3)) / 2);
      near(call('FAULT_EARTH_MAX', z1, z1, un), ik3);
      near(call('FAULT_2PH_EARTH_MAX', z1, z1, un), ik3);
      near(call('FAULT_LOOP_MAX', z1, un / Math.sqrt(3)), ik3);
    }));
  });
  test('the loop of line and return is the sequence path with Z0 = Z_line + 3·Z_return', () => {
    fc.assert(fc.property(between(0.1, 30), between(0.1, 30), between(0.1, 30), between(0.1, 30), between(100, 1000), (r, x, back, backX, un) => {
      const line = complexText(complex(r, x));
      const zero = complexText(complex(r + 3 * back, x + 3 * backX));
      near(call('FAULT_LOOP_MIN', complexText(complex(r + back, x + backX)), un / Math.sqrt(3)), call('FAULT_EARTH_MIN', line, zero, un));
    }));
  });
  test('greatest is above least, more impedance means less current, volts and c in proportion', () => {
    fc.assert(fc.property(z, z, between(50, 500), (a, b, un) => {
      expect(call('FAULT_3PH_MAX', a, un)).toBeGreaterThan(call('FAULT_3PH_MIN', a, un));
      expect(call('FAULT_3PH_MAX', run('IMP_SERIES', a, b), un)).toBeLessThan(call('FAULT_3PH_MAX', a, un));
      near(call('FAULT_3PH_MAX', a, 2 * un), 2 * call('FAULT_3PH_MAX', a, un));
      near(call('FAULT_3PH_MAX', a, un, 1.1) / call('FAULT_3PH_MAX', a, un, 1), 1.1);
      near(call('FAULT_3PH_MAX', a, `${un / 1000} kV`), call('FAULT_3PH_MAX', a, un));
    }));
  });
  test('a negative sequence of its own: given as z1 it changes nothing', () => {
    fc.assert(fc.property(z, z, volts, (z1, z0, un) => {
      near(call('FAULT_2PH_MIN', z1, un, '', z1), call('FAULT_2PH_MIN', z1, un));
      near(call('FAULT_EARTH_MIN', z1, z0, un, '', z1), call('FAULT_EARTH_MIN', z1, z0, un));
      near(call('FAULT_2PH_EARTH_MAX', z1, z0, un, '', z1), call('FAULT_2PH_EARTH_MAX', z1, z0, un));
    }));
  });
});

describe('offset and heat', () => {
  test('the peak factor lies from 1.02 to 2, falls with R/X, and B and C are never below the plain one', () => {
    fc.assert(fc.property(ratio, between(0.001, 1), (rx, more) => {
      const plain = call('PEAK_FACTOR', rx);
      expect(plain).toBeGreaterThanOrEqual(1.02);
      expect(plain).toBeLessThanOrEqual(2);
      expect(call('PEAK_FACTOR', rx + more)).toBeLessThan(plain);
      expect(call('PEAK_FACTOR', rx, 'C')).toBeGreaterThanOrEqual(plain);
      expect(call('PEAK_FACTOR', rx, 'B')).toBeLessThanOrEqual(1.8);
      expect(call('PEAK_FACTOR', rx, 'B')).toBeGreaterThanOrEqual(Math.min(plain, 1.8));
    }));
  });
  test('peaks of network and motors add up, and stay within √2 to 2·√2 of the r.m.s. current', () => {
    fc.assert(fc.property(between(0.1, 150), ratio, between(0, 20), (network, rx, motors) => {
      const alone = call('FAULT_PEAK', network, rx);
      near(call('FAULT_PEAK', network, rx, 'plain', motors) - alone + 1, 1 + Math.SQRT2 * 1.3 * motors, 1e-8);
      expect(alone / network).toBeGreaterThan(Math.SQRT2);
      expect(alone / network).toBeLessThanOrEqual(2 * Math.SQRT2 * (1 + 1e-12));
      near(call('FAULT_PEAK', `${network * 1000} A`, rx), alone);
    }));
  });
  test('heat: never below the r.m.s. current with n = 1, less so the longer it lasts, at most √3 of it', () => {
    fc.assert(fc.property(between(0.1, 300), between(1.02, 2), between(0.005, 4), (current, kappa, time) => {
      const thermal = call('FAULT_THERMAL', current, kappa, time);
      expect(thermal).toBeGreaterThanOrEqual(current);
      expect(thermal).toBeLessThanOrEqual(current * Math.sqrt(3) * (1 + 1e-12));
      expect(call('FAULT_THERMAL', current, kappa, time + 1)).toBeLessThanOrEqual(thermal * (1 + 1e-12));
    }));
  });
  test('the direct part starts at √2·Ik and falls by equal ratios in equal times', () => {
    fc.assert(fc.property(between(0.1, 300), between(0, 1), between(0, 50), (current, rx, time) => {
      const at = (moment: number) => call('FAULT_DC', current, rx, moment);
      near(at(0), Math.SQRT2 * current);
      near(at(time) ** 2, at(0) * at(2 * time), 1e-8);
    }));
  });
});

test.each(namesOf('fault'))('%s answers cleanly whatever it is handed', (name) => answersCleanly(name));
