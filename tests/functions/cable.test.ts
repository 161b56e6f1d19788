import type { Recorder } from '../../src/core/working';
import { type Argument, CellError } from '../../src/functions/kernel/cell';
import { outcomeOf, run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);

describe('LOAD_CURRENT', () => {
  test.each([
    [[132, 0.88, 415], 208.681], [['9.5 kW', 0.95, 240, 1], 41.6667], [[75, 0.86, 400, 3, '93 %'], 135.35], [[75, '86 %', '0.4 kV', '', 0.93], 135.35],
  ])('%p', (args, amperes) => expect(run('LOAD_CURRENT', ...args)).toBeCloseTo(amperes, 3));
  test('bad input', () => {
    expect(run('LOAD_CURRENT', 132, 0.88, 415, 2)).toEqual(refusal('#NUM!', 'phases: 2 is not in the list [1, 3]'));
    expect(run('LOAD_CURRENT', 132, 0.88, 415, 1.5)).toMatchObject({ code: '#VALUE!' });
    expect(run('LOAD_CURRENT', 132, 88, 415)).toEqual(refusal('#NUM!', 'pf: 88 is outside above 0, up to 1'));
    expect(run('LOAD_CURRENT', '132 kVA', 0.88, 415)).toEqual(refusal('#VALUE!', 'power_kW: got "132 kVA": kVA is apparent power, takes kW'));
    expect(run('ASSUMED', 'LOAD_CURRENT', 132, 0.88, 415)).toBe('phases=3; efficiency=1');
  });
});

describe('CABLE_RATING', () => {
  test.each([[[284, 0.94, 0.8], 213.568], [[239, 0.87, 1, 0.9, '', 2], 374.274], [[239, '87 %', '', 0.9, '', 2], 374.274], [[100], 100]])('%p', (args, amperes) =>
    expect(run('CABLE_RATING', ...args)).toBeCloseTo(amperes, 9));
  test('per cent typed for a fraction is refused', () => {
    expect(run('CABLE_RATING', 284, 94)).toEqual(refusal('#NUM!', 'ca: 94 is outside above 0, up to 1.5'));
  });
  test('cautions', () => {
    expect(run('CAUTION', 'CABLE_RATING', 284, 0.94, 0.8)).toBe('');
    expect(run('CAUTION', 'CABLE_RATING', 284, 0.3, 0.5)).toBe('product of factors 0.15 is outside 0.2 to 1.3');
    expect(run('CAUTION', 'CABLE_RATING', 284, 1.2, 1.1)).toBe('product of factors 1.32 is outside 0.2 to 1.3');
    expect(run('CAUTION', 'CABLE_RATING', 284, 1, 1, 1, 1.3, 2)).toBe('runs share evenly only if length, size and route are alike');
  });
});

