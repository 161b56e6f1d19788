import type { Recorder } from '../../src/core/working';
import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { life } from '../../src/functions/life';
import { outcomeOf, run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const cautionOf = (name: string, ...argv: Parameters<typeof outcomeOf>[1]) => outcomeOf(name, argv).cautions.join('; ');
const indicator = 'an indicator only: says nothing about breaking capacity or insulation';

describe('POLE_HEAT', () => {
  test('check figures and bad input', () => {
    expect(run('POLE_HEAT', 250, 0.21)).toBeCloseTo(13.125, 9);
    expect(run('POLE_HEAT', '0.4 kA', 0.12, 3)).toBeCloseTo(57.6, 9);
    expect(run('POLE_HEAT', 250, 0.21, 5)).toEqual(refusal('#NUM!', 'poles: 5 is outside 1 to 4'));
    expect(run('POLE_HEAT', 250, '0.21 V')).toEqual(refusal('#VALUE!', 'resistance_mohm: got "0.21 V": V is voltage, takes mΩ'));
  });
});

describe('MILLIVOLT_TEST, MILLIVOLT_MARGIN', () => {
  test('check figures', () => {
    expect(run('MILLIVOLT_TEST', 62, 250, 0.19)).toBe('pass');
    expect(run('MILLIVOLT_MARGIN', 62, 250, 0.19)).toBeCloseTo(14.9194, 4);
    expect(run('MILLIVOLT_TEST', 62, 250, 0.15)).toBe('FAIL');
    expect(run('MILLIVOLT_TEST', 62, 250, '')).toBe('not shown');
  });
  test('exactly at the ratio passes; without the reference there is no margin', () => {
    expect(run('MILLIVOLT_TEST', 30, 100, 0.2)).toBe('pass');
    expect(run('MILLIVOLT_MARGIN', 30, 100, 0.2)).toBeCloseTo(0, 9);
    expect(run('MILLIVOLT_MARGIN', 62, 250, null)).toEqual(refusal('#N/A', 'missing: reference_mohm'));
    expect(run('MILLIVOLT_TEST', null, 250, null)).toEqual(refusal('#N/A', 'missing: drop_mV'));
    expect(run('MILLIVOLT_TEST', 62, 250, 0.19, 0.9)).toEqual(refusal('#NUM!', 'ratio: 0.9 is outside 1 to 5'));
  });
  test('it is always said to be an indicator', () => {
    expect(cautionOf('MILLIVOLT_TEST', 62, 250, 0.19)).toBe(indicator);
    expect(cautionOf('MILLIVOLT_MARGIN', 62, 250, 0.15)).toBe(indicator);
    expect(cautionOf('MILLIVOLT_TEST', 62, 250, '')).toBe('missing: reference_mohm');
  });
});

describe('POLE_SPREAD_TEST, POLE_SPREAD_MARGIN', () => {
  // The two sets of a trade article on contact resistance and millivolt drop: 88, 86, 97 mV at 400 A accepted, 29, 23, 96 µΩ not.
  test('a set that is accepted and one that is not', () => {
    expect(run('POLE_SPREAD_TEST', 88 / 400, 86 / 400, 97 / 400)).toBe('pass');
    expect(run('POLE_SPREAD_TEST', '29 µΩ', '23 µΩ', '96 µΩ')).toBe('FAIL');
  });
  test('a ratio beyond all numbers is said in words, not as infinity', () => {
    const steps = run('SHOW_STEPS', 'POLE_SPREAD_TEST', 5e-324, 1, 1000) as Matrix;
    expect(steps.find(([step]) => String(step).startsWith('spread'))![1]).toBe('beyond all numbers %');
    expect(steps[steps.length - 1]).toEqual(['POLE_SPREAD_TEST', 'FAIL']);
  });
  test('the margin is of the highest against what the lowest allows', () => {
    expect(run('POLE_SPREAD_MARGIN', 0.3, 0.2, 0.25)).toBeCloseTo(0, 9);
    expect(run('POLE_SPREAD_TEST', 0.3, 0.2, 0.25)).toBe('pass');
    expect(run('POLE_SPREAD_MARGIN', 0.2, 0.2, 0.2)).toBeCloseTo(50, 9);
    expect(run('POLE_SPREAD_MARGIN', 0.2, 0.2, 0.25, 20)).toBeCloseTo(-4, 9);
    expect(cautionOf('POLE_SPREAD_TEST', 0.2, 0.2, 0.25)).toBe(indicator);
    expect(run('POLE_SPREAD_TEST', 0.2, 0.2, null)).toEqual(refusal('#N/A', 'missing: r3_mohm'));
  });
});

describe('TERMINAL_RISE', () => {
  test('check figures', () => {
    expect(run('TERMINAL_RISE', 41, 13.1, 19.6)).toBeCloseTo(61.3435, 4);
    expect(run('TERMINAL_RISE', 41, 13.1, 19.6, 0.8)).toBeCloseTo(56.5942, 4);
    expect(run('TERMINAL_RISE', 41, 0, 19.6)).toEqual(refusal('#VALUE!', 'loss_W: got 0, takes above 0, up to 10000 W'));
    expect(run('TERMINAL_RISE', '41 °C', 13.1, 19.6)).toEqual(refusal('#VALUE!', 'rise_K: got "41 °C": °C is temperature, takes K'));
  });
});

describe('AFTER_FAULT', () => {
  test('check figures and the other sentences', () => {
    expect(run('AFTER_FAULT', 31, 50, 25, 'breaker')).toBe("above Ics: replace, or maker's inspection before any return");
    expect(run('AFTER_FAULT', 31, 80, '', 'fuse')).toBe('replace all links; inspect the switch and carriers before return');
    expect(run('AFTER_FAULT', 22, 50, 25, 'breaker')).toBe('within Ics: inspect, measure and test before return');
    expect(run('AFTER_FAULT', 51, 50, 25, 'breaker')).toBe('beyond Icu: replace; examine the assembly');
    expect(run('AFTER_FAULT', 81, 80, null, 'Fuse-Switch')).toBe('beyond rating: replace switch and links; examine the assembly');
    expect(run('AFTER_FAULT', 25, 50, 25, 'breaker')).toBe('within Ics: inspect, measure and test before return');
  });
  test('not shown where the datum that decides is missing, with the reason', () => {
    expect(run('AFTER_FAULT', 31, 50, '', 'breaker')).toBe('not shown');
    expect(cautionOf('AFTER_FAULT', 31, 50, '', 'breaker')).toBe('missing: ics_kA');
    expect(run('AFTER_FAULT', 31, '', 25, 'breaker')).toBe('not shown');
    expect(run('AFTER_FAULT', 31, '', '', 'fuse')).toBe('not shown');
    expect(cautionOf('AFTER_FAULT', 31, '', '', 'fuse')).toBe('missing: icu_kA');
    expect(run('AFTER_FAULT', 55, 50, '', 'breaker')).toBe('beyond Icu: replace; examine the assembly');
    expect(run('AFTER_FAULT', 31, 50, 25, '')).toEqual(refusal('#N/A', 'missing: kind'));
    expect(run('AFTER_FAULT', '', 50, 25, 'breaker')).toEqual(refusal('#N/A', 'missing: fault_kA'));
  });
  test('Ics above Icu is a slip in the data', () => {
    expect(run('AFTER_FAULT', 31, 25, 50, 'breaker')).toEqual(refusal('#NUM!', 'ics_kA: 50 kA is above icu_kA, 25 kA'));
    expect(run('AFTER_FAULT', 31, 80, 100, 'fuse')).toBe('replace all links; inspect the switch and carriers before return');
  });
  test('the working states the capacities that were asked about, and no others', () => {
    const inputs = (...argv: Parameters<typeof outcomeOf>[1]) => (outcomeOf('AFTER_FAULT', argv).work as Recorder).steps.map((step) => step.inputs);
    expect(inputs(31, 50, 25, 'breaker')).toEqual([{ Ik: [31, 'kA'], Icu: [50, 'kA'], Ics: [25, 'kA'] }]);
    expect(inputs(55, 50, '', 'breaker')).toEqual([{ Ik: [55, 'kA'], Icu: [50, 'kA'] }]);
    expect(inputs(31, 80, 25, 'fuse')).toEqual([{ Ik: [31, 'kA'], Icu: [80, 'kA'] }]);
  });
  test('nothing ever says that a device is fit', () => {
    const sentences = ['breaker', 'fuse'].flatMap((kind) => [1, 10, 24.9, 25, 25.1, 49, 50, 51, 300].map((kA) => run('AFTER_FAULT', kA, 50, 25, kind) as string));
    expect(new Set(sentences).size).toBe(5);
    for (const sentence of sentences) {
      expect(sentence).not.toMatch(/\bfit\b|\bsafe\b|\bOK\b|\bpass/i);
      expect(sentence).toMatch(/replace|inspect/);
    }
    for (const declaration of life) expect(declaration.caution.replace(/[Nn]ever (says|"fit to return")( fit)?/g, '')).not.toMatch(/\bfit\b/);
  });
});

describe('costs', () => {
  test('check figures', () => {
    expect(run('FIRST_COST', 1480, 35, 4.5, 62)).toBeCloseTo(1241, 9);
    expect(run('FIRST_COST', 930, '27.5 %', '90 min', 62, 410)).toBeCloseTo(1177.25, 9);
    expect(run('REINSTATE_COST', 186, 1.5, 62, 2, 480)).toBeCloseTo(1239, 9);
    expect(run('REINSTATE_COST', 1900, 4, 62, 6, 480, 0.4)).toBeCloseTo(3888, 9);
    expect(run('LOSS_COST', 78, 5200, 0.22)).toBeCloseTo(89.232, 9);
    expect(run('LOSS_COST', '0.12 kW', 8760, 0.18)).toBeCloseTo(189.216, 9);
    expect(run('PRESENT_COST', 1241, 140, 7, 15)).toBeCloseTo(2516.11, 2);
    expect(run('PRESENT_COST', 1241, 140, 0, 15)).toBe(3341);
  });
  test('a blank price is missing and never nothing; zero is a price', () => {
    expect(run('FIRST_COST', '', 35, 4.5, 62)).toEqual(refusal('#N/A', 'missing: list_price'));
    expect(run('FIRST_COST', 0, 0, 0, 0)).toBe(0);
    expect(outcomeOf('FIRST_COST', [0, 35, 4.5, 62], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'list_price is blank or zero: write 0 as text'));
  });
  test('bad input', () => {
    expect(run('FIRST_COST', '1480 EUR', 35, 4.5, 62)).toEqual(refusal('#VALUE!', 'list_price: got "1480 EUR", takes a number without a unit'));
    expect(run('FIRST_COST', '1.480,00', 35, 4.5, 62)).toEqual(refusal('#VALUE!', 'list_price: got "1.480,00", takes one number with a decimal point and no thousands marks'));
    expect(run('FIRST_COST', 1480, 101, 4.5, 62)).toEqual(refusal('#NUM!', 'discount_pct: 101 is outside 0 to 100 %'));
    expect(run('REINSTATE_COST', 1900, 4, 62, 6, 480, '140 %')).toEqual(refusal('#NUM!', 'chance: 1.4 is outside 0 to 1'));
    expect(run('LOSS_COST', 78, 9000, 0.22)).toEqual(refusal('#NUM!', 'hours_h: 9000 is outside 0 to 8784 h'));
    expect(run('PRESENT_COST', 1241, 140, 7, 0)).toEqual(refusal('#VALUE!', 'years: got 0, takes above 0, up to 60'));
    expect(run('FIRST_COST', 1e308, 0, 10000, 1e308)).toEqual(refusal('#NUM!', 'the result is not a finite number'));
  });
  test('no unit stands behind money in the working', () => {
    expect(run('SHOW_WORKING', 'FIRST_COST', 1480, 35, 4.5, 62)).toBe('list·(1 − discount) + hours·rate + extras; list_price 1480, discount_pct 35 %, labour_h 4.5 h, labour_rate 62, extras 0; 1241');
    expect(run('SHOW_WORKING', 'LOSS_COST', 78, 5200, 0.22)).toBe('P/1000·hours·price; loss_W 78 W, hours_h 5200 h, energy_price 0.22; 89.23 a year');
  });
});

describe('BREAKEVEN_RATE, BREAKEVEN_WORDS', () => {
  test('check figures', () => {
    expect(run('BREAKEVEN_RATE', 2650, 2100, 950, 3100, 7, 15)).toBeCloseTo(0.028087, 6);
    expect(run('BREAKEVEN_WORDS', 2650, 2100, 950, 3100, 7, 15)).toBe('A is cheaper above 0.02809 faults a year');
    expect(run('BREAKEVEN_WORDS', 2000, 2100, 950, 3100, 7, 15)).toBe('A is cheaper at every rate');
    expect(run('BREAKEVEN_RATE', 2000, 2100, 950, 950, 7, 15)).toEqual(refusal('#NUM!', 'fault_cost_a and fault_cost_b are equal: no rate makes A and B equal'));
  });
  test('the options the other way round', () => {
    expect(run('BREAKEVEN_WORDS', 2100, 2650, 3100, 950, 7, 15)).toBe('B is cheaper above 0.02809 faults a year');
    expect(run('BREAKEVEN_WORDS', 2100, 2000, 3100, 950, 7, 15)).toBe('B is cheaper at every rate');
  });
  test('equal costs, in part or in all', () => {
    expect(run('BREAKEVEN_WORDS', 2000, 2100, 950, 950, 7, 15)).toBe('A is cheaper at every rate');
    expect(run('BREAKEVEN_WORDS', 2100, 2100, 950, 950, 7, 15)).toBe('A and B cost the same');
    expect(run('BREAKEVEN_WORDS', 2100, 2100, 950, 3100, 7, 15)).toBe('A is cheaper above 0 faults a year');
    expect(run('BREAKEVEN_RATE', 2100, 2100, 950, 3100, 7, 15)).toBe(0);
    expect(cautionOf('BREAKEVEN_RATE', 2100, 2100, 950, 3100, 7, 15)).toBe('');
  });
  test('costs of nothing are equal too', () => {
    expect(run('BREAKEVEN_WORDS', 0, 0, 950, 3100, 7, 15)).toBe('A is cheaper above 0 faults a year');
    expect(run('BREAKEVEN_WORDS', 2100, 2100, 0, 0, 7, 15)).toBe('A and B cost the same');
    expect(run('BREAKEVEN_RATE', 2000, 2100, 0, 0, 7, 15)).toEqual(refusal('#NUM!', 'fault_cost_a and fault_cost_b are equal: no rate makes A and B equal'));
  });
  test('a negative rate is said to be none', () => {
    expect(run('BREAKEVEN_RATE', 2000, 2100, 950, 3100, 7, 15)).toBeLessThan(0);
    expect(cautionOf('BREAKEVEN_RATE', 2000, 2100, 950, 3100, 7, 15)).toBe('no such rate: A is cheaper at every rate');
    expect(cautionOf('BREAKEVEN_RATE', 2650, 2100, 950, 3100, 7, 15)).toBe('');
  });
  test('no verdict and no infinity', () => {
    expect(run('BREAKEVEN_RATE', 1e308, 0, 0, 1e-300, 0, 1)).toEqual(refusal('#NUM!', 'the result is not a finite number'));
    expect(run('BREAKEVEN_WORDS', 1e308, 0, 0, 1e-300, 0, 1)).toEqual(refusal('#NUM!', 'the result is not a finite number'));
  });
  test('the annuity is among the steps', () => {
    const steps = run('SHOW_STEPS', 'BREAKEVEN_RATE', 2650, 2100, 950, 3100, 7, 15) as Matrix;
    expect(steps.find(([step]) => String(step).startsWith('a = '))![1]).toBe('9.10791');
  });
});
