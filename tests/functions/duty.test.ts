import { CellError } from '../../src/functions/kernel/cell';
import { run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);

describe('BREAKING', () => {
  test.each([
    [38, 50, 37.5, 'once', 'pass', 31.578947], [38, 50, 37.5, 'service', 'FAIL', -1.315789], [38, 50, '', 'once', 'pass', 31.578947], [37.5, '', 37.5, 'ics', 'pass', 0],
    ['38000 A', '50 kA', 37.5, 'ICU', 'pass', 31.578947], [51, 50, 50, 'once', 'FAIL', -1.960784],
  ])('%p kA against Icu %p, Ics %p, %p', (fault, icu, ics, need, verdict, margin) => {
    expect(run('BREAKING_TEST', fault, icu, ics, need)).toBe(verdict);
    expect(run('BREAKING_MARGIN', fault, icu, ics, need)).toBeCloseTo(margin, 5);
  });
  test('Icu never stands in for Ics, nor Ics for Icu', () => {
    expect(run('BREAKING_TEST', 38, 50, '', 'service')).toBe('not shown');
    expect(run('BREAKING_MARGIN', 38, 50, '', 'service')).toEqual(refusal('#N/A', 'missing: ics_kA'));
    expect(run('CAUTION', 'BREAKING_TEST', 38, 50, '', 'service')).toBe('missing: ics_kA');
    expect(run('BREAKING_TEST', 38, '', 37.5, 'once')).toBe('not shown');
    expect(run('CAUTION', 'BREAKING_TEST', 38, '', '', 'once')).toBe('missing: icu_kA');
    expect(run('BREAKING_TEST', 38, 37.5, 50, 'service')).toEqual(refusal('#NUM!', 'ics_kA: 50 kA is above icu_kA, 37.5 kA'));
    expect(run('BREAKING_TEST', 38, 50, 50, 'once')).toBe('pass');
  });
  test('which need is asked must be said', () => {
    expect(run('BREAKING_TEST', 38, 50, 37.5, '')).toEqual(refusal('#N/A', 'missing: need'));
    expect(run('BREAKING_TEST', 38, 50, 37.5, 'twice')).toEqual(refusal('#VALUE!', 'need: got "twice", takes service (ics) · once (icu)'));
  });
  /** Test power factors of IEC 60947-2 table 11 (from memory). */
  test.each([[60, 50.1, 0.2], [40, 50, 0.25], [15, 20, 0.3], [8, 10, 0.5], [5, 6, 0.7], [5, 20.1, 0.25], [5, 10.1, 0.3], [5, 6.1, 0.5], [4, 4.6, 0.7]])(
    'fault %p against Icu %p: network power factor below %p shows nothing', (fault, icu, pf) => {
      const pass = fault <= icu;
      expect(run('BREAKING_TEST', fault, icu, '', 'once', pf)).toBe(pass ? 'pass' : 'FAIL');
      expect(run('BREAKING_TEST', fault, icu, '', 'once', pf - 0.001)).toBe(pass ? 'not shown' : 'FAIL');
    });
  test('up to 4.5 kA no test power factor is compared; the margin stands whatever the power factor', () => {
    expect(run('BREAKING_TEST', 4, 4.5, '', 'once', 0.1)).toBe('pass');
    expect(run('BREAKING_MARGIN', 38, 50, 37.5, 'once', 0.2)).toBeCloseTo(31.578947, 5);
    expect(run('CAUTION', 'BREAKING_TEST', 38, 50, 37.5, 'once', 0.2)).toBe('network power factor 0.2 is below the 0.25 at which 50 kA is tested');
    expect(run('BREAKING_TEST', 38, 60, 50, 'service', 0.2)).toBe('not shown');
    expect(run('ASSUMED', 'BREAKING_TEST', 38, 50, 37.5, 'once')).toBe('network_pf=not compared');
  });
});