describe('OVERLOAD', () => {
  /** Conventional operating currents: gG 1.6·200 = 320 A, breaker 1.3·200 = 260 A. */
  test.each([
    [180, 200, 235, 320, 'pass', 6.48438], [180, 200, 212, 320, 'FAIL', -3.9375], [180, 200, 212, 260, 'pass', 6], [210, 200, 300, 260, 'FAIL', -4.761905],
    [180, 200, 190, 260, 'FAIL', -5], [200, 200, 200, 290, 'pass', 0],
  ])('load %p, device %p, cable %p, I2 %p', (load, device, cable, i2, verdict, margin) => {
    expect(run('OVERLOAD_TEST', load, device, cable, i2)).toBe(verdict);
    expect(run('OVERLOAD_MARGIN', load, device, cable, i2)).toBeCloseTo(margin, 5);
  });
  test('gG at 1.6 times needs 1.103 times its rating in the cable', () => {
    expect(run('OVERLOAD_TEST', 180, 200, 220.7, 320)).toBe('pass');
    expect(run('OVERLOAD_TEST', 180, 200, 220.6, 320)).toBe('FAIL');
  });
  test('the working names the condition that fails', () => {
    expect(run('SHOW_STEPS', 'OVERLOAD_TEST', 180, 200, 212, 320)).toEqual([
      ['step', 'value'], ['load_A', '180 A'], ['device_A', '200 A'], ['cable_A', '212 A'], ['i2_A', '320 A'],
      ['margin of Ib ≤ In = (In/Ib − 1)·100', '11.11 %, met'],
      ['margin of In ≤ Iz = (Iz/In − 1)·100', '6 %, met'],
      ['margin of I2 ≤ 1.45·Iz = (1.45·Iz/I2 − 1)·100', '-3.938 %, NOT MET'],
      ['OVERLOAD_TEST', 'FAIL'],
    ]);
  });
  test('blanks, I2 below the rating, kA typed for A', () => {
    for (const data of [['', 235, 320], [200, '', 320], [200, 235, '']]) expect(run('OVERLOAD_TEST', 180, ...data)).toBe('not shown');
    expect(run('OVERLOAD_MARGIN', 180, 200, '', 320)).toEqual(refusal('#N/A', 'missing: cable_A'));
    expect(run('CAUTION', 'OVERLOAD_TEST', 180, 200, '', 320)).toBe('missing: cable_A');
    expect(run('OVERLOAD_TEST', '', 200, 235, 320)).toEqual(refusal('#N/A', 'missing: load_A'));
    expect(run('OVERLOAD_TEST', 180, 200, 235, 199)).toEqual(refusal('#NUM!', 'i2_A: 199 A is below device_A, 200 A'));
    expect(run('CAUTION', 'OVERLOAD_TEST', 0.18, 200, 235, 320)).toBe('load_A is 0.18 A: kA typed for A?');
    expect(run('OVERLOAD_TEST', '0.18 kA', 200, 235, 320)).toBe('pass');
  });
});

describe('VOLT_DROP', () => {
  test('three-phase and single-phase', () => {
    expect(run('VOLT_DROP', 24, 1, '46+2i', 1)).toBeCloseTo(2.208, 9);
    // √3·132·(10·0.8 + 5·0.6)/1000, by hand 2.514927…
    expect(run('VOLT_DROP', 132, 0.8, '10+5i')).toBeCloseTo(2.5149, 4);
    expect(run('VOLT_DROP', 132, 0.8, [[10, 5]])).toBeCloseTo(2.5149, 4);
    expect(run('VOLT_DROP', 100, 1, '50 mohm', 1)).toBeCloseTo(10, 9);
  });
  test('bad input', () => {
    expect(run('VOLT_DROP', 132, 0.8, '-10+5i')).toMatchObject({ code: '#VALUE!', message: expect.stringContaining('z_mohm') });
    expect(run('VOLT_DROP', 132, 1.1, '10+5i')).toEqual(refusal('#NUM!', 'pf: 1.1 is outside above 0, up to 1'));
  });
});

describe('HARMONIC_CURRENT', () => {
  /** Worked figures of IEC 60364-5-52 annex E (from memory): 39 A at 20, 40 and 50 % take 45, 54.4 and 58.5 A. */
  test.each([[39, 20, 45.3488], [39, 40, 54.4186], [39, 50, 58.5], [39, 0, 39], [39, 15, 39], [39, 15.1, 45.3488], [39, 33, 45.3488], [39, 33.4, 45.43953], [39, 45, 61.22093], [39, 46, 53.82]])(
    '%p A with %p %%', (load, third, amperes) => expect(run('HARMONIC_CURRENT', load, third)).toBeCloseTo(amperes, 4));
  test('neutral', () => {
    expect(run('HARMONIC_CURRENT', 85, 28, 'neutral')).toBeCloseTo(71.4, 9);
    expect(run('HARMONIC_CURRENT', 85, 0, 'neutral')).toBe(0);
  });
  test('a blank share is missing, never zero', () => {
    expect(run('HARMONIC_CURRENT', 85, '')).toEqual(refusal('#N/A', 'missing: third_pct'));
    expect(outcomeOf('HARMONIC_CURRENT', [85, 0], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'third_pct is blank or zero: write 0 as text'));
    expect(outcomeOf('HARMONIC_CURRENT', [85, '0'], { blankArrivesAsZero: true }).value).toBe(85);
  });
});

