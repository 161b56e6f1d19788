import fc from 'fast-check';
import { run } from '../support/run';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));

test('the present cost of a year more is a year’s cost, discounted over all of it', () => {
  fc.assert(fc.property(between(0, 1e6), between(1, 1e5), between(0, 50), fc.integer({ min: 1, max: 59 }), (first, yearly, rate, years) => {
    const more = number(run('PRESENT_COST', first, yearly, rate, years + 1)) - number(run('PRESENT_COST', first, yearly, rate, years));
    expect(Math.abs(more - yearly / (1 + rate / 100) ** (years + 1))).toBeLessThanOrEqual(1e-9 * (first + yearly * years));
  }));
});
test('as the interest goes to nothing, so does the discount', () => {
  fc.assert(fc.property(between(1, 1e5), between(0.5, 60), fc.integer({ min: 6, max: 300 }), (yearly, years, power) => {
    near(number(run('PRESENT_COST', 0, yearly, 10 ** -power, years)), yearly * years, 1e-4);
  }));
});
test('at the break-even rate both options cost the same, and the words name the one with the cheaper fault', () => {
  const money = between(1, 1e5);
  fc.assert(fc.property(money, money, money, money, between(0, 50), between(1, 60), (fixedA, fixedB, faultA, faultB, rate, years) => {
    fc.pre(Math.abs(faultA - faultB) > 1 && Math.abs(fixedA - fixedB) > 1);
    const faults = number(run('BREAKEVEN_RATE', fixedA, fixedB, faultA, faultB, rate, years));
    const words = run('BREAKEVEN_WORDS', fixedA, fixedB, faultA, faultB, rate, years);
    const which = faultA < faultB ? 'A' : 'B';
    if (faults < 0) expect(words).toBe(`${which} is cheaper at every rate`);
    else {
      expect(words).toMatch(new RegExp(`^${which} is cheaper above [\\dE.+-]+ faults a year$`));
      const total = (fixed: number, fault: number) => number(run('PRESENT_COST', fixed, fault * faults, rate, years));
      near(total(fixedA, faultA), total(fixedB, faultB), 1e-6);
    }
    near(faults, number(run('BREAKEVEN_RATE', fixedB, fixedA, faultB, faultA, rate, years)));
  }));
});
test('spread of poles does not care for their order', () => {
  const mohm = between(0.001, 10);
  fc.assert(fc.property(mohm, mohm, mohm, (a, b, c) => {
    const margin = number(run('POLE_SPREAD_MARGIN', a, b, c));
    for (const order of [[a, c, b], [b, a, c], [c, b, a]]) expect(run('POLE_SPREAD_MARGIN', ...order)).toBe(margin);
    expect(run('POLE_SPREAD_TEST', a, b, c)).toBe(margin >= -1e-7 ? 'pass' : 'FAIL');
  }));
});
test('millivolt verdict and margin agree, and a unit may stand in the cell', () => {
  fc.assert(fc.property(between(0.1, 1000), between(1, 20000), between(0.001, 10), (drop, amps, reference) => {
    const margin = number(run('MILLIVOLT_MARGIN', drop, amps, reference));
    near(margin + 100, number(run('MILLIVOLT_MARGIN', `${drop / 1000} V`, `${amps / 1000} kA`, `${reference * 1000} µΩ`)) + 100, 1e-12);
    if (Math.abs(margin) > 1e-6) expect(run('MILLIVOLT_TEST', drop, amps, reference)).toBe(margin > 0 ? 'pass' : 'FAIL');
  }));
});
test('heat is square of the current and in proportion to the poles; the rise follows the loss', () => {
  fc.assert(fc.property(between(1, 10000), between(0.001, 100), between(1, 100), between(1, 5000), between(0.5, 1), (amps, mohm, rise, loss, exponent) => {
    near(number(run('POLE_HEAT', 2 * amps, mohm)), 4 * number(run('POLE_HEAT', amps, mohm)));
    near(number(run('POLE_HEAT', amps, mohm, 3)), 3 * number(run('POLE_HEAT', amps, mohm)));
    near(number(run('TERMINAL_RISE', rise, loss, loss, exponent)), rise);
    near(number(run('TERMINAL_RISE', rise, loss, 2 * loss, exponent)), rise * 2 ** exponent);
  }));
});