describe('MAKING', () => {
  test.each([[76, 36, '', 'FAIL', -0.526316], [75.6, 36, '', 'pass', 0], [76, 36, 80, 'pass', 5.263158], [9, '', 12, 'pass', 33.333333], [9, 4, 12, 'pass', 33.333333], [110, 50.1, '', 'pass', 0.2]])(
    'peak %p against Icu %p, Icm %p', (peak, icu, icm, verdict, margin) => {
      expect(run('MAKING_TEST', peak, icu, icm)).toBe(verdict);
      expect(run('MAKING_MARGIN', peak, icu, icm)).toBeCloseTo(margin, 5);
    });
  test('without Icm, and Icu not known or too small for a ratio', () => {
    expect(run('MAKING_TEST', 9, '', '')).toBe('not shown');
    expect(run('MAKING_MARGIN', 9, '')).toEqual(refusal('#N/A', 'missing: icu_kA or icm_kA'));
    expect(run('MAKING_TEST', 9, 4.5)).toBe('not shown');
    expect(run('CAUTION', 'MAKING_TEST', 9, 4.5)).toBe('missing: icm_kA; no ratio stated for a breaker up to 4.5 kA');
    expect(run('MAKING_TEST', '', 36)).toEqual(refusal('#N/A', 'missing: peak_kA'));
    expect(run('MAKING_TEST', 9, '', -12)).toMatchObject({ code: '#VALUE!' });
  });
});

describe('SHORTTIME', () => {
  test.each([
    [32, 0.4, 36, 1, 'pass', 12.5], [32, 1, 50, 0.3, 'FAIL', -14.41835], [36, 1, 36, 1, 'pass', 0], [36.1, 0.1, 36, 1, 'FAIL', -0.277008], [20, '3 s', 36, '1000 ms', 'pass', 3.923048],
  ])('%p kA for %p s against %p kA for %p s', (fault, time, icw, icwTime, verdict, margin) => {
    expect(run('SHORTTIME_TEST', fault, time, icw, icwTime)).toBe(verdict);
    expect(run('SHORTTIME_MARGIN', fault, time, icw, icwTime)).toBeCloseTo(margin, 5);
  });
  test('beyond 3 s, and blanks', () => {
    expect(run('SHORTTIME_TEST', 32, 4, 50, 1)).toEqual(refusal('#NUM!', 'time_s: 4 is outside above 0, up to 3 s'));
    expect(run('SHORTTIME_TEST', 32, 1, '', 1)).toBe('not shown');
    expect(run('SHORTTIME_MARGIN', 32, 1, 50, '')).toEqual(refusal('#N/A', 'missing: icw_s'));
    expect(run('SHORTTIME_TEST', 32, 1, '', 5)).toEqual(refusal('#NUM!', 'icw_s: 5 is outside above 0, up to 3 s'));
  });
});

describe('CONDITIONAL', () => {
  test.each([[62, 80, '400 A gG type 1', '400 a gg  type 1', 'pass', 29.032258], [62, 80, '400 A gG', '400A\u00a0gG', 'pass', 29.032258], [82, 80, 'F1', 'F1', 'FAIL', -2.439024]])(
    '%p kA against %p kA, tested %p, fitted %p', (fault, conditional, tested, fitted, verdict, margin) => {
      expect(run('CONDITIONAL_TEST', fault, conditional, tested, fitted)).toBe(verdict);
      expect(run('CONDITIONAL_MARGIN', fault, conditional, tested, fitted)).toBeCloseTo(margin, 5);
    });
  test('another device shows nothing, either way', () => {
    const reason = 'another device: tested with "400 A gG type 1", fitted "500 A gG type 1"';
    expect(run('CONDITIONAL_TEST', 62, 80, '400 A gG type 1', '500 A gG type 1')).toBe('not shown');
    expect(run('CONDITIONAL_TEST', 90, 80, '400 A gG type 1', '500 A gG type 1')).toBe('not shown');
    expect(run('CONDITIONAL_MARGIN', 62, 80, '400 A gG type 1', '500 A gG type 1')).toEqual(refusal('#N/A', reason));
    expect(run('CAUTION', 'CONDITIONAL_TEST', 62, 80, '400 A gG type 1', '500 A gG type 1')).toBe(reason);
    expect(run('CONDITIONAL_TEST', 62, 80, 'F1', '')).toBe('not shown');
    expect(run('CAUTION', 'CONDITIONAL_TEST', 62, 80, '', 'F1')).toBe('missing: device_tested');
  });
});