describe('withstand', () => {
  test('joule integral and current', () => {
    expect(run('CABLE_WITHSTAND', 115, 25)).toBe(8265625);
    expect(run('CABLE_WITHSTAND', 94, 240, 2)).toBe(2035814400);
    expect(run('CABLE_WITHSTAND_CURRENT', 115, 25, 0.4)).toBeCloseTo(4.54577, 5);
    expect(run('CABLE_WITHSTAND_CURRENT', 94, 150, '200 ms', 2)).toBeCloseTo(63.0571, 4);
  });
  test('over 5 s the method does not hold', () => {
    expect(run('CABLE_WITHSTAND_CURRENT', 115, 25, 5.1)).toEqual(refusal('#NUM!', 'time_s: 5.1 is outside above 0, up to 5 s'));
  });
  test.each([['CABLE_WITHSTAND', 115, 25, 2], ['CABLE_WITHSTAND_CURRENT', 115, 25, 0.4, 2], ['CABLE_MIN_SIZE', 8200000, 143, 2], ['CABLE_FINAL_TEMP', 1e6, 25, 70, 'cu', 2]])(
    '%p warns of parallel runs', (name, ...args) => expect(run('CAUTION', name, ...args)).toBe('even sharing taken: a fault inside one run loads that run alone'));
});

describe('NON_ADIABATIC_FACTOR', () => {
  test.each([[25, 3, 'Cu', 'PVC', 1.05245], [150, 5, 'Al', 'EPR', 1.04862], [25, 3, 'Cu', 'XLPE', 1.07537], [25, 3, 'aluminum', 'XLPE', 1.10302]])('%p mm², %p s, %p, %p', (csa, time, metal, insulation, factor) =>
    expect(run('NON_ADIABATIC_FACTOR', csa, time, metal, insulation)).toBeCloseTo(factor, 4));
  test('rubber is not in the table', () => expect(run('NON_ADIABATIC_FACTOR', 25, 3, 'Cu', 'rubber')).toMatchObject({ code: '#VALUE!' }));
});

describe('CABLE_MIN_SIZE', () => {
  test('as worked and as listed', () => {
    expect(run('CABLE_MIN_SIZE', 8200000, 143)).toBeCloseTo(20.0249, 4);
    expect(run('CABLE_MIN_SIZE', 8200000, 143, 1, true)).toBe(25);
    expect(run('CABLE_MIN_SIZE', 8200000, 143, '', 'yes')).toBe(25);
    expect(run('CABLE_MIN_SIZE', 1.69e7, 115)).toBeCloseTo(35.7475, 4);
    expect(run('CABLE_MIN_SIZE', 100, 143, 1, true)).toBe(0.5);
    expect(run('CABLE_MIN_SIZE', 8265625, 115, 1, true)).toBe(25);
  });
  test('above the list', () => {
    expect(run('CABLE_MIN_SIZE', 2.5e10, 143, 1, true)).toEqual(refusal('#NUM!', 'joule_A2s: needs 1106 mm², above the largest listed size, 1000 mm²'));
    expect(run('CABLE_MIN_SIZE', 2.5e10, 143)).toBeCloseTo(1105.69, 2);
    expect(run('CABLE_MIN_SIZE', 2.5e10, 143, 2, true)).toBe(630);
  });
});

describe('CABLE_FINAL_TEMP', () => {
  test('as worked', () => {
    expect(run('CABLE_FINAL_TEMP', 12000000, 50, 90, 'Cu')).toBeCloseTo(121.975, 3);
    expect(run('CABLE_FINAL_TEMP', 9.5e6, 70, 30, 'steel')).toBeCloseTo(117.068, 3);
  });
  test('melting', () => {
    expect(run('CABLE_FINAL_TEMP', 1e13, 1.5, 70, 'cu')).toEqual(refusal('#NUM!', 'joule_A2s: 10000000000000 A²s would take the conductor above 1083 °C, where copper melts'));
    expect(run('CABLE_FINAL_TEMP', 9e6, 70, 30, 'lead')).toEqual(refusal('#NUM!', 'joule_A2s: 9000000 A²s would take the conductor above 327 °C, where lead melts'));
  });
  test('above 250 °C a caution', () => {
    expect(run('CABLE_FINAL_TEMP', 5.2e7, 50, 90, 'cu')).toBeGreaterThan(250);
    expect(run('CAUTION', 'CABLE_FINAL_TEMP', 5.2e7, 50, 90, 'cu')).toBe('above 250 °C no common insulation survives');
    expect(run('CAUTION', 'CABLE_FINAL_TEMP', 12000000, 50, 90, 'cu')).toBe('');
  });
});

