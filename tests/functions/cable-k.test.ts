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
    // Qc J/(K·mm³), ρ20 Ω·mm: IEC 60364-5-54:2011 table A.54.1 (from memory).
    const volumetric = { copper: [3.45e-3, 17.241e-6], aluminium: [2.5e-3, 28.264e-6], lead: [1.45e-3, 214e-6], steel: [3.8e-3, 138e-6] } as const;
    for (const metal of ['copper', 'aluminium', 'lead', 'steel'] as const) {
      const [heatCapacity, resistivity] = volumetric[metal];
      const { printed, beta } = adiabaticConstants[metal];
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

describe('EARTH_K', () => {
  /** IEC 60364-5-54 tables A.54.2 to A.54.6 (from memory). */
  test.each([
    ['Cu', 'separate', 'PVC', undefined, 143], ['Cu', 'separate', 'PVC', 400, 133], ['Cu', 'separate', 'XLPE', undefined, 176], ['Cu', 'separate', 'rubber60', undefined, 159],
    ['Cu', 'separate', 'rubber85', undefined, 166], ['Al', 'separate', 'PVC', undefined, 95], ['Al', 'separate', 'PVC', 400, 88], ['Al', 'separate', 'EPR', undefined, 116],
    ['steel', 'separate', 'PVC', undefined, 52], ['steel', 'separate', 'XLPE', undefined, 64],
    ['Cu', 'in cable', 'PVC', undefined, 115], ['Cu', 'core', 'XLPE', undefined, 143], ['Al', 'bunched', 'EPR', undefined, 94], ['steel', 'in cable', 'PVC', undefined, 42],
    ['steel', 'armour', 'PVC', undefined, 51], ['steel', 'armor', 'XLPE', undefined, 46], ['Al', 'armour', 'PVC', undefined, 93], ['Al', 'armour', 'XLPE', undefined, 85],
    ['lead', 'sheath', 'PVC', undefined, 26], ['lead', 'sheath', 'EPR', undefined, 23], ['Cu', 'armour', 'rubber60', undefined, 144], ['Cu', 'armour', 'rubber85', undefined, 140],
    ['Cu', 'bare', undefined, undefined, 159], ['Al', 'bare', undefined, undefined, 105], ['steel', 'bare', undefined, undefined, 58],
    ['Cu', 'bare restricted', undefined, undefined, 228], ['Al', 'restricted', undefined, undefined, 125], ['steel', 'restricted', undefined, undefined, 82],
    ['Cu', 'fire risk', undefined, undefined, 138], ['Al', 'fire risk', undefined, undefined, 91], ['steel', 'bare fire risk', undefined, undefined, 50],
  ])('%p, %p, %p, %p mm²', (metal, where, insulation, csa, k) => expect(run('EARTH_K', metal, where, insulation, csa)).toBe(k));

  test('bare ones need no insulation, the others do', () => {
    for (const where of ['separate', 'in cable', 'armour']) expect(run('EARTH_K', 'Cu', where)).toEqual(refusal('#N/A', 'missing: insulation'));
    expect(run('EARTH_K', 'Cu', 'bare', 'PVC', 400)).toBe(159);
  });
  test('lead is armour or nothing', () => {
    for (const where of ['bare', 'separate', 'in cable']) expect(run('EARTH_K', 'lead', where, 'PVC')).toEqual(refusal('#NUM!', 'metal: lead is an earth conductor only as armour (sheath)'));
  });
  test('temperatures of one’s own, within the limit of the place', () => {
    expect(run('EARTH_K', 'Cu', 'separate', 'XLPE', undefined, 30)).toBeCloseTo(175.8269, 4);
    expect(run('EARTH_K', 'Cu', 'bare', undefined, undefined, undefined, 250)).toEqual(refusal('#NUM!', 'end_C: 250 °C is above the limit of bare, 200 °C'));
    expect(run('EARTH_K', 'steel', 'armour', 'PVC', undefined, undefined, 250)).toEqual(refusal('#NUM!', 'end_C: 250 °C is above the limit of PVC armour, 200 °C'));
  });
});