describe('PEAK_RATIO', () => {
  /** IEC 60947-2 table 2 and IEC 61439-1 table 7 (from memory). */
  test.each([
    [4.6, 'breaker', 1.5], [6, 'breaker', 1.5], [6.1, 'breaker', 1.7], [10, 'breaker', 1.7], [20, 'breaker', 2], [36, 'breaker', 2.1], [50, 'breaker', 2.1], [50.1, 'breaker', 2.2], ['36000 A', 'Breaker', 2.1],
    [1, 'assembly', 1.5], [5, 'assembly', 1.5], [5.1, 'assembly', 1.7], [10, 'assembly', 1.7], [20, 'assembly', 2], [35, 'assembly', 2.1], [80, 'assembly', 2.2],
  ])('%p kA %p', (rating, kind, n) => expect(run('PEAK_RATIO', rating, kind)).toBe(n));
  test('none is stated for small breakers', () => {
    expect(run('PEAK_RATIO', 4.5, 'breaker')).toEqual(refusal('#NUM!', 'rating_kA: no ratio stated for a breaker up to 4.5 kA'));
    expect(run('PEAK_RATIO', 36, 'switch')).toEqual(refusal('#VALUE!', 'kind: got "switch", takes breaker · assembly'));
  });
});

describe('common mistakes', () => {
  const kiloamperes: [string, unknown[], string][] = [
    ['BREAKING_TEST', [36000, 50, 50, 'once'], 'fault_kA'], ['BREAKING_TEST', [36, 50000, 50, 'once'], 'icu_kA'], ['SHORTTIME_TEST', [36000, 1, 50, 1], 'fault_kA'],
    ['SHORTTIME_TEST', [36, 1, 50000, 1], 'icw_kA'], ['CONDITIONAL_TEST', [36000, 80, 'F1', 'F1'], 'fault_kA'], ['LETTHROUGH_PROSPECTIVE', [36000, 1], 'fault_kA'],
    ['PEAK_RATIO', [36000, 'breaker'], 'rating_kA'], ['CUTOFF_ESTIMATE', [120000, 40000], 'fault_kA'], ['LETTHROUGH_RATIO', [1, 2, 36000, 36000], 'a_kA'],
  ];
  test.each(kiloamperes)('%p refuses amperes where kiloamperes are asked: %p', (name, args, argument) =>
    expect(run(name, ...(args as never[]))).toMatchObject({ code: '#NUM!', message: expect.stringMatching(new RegExp(`^${argument}: \\d+ is outside above 0, up to 300 kA$`)) }));
  test('amperes that still fit are questioned, kiloamperes of low voltage are not', () => {
    expect(run('CAUTION', 'BREAKING_TEST', 250, 50, 50, 'once')).toBe('fault_kA is 250 kA: A typed for kA?');
    for (const name of ['SHORTTIME_TEST', 'SHORTTIME_MARGIN']) expect(run('CAUTION', name, 250, 1, 50, 1)).toBe('fault_kA is 250 kA: A typed for kA?');
    expect(run('CAUTION', 'CONDITIONAL_TEST', 250, 80, 'F1', 'F1')).toBe('fault_kA is 250 kA: A typed for kA?');
    expect(run('CAUTION', 'BREAKING_TEST', 120, 150, 150, 'once')).toBe('');
  });
  test('a rating in kA with its unit in the text is read, one in another quantity is refused', () => {
    expect(run('BREAKING_TEST', '36000 A', '50 kA', '50 kA', 'once')).toBe('pass');
    expect(run('BREAKING_TEST', '36 kV', 50, 50, 'once')).toEqual(refusal('#VALUE!', 'fault_kA: got "36 kV": kV is voltage, takes kA'));
  });
});