describe('CABLE_LEG_SHARE', () => {
  test('unequal legs', () => {
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], ['5.0+3.7i']], 640, 1)).toBeCloseTo(347.971, 3);
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], ['5.0+3.7i'], ['4.2+3.1i']], '0.9 kA', 2)).toBeCloseTo(266.027, 3);
    expect(run('CABLE_LEG_SHARE', [[3, 6]], 90, 1)).toBeCloseTo(60, 9);
    expect(run('CABLE_LEG_SHARE', '4.2+3.1i', 640, 1)).toBeCloseTo(640, 9);
    expect(run('CABLE_LEG_SHARE', [[3], [6], [null]], 90, 2)).toBeCloseTo(30, 9);
  });
  test('bad input', () => {
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], ['5.0+3.7i']], 640, 3)).toEqual(refusal('#NUM!', 'leg: 3 is above the number of legs, 2'));
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], [null], ['5.0+3.7i']], 640, 1)).toEqual(refusal('#N/A', 'missing: z_legs_mohm 2'));
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], [0]], 640, 1)).toEqual(refusal('#NUM!', 'z_legs_mohm: leg 2 is 0 mΩ: no share can be worked'));
    expect(outcomeOf('CABLE_LEG_SHARE', [[['4.2+3.1i'], [0]], 640, 1], { blankArrivesAsZero: true }).value).toMatchObject({ code: '#VALUE!' });
    expect(run('CABLE_LEG_SHARE', '', 640, 1)).toEqual(refusal('#N/A', 'missing: z_legs_mohm'));
    expect(run('CABLE_LEG_SHARE', [['4.2+3.1i'], ['5.0+3.7i']], 640, 0)).toMatchObject({ code: '#VALUE!' });
  });
});

describe('EARTH_SIZE_TABLE', () => {
  test.each([[[10], 10], [[16], 16], [[25], 16], [[35], 16], [[50], 25], [[120, 143, 46], 186.52174], [[16.1], 16], [['0.16 cm²'], 16]])('%p', (args, size) =>
    expect(run('EARTH_SIZE_TABLE', ...args)).toBeCloseTo(size, 5));
  test('one k without the other', () => {
    expect(run('EARTH_SIZE_TABLE', 120, 143)).toEqual(refusal('#N/A', 'missing: earth_k'));
    expect(run('EARTH_SIZE_TABLE', 120, '', 46)).toEqual(refusal('#N/A', 'missing: line_k'));
    expect(run('ASSUMED', 'EARTH_SIZE_TABLE', 120)).toBe('line_k=same metal; earth_k=same metal');
  });
});

describe('LOOP_MAX', () => {
  test('as worked', () => {
    expect(run('LOOP_MAX', 1150, 240)).toBeCloseTo(198.261, 3);
    expect(run('LOOP_MAX', 320, 230, 0.95, 0.8)).toBeCloseTo(546.25, 9);
    expect(run('LOOP_MAX', '1.15 kA', '240 V', '95 %')).toBeCloseTo(198.261, 3);
  });
  test('kA typed for A is seen, a residual-current device is not taken for it', () => {
    expect(run('CAUTION', 'LOOP_MAX', 1.15, 240)).toBe('trip_A is 1.15 A: kA typed for A?');
    expect(run('CAUTION', 'LOOP_MAX', 0.03, 230)).toBe('');
    expect(run('CAUTION', 'LOOP_MAX', 1150, 240)).toBe('');
    expect(run('LOOP_MAX', 1150, 240, 1.05)).toEqual(refusal('#NUM!', 'c: 1.05 is outside 0.9 to 1'));
  });
});

