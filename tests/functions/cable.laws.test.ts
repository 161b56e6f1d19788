import fc from 'fast-check';
import { answersCleanly, namesOf } from '../support/hostile-calls';
import { between } from '../support/curves';
import { run } from '../support/run';

const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const call = (name: string, ...args: unknown[]): number => number(run(name, ...(args as never[])));
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));

const k = between(15, 300);
const size = between(0.5, 1000);
const runs = fc.integer({ min: 1, max: 24 });
const metals = fc.constantFrom('copper', 'aluminium');
const legs = fc.array(fc.tuple(between(0.1, 50), between(0, 50)), { minLength: 1, maxLength: 8 });
const asCells = (list: readonly (readonly [number, number])[]) => list.map(([r, x]) => [`${r}+${x}i`]);

describe('adiabatic factor and withstand', () => {
  test('the final temperature is the inverse of k: a conductor loaded with its k²S² ends at the temperature of that k', () => {
    fc.assert(fc.property(metals, fc.double({ min: -20, max: 180, noNaN: true }), between(1, 70), size, runs, (metal, start, rise, csa, n) => {
      const end = start + rise;
      fc.pre(end >= 0);
      const factor = call('CABLE_K', metal, 'XLPE', '', start, end);
      fc.pre(factor >= 15);
      near(call('CABLE_FINAL_TEMP', run('CABLE_WITHSTAND', factor, csa, n), csa, start, metal, n) + 300, end + 300, 1e-9);
    }));
  });
  test('k rises with the final temperature and falls with the initial one; copper stands more than aluminium', () => {
    fc.assert(fc.property(metals, between(1, 60), between(65, 150), between(1, 90), (metal, start, end, more) => {
      expect(call('CABLE_K', metal, 'XLPE', '', start, end + more)).toBeGreaterThan(call('CABLE_K', metal, 'XLPE', '', start, end));
      expect(call('CABLE_K', metal, 'XLPE', '', start + 1, end)).toBeLessThan(call('CABLE_K', metal, 'XLPE', '', start, end));
      expect(call('CABLE_K', 'copper', 'XLPE', '', start, end)).toBeGreaterThan(call('CABLE_K', 'aluminium', 'XLPE', '', start, end));
    }));
  });
  test('least section, withstand and withstand current are one equation', () => {
    fc.assert(fc.property(k, size, runs, between(0.01, 5), (factor, csa, n, time) => {
      const joule = call('CABLE_WITHSTAND', factor, csa, n);
      fc.pre(joule <= 1e13);
      near(call('CABLE_MIN_SIZE', joule, factor, n), csa);
      near((1000 * call('CABLE_WITHSTAND_CURRENT', factor, csa, time, n)) ** 2 * time, joule);
      const listed = call('CABLE_MIN_SIZE', joule, factor, n, true);
      expect(listed).toBeGreaterThanOrEqual(csa * (1 - 1e-9));
      expect(call('CABLE_MIN_SIZE', joule, factor, n)).toBeLessThanOrEqual(listed * (1 + 1e-9));
    }));
  });
  test('the non-adiabatic factor is above 1, rises with time and falls with size', () => {
    const insulations = fc.constantFrom('PVC', 'XLPE', 'EPR');
    fc.assert(fc.property(size, between(0.01, 2.5), metals, insulations, (csa, time, metal, insulation) => {
      const factor = call('NON_ADIABATIC_FACTOR', csa, time, metal, insulation);
      expect(factor).toBeGreaterThan(1);
      expect(call('NON_ADIABATIC_FACTOR', csa, 2 * time, metal, insulation)).toBeGreaterThan(factor);
      near(call('NON_ADIABATIC_FACTOR', 2 * csa, 2 * time, metal, insulation), factor);
    }));
  });
});

describe('load, rating, volt drop', () => {
  test('three phases at U draw what one phase draws at √3·U', () => {
    fc.assert(fc.property(between(0.1, 500), between(0.1, 1), between(50, 570), between(0.5, 1), (power, pf, volts, efficiency) =>
      near(call('LOAD_CURRENT', power, pf, volts, 3, efficiency), call('LOAD_CURRENT', power, pf, Math.sqrt(3) * volts, 1, efficiency))));
  });
  test('units: "kW" and "W", "A" and "kA" are one load', () => {
    fc.assert(fc.property(between(0.1, 500), between(1, 400), (power, amps) => {
      near(call('LOAD_CURRENT', `${1000 * power} W`, 0.9, 400), call('LOAD_CURRENT', power, 0.9, '0.4 kV'));
      near(call('VOLT_DROP', `${amps / 1000} kA`, 0.9, '0.01 Ω'), call('VOLT_DROP', amps, 0.9, 10));
    }));
  });
  test('volt drop is proportional to the current and never above I·Z times its factor', () => {
    fc.assert(fc.property(between(1, 5000), between(0.05, 1), between(0.01, 100), between(0, 100), fc.constantFrom(1, 3), (amps, pf, r, x, phases) => {
      const drop = call('VOLT_DROP', amps, pf, `${r}+${x}i`, phases);
      near(call('VOLT_DROP', 2 * amps, pf, `${r}+${x}i`, phases), 2 * drop);
      expect(drop).toBeLessThanOrEqual(((phases === 3 ? Math.sqrt(3) : 2) * amps * Math.hypot(r, x) * (1 + 1e-9)) / 1000);
    }));
  });
  test('the rating is the same in whatever column a factor stands', () => {
    const factor = between(0.3, 1.5);
    fc.assert(fc.property(between(1, 5000), factor, factor, runs, (amps, a, b, n) => near(call('CABLE_RATING', amps, a, '', b, '', n), call('CABLE_RATING', amps, b, a) * n)));
  });
  test('third harmonics never lower the current to size for', () => {
    fc.assert(fc.property(between(1, 5000), between(0, 100), (amps, third) => {
      const sizing = call('HARMONIC_CURRENT', amps, third);
      expect(sizing).toBeGreaterThanOrEqual(amps);
      expect(sizing).toBeGreaterThanOrEqual(call('HARMONIC_CURRENT', amps, third, 'neutral') * (1 - 1e-9));
    }));
  });
});

