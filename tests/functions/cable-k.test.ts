import { adiabaticFactor } from '../../src/core/cable/adiabatic-factor';
import { adiabaticConstants } from '../../src/core/standards/adiabatic-constants';
import { CellError } from '../../src/functions/kernel/cell';
import { run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);

describe('CABLE_K', () => {
  /** IEC 60364-4-43 table 43A (from memory), as reprinted: k of line conductors. */
  test.each([
    ['copper', 'PVC', undefined, 115], ['copper', 'PVC', 400, 103], ['copper', 'PVC90', undefined, 100], ['copper', 'PVC90', 400, 86],
    ['copper', 'XLPE', undefined, 143], ['copper', 'EPR', undefined, 143], ['copper', 'rubber60', undefined, 141], ['copper', 'rubber85', undefined, 134],
    ['copper', 'mineral covered', undefined, 115], ['copper', 'mineral', undefined, 135],
    ['aluminium', 'PVC', undefined, 76], ['aluminium', 'PVC', 400, 68], ['aluminium', 'XLPE', undefined, 94], ['aluminium', 'rubber60', undefined, 93],
  ])('%p, %p, %p mm²: the whole number of the table', (metal, insulation, csa, k) => {
    expect(run('CABLE_K', metal, insulation, csa)).toBe(k);
  });

  test('table and formula agree within the rounding of the standard', () => {
    for (const [metal, start, end, k] of [['copper', 70, 160, 115], ['aluminium', 90, 250, 94], ['steel', 80, 200, 46], ['lead', 60, 200, 26]] as const) {
      expect(Math.abs(adiabaticFactor(metal, { start, end }) - k)).toBeLessThanOrEqual(0.5);
    }
  });

  test('the printed constant is the volumetric one to a whole number', () => {
    for (const { printed, heatCapacity, beta, resistivity } of Object.values(adiabaticConstants)) {
      expect(Math.round(Math.sqrt((heatCapacity * (beta + 20)) / resistivity))).toBe(printed);
    }
  });

  test('a temperature of one’s own gives the unrounded figure', () => {
    expect(run('CABLE_K', 'copper', 'EPR', undefined, 75)).toBeCloseTo(151.29503, 5);
    expect(run('CABLE_K', 'cu', 'XLPE', undefined, 90)).toBeCloseTo(143.08351, 5);
    expect(run('CABLE_K', 'cu', 'XLPE', undefined, undefined, 250)).toBeCloseTo(143.08351, 5);
    expect(run('CABLE_K', 'al', 'pvc 70', '3 cm²', '70 C', '160 °C')).toBeCloseTo(76.03108, 5);
  });

  test('300 mm² is not above 300 mm²', () => {
    expect(run('CABLE_K', 'cu', 'PVC', 300)).toBe(115);
    expect(run('CABLE_K', 'cu', 'PVC', 300.1)).toBe(103);
    expect(run('CABLE_K', 'cu', 'XLPE', 400)).toBe(143);
  });

  test('limits of the insulation', () => {
    expect(run('CABLE_K', 'cu', 'PVC', undefined, undefined, 200)).toEqual(refusal('#NUM!', 'end_C: 200 °C is above the limit of PVC, 160 °C'));
    expect(run('CABLE_K', 'cu', 'PVC', 400, undefined, 150)).toEqual(refusal('#NUM!', 'end_C: 150 °C is above the limit of PVC, 140 °C'));
    expect(run('CABLE_K', 'cu', 'PVC', undefined, undefined, 70)).toEqual(refusal('#NUM!', 'end_C: 70 °C is not above the start, 70 °C'));
    expect(run('CABLE_K', 'cu', 'PVC', undefined, 160)).toEqual(refusal('#NUM!', 'start_C: 160 °C is not below the end, 160 °C'));
    expect(run('CABLE_K', 'cu', 'PVC', undefined, -40)).toEqual(refusal('#NUM!', 'start_C: -40 is outside -20 to 250 °C'));
  });

  test('words', () => {
    expect(run('CABLE_K', 'steel', 'PVC')).toEqual(refusal('#VALUE!', 'metal: got "steel", takes copper (cu) · aluminium (al, aluminum)'));
    expect(run('CABLE_K', 'cu', 'paper')).toMatchObject({ code: '#VALUE!', message: expect.stringContaining('insulation: got "paper", takes PVC (pvc70, pvc 70)') });
    expect(run('CABLE_K', 'cu', '')).toEqual(refusal('#N/A', 'missing: insulation'));
    expect(run('ASSUMED', 'CABLE_K', 'cu', 'PVC')).toBe('csa_mm2=up to 300');
  });
});