describe('DISCONNECT_LIMIT', () => {
  /** IEC 60364-4-41 table 41.1 (from memory). */
  test.each([
    ['TN', 'final', 120, 0.8], ['TN', 'final', 230, 0.4], ['TN', 'final', 231, 0.2], ['TN', 'final', 240, 0.2], ['TN', 'final', 400, 0.2], ['TN', 'final', 401, 0.1],
    ['TT', 'final', 120, 0.3], ['TT', 'final', 230, 0.2], ['TT', 'final', 400, 0.07], ['TT', 'final', 600, 0.04], ['TN', 'submain', 230, 5], ['TT', 'dist', 230, 1],
    ['tn-c-s', 'FINAL', '0.23 kV', 0.4], ['IT', 'final', 230, 0.4], ['IT', 'distribution', 230, 5],
  ])('%p %p at %p V', (system, circuit, u0, seconds) => expect(run('DISCONNECT_LIMIT', system, circuit, u0)).toBe(seconds));
  test('outside the table', () => {
    expect(run('DISCONNECT_LIMIT', 'TN', 'final', 50)).toEqual(refusal('#NUM!', 'u0_V: 50 is outside above 50, up to 600 V'));
    expect(run('DISCONNECT_LIMIT', 'TN', 'final', 601)).toEqual(refusal('#NUM!', 'u0_V: 601 is outside above 50, up to 600 V'));
    expect(run('DISCONNECT_LIMIT', 'TN', 'final', 0)).toMatchObject({ code: '#VALUE!' });
    expect(run('DISCONNECT_LIMIT', 'TNS', 'final', 230)).toEqual(refusal('#VALUE!', 'system: got "TNS", takes TN (tn-s, tn-c, tn-c-s, tn-cs) · TT · IT'));
  });
  test('cautions', () => {
    expect(run('CAUTION', 'DISCONNECT_LIMIT', 'IT', 'final', 230)).toBe('IT, second fault: exposed parts earthed together; in groups take TT');
    expect(run('CAUTION', 'DISCONNECT_LIMIT', 'TN', 'distribution', 230)).toBe('a final circuit up to 63 A with sockets, or 32 A without, takes final');
    expect(run('CAUTION', 'DISCONNECT_LIMIT', 'TN', 'final', 230)).toBe('');
  });
});

describe('figures and working of the rarer arguments', () => {
  const steps = (name: string, ...argv: Argument[]): string[] => {
    const table = run('SHOW_STEPS', name, ...argv);
    return Array.isArray(table) ? table.map(([step]) => String(step)) : [];
  };
  test('every factor of a rating multiplies, and counts in the caution', () => {
    expect(run('CABLE_RATING', 100, 1, 1, 0.9, 0.8)).toBeCloseTo(72, 9);
    expect(run('CAUTION', 'CABLE_RATING', 100, 1, 1, 0.5, 0.3)).toBe('product of factors 0.15 is outside 0.2 to 1.3');
  });
  test('two runs take four times the joule integral to the same temperature', () => {
    expect(run('CABLE_FINAL_TEMP', 48e6, 50, 90, 'Cu', 2)).toBeCloseTo(run('CABLE_FINAL_TEMP', 12e6, 50, 90, 'Cu') as number, 9);
  });
  test('the first leg may be the dead one', () => {
    expect(run('CABLE_LEG_SHARE', [['0'], ['5+3i']], 640, 2)).toEqual(refusal('#NUM!', 'z_legs_mohm: leg 1 is 0 mΩ: no share can be worked'));
  });
  test('the working numbers the legs from 1', () => {
    const { work } = outcomeOf('CABLE_LEG_SHARE', [[['4.2+3.1i'], ['5.0+3.7i']], 640, 1]);
    expect((work as Recorder).steps.map(({ inputs }) => Object.keys(inputs))).toEqual([['Z1', 'Z2'], ['I', 'Zp', 'Z']]);
  });
  test('the working shows the formula of the phases that were asked', () => {
    expect(steps('LOAD_CURRENT', 9.5, 0.95, 240, 1)).toContain('Ib = P/(U·cos φ·η)');
    expect(steps('LOAD_CURRENT', 9.5, 0.95, 400, 3)).toContain('Ib = P/(√3·U·cos φ·η)');
    expect(steps('VOLT_DROP', 24, 1, '46+2i', 1)).toContain('ΔU = 2·Ib·(R·cos φ + X·sin φ)');
    expect(steps('VOLT_DROP', 24, 1, '46+2i', 3)).toContain('ΔU = √3·Ib·(R·cos φ + X·sin φ)');
  });
});
