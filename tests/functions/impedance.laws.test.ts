import fc from 'fast-check';
import { type Complex, complex, complexText, parseComplex } from '../../src/core/complex';
import { listedSizes } from '../../src/core/standards/conductor-resistance';
import { between } from '../support/curves';
import { run } from '../support/run';

const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const call = (name: string, ...args: unknown[]): number => number(run(name, ...(args as never[])));
const impedance = (name: string, ...args: unknown[]): Complex => {
  const value = run(name, ...(args as never[]));
  const z = parseComplex(String(value));
  if (!z) throw new Error(`${name} gave ${JSON.stringify(value)}`);
  return z;
};
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));
const nearZ = (a: Complex, b: Complex, part = 1e-9) => expect(a.sub(b).abs()).toBeLessThanOrEqual(part * b.abs());

const z = fc.tuple(between(0.1, 60), between(0.1, 60)).map(([r, x]) => complex(r, x));
const text = z.map(complexText);
const volts = between(50, 1000);
const metals = fc.constantFrom('copper' as const, 'aluminium' as const);
const sizes = metals.chain((metal) => fc.tuple(fc.constant(metal), fc.integer({ min: 0, max: listedSizes[metal].length - 2 })));

describe('circuit laws', () => {
  test('series and parallel take any order and grouping, in cells or a range', () => {
    fc.assert(fc.property(text, text, text, (a, b, c) => {
      for (const name of ['IMP_SERIES', 'IMP_PARALLEL']) {
        const all = impedance(name, a, b, c);
        nearZ(impedance(name, c, a, b), all);
        nearZ(impedance(name, a, run(name, b, c)), all);
        nearZ(impedance(name, [[a], [b]], c), all);
      }
    }));
  });
  test('n alike: n times in series, an nth in parallel', () => {
    fc.assert(fc.property(z, fc.integer({ min: 1, max: 12 }), (one, n) => {
      const cells = Array.from({ length: n }, () => [complexText(one)]);
      nearZ(impedance('IMP_SERIES', cells), one.mul(n));
      nearZ(impedance('IMP_PARALLEL', cells), one.div(n));
    }));
  });
  test('a branch in parallel never raises the size', () => {
    fc.assert(fc.property(z, z, (a, b) => {
      expect(impedance('IMP_PARALLEL', complexText(a), complexText(b)).abs()).toBeLessThanOrEqual(Math.min(a.abs(), b.abs()) * (1 + 1e-12));
    }));
  });
  test('the parts make up the whole', () => {
    fc.assert(fc.property(text, (one) => {
      const part = (name: string) => call('IMP_PART', one, name);
      near(part('Z') ** 2, part('R') ** 2 + part('X') ** 2);
      near(part('R/X') * part('X/R'), 1);
      near(part('pf'), Math.cos((part('angle') * Math.PI) / 180), 1e-8);
    }));
  });
  test('referred there and back', () => {
    fc.assert(fc.property(z, between(50, 36000), between(50, 36000), (one, from, to) => {
      nearZ(impedance('IMP_REFER', run('IMP_REFER', complexText(one), from, to), to, from), one);
    }));
  });
});

describe('elements', () => {
  test('a grid or a declared level gives its own level back, with the R/X that was named', () => {
    fc.assert(fc.property(between(1, 300), between(0, 10), volts, between(1, 1.1), (fault, ratio, un, c) => {
      const declared = run('IMP_DECLARED', fault, ratio, un, c);
      fc.pre(parseComplex(String(declared))!.abs() >= 0.1);
      near(call('FAULT_3PH_MAX', declared, un, c), fault);
      near(call('IMP_PART', declared, 'R/X') + 1, ratio + 1);
      const grid = run('IMP_GRID', (Math.sqrt(3) * fault * un) / 1000, un, c, ratio);
      nearZ(parseComplex(String(grid))!, parseComplex(String(declared))!);
    }));
  });
  test('a transformer: uk is its size, K_T scales it, volts in their square', () => {
    fc.assert(fc.property(between(50, 3000), between(3, 12), between(0.5, 2), volts, (rating, uk, lossPct, un) => {
      const loss = (lossPct / 100) * rating;
      const plain = impedance('IMP_TRANSFORMER', rating, uk, loss, un, '', false);
      near(plain.abs(), ((uk / 100) * un ** 2) / rating);
      const corrected = impedance('IMP_TRANSFORMER', rating, uk, loss, un);
      near(corrected.re / plain.re, corrected.im / plain.im);
      near(call('FAULT_FROM_RATING', rating, uk, un), un / (Math.sqrt(3) * plain.abs()));
      expect(impedance('IMP_TRANSFORMER', rating, uk, loss, un, '', false, 10).abs()).toBeGreaterThan(plain.abs());
    }));
  });
  test('a line: twice the length doubles it, twice the runs halve it, heat raises R alone', () => {
    fc.assert(fc.property(sizes, between(1, 9000), fc.integer({ min: 1, max: 12 }), between(20, 340), ([metal, place], length, runs, temperature) => {
      const size = listedSizes[metal][place]!;
      const one = impedance('IMP_CABLE', length, size, metal, runs, temperature);
      nearZ(impedance('IMP_CABLE', 2 * length, size, metal, runs, temperature), one.mul(2));
      nearZ(impedance('IMP_CABLE', length, size, metal, 2 * runs, temperature), one.div(2));
      nearZ(impedance('IMP_CABLE', `${length} m`, `${size} mm2`, metal.toUpperCase(), runs, `${temperature} °C`), one);
      const hotter = impedance('IMP_CABLE', length, size, metal, runs, temperature + 10);
      expect(hotter.re).toBeGreaterThan(one.re);
      expect(hotter.im).toBe(one.im);
      expect(impedance('IMP_CABLE', length, listedSizes[metal][place + 1]!, metal, runs, temperature).re).toBeLessThan(one.re);
    }));
  });
  test('motors and generators: twice the machine has half the impedance', () => {
    fc.assert(fc.property(between(1, 5000), volts, between(0.5, 1), (power, un, pf) => {
      nearZ(impedance('IMP_MOTOR', power, pf, 0.9, un), impedance('IMP_MOTOR', 2 * power, pf, 0.9, un).mul(2));
      nearZ(impedance('IMP_GENERATOR', power, 12, un, '', '', '', pf), impedance('IMP_GENERATOR', 2 * power, 12, un, '', '', '', pf).mul(2));
    }));
  });
  test('zero sequence with both ratios 1 is the impedance itself', () => {
    fc.assert(fc.property(z, fc.constantFrom('Dyn', 'dYN5', 'Dyn11'), (one, group) => nearZ(impedance('IMP_TRANSFORMER_ZERO', complexText(one), group), one)));
  });
});