describe('overload', () => {
  test('a pass has a margin of 0 or more, a FAIL one below 0', () => {
    const amps = between(50, 300);
    fc.assert(fc.property(amps, amps, amps, between(1, 1.6), (load, device, cable, multiple) => {
      const verdict = run('OVERLOAD_TEST', load, device, cable, multiple * device);
      const margin = call('OVERLOAD_MARGIN', load, device, cable, multiple * device);
      expect(verdict).toBe(margin >= -1e-7 ? 'pass' : 'FAIL');
    }));
  });
});

describe('unequal legs', () => {
  test('the shares as phasors make the whole: their sizes together are at least it, and equal to it at one angle', () => {
    fc.assert(fc.property(legs, between(1, 5000), (list, current) => {
      const shares = list.map((_, i) => call('CABLE_LEG_SHARE', asCells(list), current, i + 1));
      expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThanOrEqual(current * (1 - 1e-9));
      const alike = list.map(([r]) => [r, r] as const);
      near(alike.reduce((sum, _, i) => sum + call('CABLE_LEG_SHARE', asCells(alike), current, i + 1), 0), current);
    }));
  });
  test('shares go as the admittances, and equal legs share evenly', () => {
    fc.assert(fc.property(legs, between(1, 5000), runs, (list, current, n) => {
      const [first, last] = [call('CABLE_LEG_SHARE', asCells(list), current, 1), call('CABLE_LEG_SHARE', asCells(list), current, list.length)];
      near(first * Math.hypot(...list[0]!), last * Math.hypot(...list[list.length - 1]!));
      near(call('CABLE_LEG_SHARE', Array.from({ length: n }, () => ['4.2+3.1i']), current, n), current / n);
    }));
  });
});

describe('earth fault', () => {
  test('loop limit times trip current is the voltage', () => {
    fc.assert(fc.property(between(5, 20000), between(25, 600), between(0.9, 1), between(0.5, 1), (trip, u0, c, cold) =>
      near(call('LOOP_MAX', trip, u0, c, cold) * trip, 1000 * c * u0 * cold)));
  });
  test('a higher voltage never allows a longer time, TT never a longer one than TN', () => {
    fc.assert(fc.property(between(50.01, 599), between(1, 549), fc.constantFrom('final', 'distribution'), (u0, more, circuit) => {
      const higher = Math.min(600, u0 + more);
      expect(call('DISCONNECT_LIMIT', 'TN', circuit, higher)).toBeLessThanOrEqual(call('DISCONNECT_LIMIT', 'TN', circuit, u0));
      expect(call('DISCONNECT_LIMIT', 'TT', circuit, u0)).toBeLessThan(call('DISCONNECT_LIMIT', 'TN', circuit, u0));
      expect(call('DISCONNECT_LIMIT', 'IT', circuit, u0)).toBe(call('DISCONNECT_LIMIT', 'TN', circuit, u0));
    }));
  });
  test('an earth conductor by the table is never above the line conductor of its metal', () => {
    fc.assert(fc.property(size, k, (csa, factor) => {
      expect(call('EARTH_SIZE_TABLE', csa)).toBeLessThanOrEqual(csa);
      near(call('EARTH_SIZE_TABLE', csa, factor, factor), call('EARTH_SIZE_TABLE', csa));
    }));
  });
});

describe('any arguments', () => {
  test('the family is whole', () => {
    expect(namesOf('cable').sort()).toEqual([
      'CABLE_FINAL_TEMP', 'CABLE_K', 'CABLE_LEG_SHARE', 'CABLE_MIN_SIZE', 'CABLE_RATING', 'CABLE_WITHSTAND', 'CABLE_WITHSTAND_CURRENT', 'DISCONNECT_LIMIT', 'EARTH_K',
      'EARTH_SIZE_TABLE', 'HARMONIC_CURRENT', 'LOAD_CURRENT', 'LOOP_MAX', 'NON_ADIABATIC_FACTOR', 'OVERLOAD_MARGIN', 'OVERLOAD_TEST', 'VOLT_DROP',
    ]);
  });
  test.each(namesOf('cable').map((name) => [name]))('%s answers cleanly', answersCleanly);
});
