import { refusal } from '../support/expect';
import { outcomeOf, run } from '../support/run';

const cautionOf = (name: string, ...argv: Parameters<typeof outcomeOf>[1]) => outcomeOf(name, argv).cautions.join('; ');

describe('UNIT_CONVERT', () => {
  test('check figures', () => {
    expect(run('UNIT_CONVERT', 12.5, 'J/cm²', 'cal/cm²')).toBeCloseTo(2.98757, 5);
    expect(run('UNIT_CONVERT', 350, 'ft', 'm')).toBeCloseTo(106.68, 10);
    expect(run('UNIT_CONVERT', 63, 'kA', 'mm²')).toEqual(refusal('#VALUE!', 'to: mm² is area, kA is current'));
  });
  // Powers of ten are exact either way: 9·0.001 would be 0.009000000000000001, 0.35/0.001 would be 349.99999999999994.
  test.each([[9, 'A', 'kA', 0.009], [0.35, 'kA', 'A', 350], [52, 'ms', 's', 0.052], [0.57, 'Ω', 'mΩ', 570], [43, '%', '1', 0.43], [0.1, 'm', 'm', 0.1]])('%p %s is exactly %s: %p', (value, from, to, expected) => {
    expect(run('UNIT_CONVERT', value, from, to)).toBe(expected);
  });
  test.each([['mm3', 'mm³'], ['mm^3', 'mm³'], ['cm^2', 'cm²'], ['kA2s', 'kA²s'], ['\u03bc\u2126', 'µΩ'], [' k A ', 'kA'], ['J / cm2', 'J/cm²']])('%p is another way to write %s', (spelling, unit) => {
    expect(run('UNIT_CONVERT', 7, spelling, unit)).toBe(7);
  });
  test('spellings, signs, units inside the value', () => {
    expect(run('UNIT_CONVERT', -5, 'ohm', 'mΩ')).toBe(-5000);
    expect(run('UNIT_CONVERT', '63 A', 'kA', 'A')).toBeCloseTo(63, 12);
    expect(run('UNIT_CONVERT', 0, 'm', 'mm')).toBe(0);
    expect(run('UNIT_CONVERT', 1, 'h', 's')).toBe(3600);
    expect(run('UNIT_CONVERT', 6, '%', '1')).toBe(0.06);
  });
  test('what it does not take', () => {
    expect(run('UNIT_CONVERT', 5, 'stone', 'kg')).toEqual(refusal('#VALUE!', 'from: "stone" is not a unit known here'));
    expect(run('UNIT_CONVERT', 5, 'm', 'ell')).toEqual(refusal('#VALUE!', 'to: "ell" is not a unit known here'));
    expect(run('UNIT_CONVERT', 5, '°C', 'K')).toEqual(refusal('#VALUE!', 'to: K is temperature difference, °C is temperature'));
    expect(run('UNIT_CONVERT', true, 'm', 'mm')).toEqual(refusal('#VALUE!', 'value: got TRUE, takes a number in m'));
    expect(run('UNIT_CONVERT', '5 s', 'm', 'mm')).toEqual(refusal('#VALUE!', 'value: got "5 s": s is time, takes m'));
    expect(run('UNIT_CONVERT', 1e308, 'km', 'mm')).toEqual(refusal('#NUM!', 'the result is not a finite number'));
    expect(run('UNIT_CONVERT', '', 'm', 'mm')).toEqual(refusal('#N/A', 'missing: value'));
  });
  test('working and cautions', () => {
    expect(run('SHOW_WORKING', 'UNIT_CONVERT', 2, 'm', 'cm')).toBe('value·from/to; value 2, from m, to cm; 200 cm');
    expect(run('SHOW_WORKING', 'UNIT_CONVERT', 6, '%', '1')).toBe('value·from/to; value 6, from %, to 1; 0.06');
    for (const [from, to] of [['kA²s', 'A²s'], ['A²s', 'kA2s']] as const) expect(cautionOf('UNIT_CONVERT', 1, from, to)).toBe('kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it');
    expect(cautionOf('UNIT_CONVERT', 1, 'm', 'cm')).toBe('');
  });
});
