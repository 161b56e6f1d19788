import type { Recorder } from '../../src/core/working';
import { CellError } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

/** Figures of the reference calculation, printed to six digits. */
describe('impedances of the elements', () => {
  test.each([
    ['IMP_GRID', [500, 415], '0.0377015+0.377015i'],
    ['IMP_GRID', ['120 MVA', 400, 1, 0.2], '0.261488+1.30744i'],
    ['IMP_DECLARED', [25, 0.3, 400], '2.78713+9.29042i'],
    ['IMP_TRANSFORMER', [1250, 5.5, 13.5, 415], '1.43778+7.17948i'],
    ['IMP_TRANSFORMER', [500, 4, 5.5, 400, 1.05, false], '3.52+12.3065i'],
    ['IMP_TRANSFORMER', [2000, 6, 20, 400, 1.1, true, -10], '0.807342+4.28424i'],
    ['IMP_TRANSFORMER_ZERO', ['2+9i', 'Dyn11', 1, 0.95], '2+8.55i'],
    ['IMP_TRANSFORMER_ZERO', ['3.1+12.4i', 'Yzn5', 0.4, 0.1], '1.24+1.24i'],
    ['IMP_CABLE', [140, 120, 'Al'], '35.42+11.2i'],
    ['IMP_CABLE', ['0.05 km', 70, 'Cu', 2, 90, 0.075], '8.576+1.875i'],
    ['IMP_PER_METRE', [24, 0.031, 0.019], '0.744+0.456i'],
    ['IMP_PER_METRE', [65, '0.32 Ω/km', 0.09, 3, 80], '8.59733+1.95i'],
    ['IMP_MOTOR', [250, 0.87, 0.93, 415], '35.9732+85.6504i'],
    ['IMP_MOTOR', ['90 kW', 0.85, '94 %', 400, 6.5], '84.6219+201.481i'],
    ['IMP_GENERATOR', [630, 14, 400], '5.16605+34.4403i'],
    ['IMP_GENERATOR', [1000, 11.5, 415, 1.05, false, 0.15], '2.97088+19.8059i'],
    ['IMP_PARALLEL', ['2+8i', '3+9i'], '1.22293+4.24204i'],
    ['IMP_PARALLEL', [[['1.2+6i'], ['1.2+6i'], ['1.5+7i']]], '0.428982+2.10009i'],
    ['IMP_SERIES', ['0.7+3.5i', '8.4+6.2i', '16+6.8i'], '25.1+16.5i'],
    ['IMP_SERIES', [[['1+1i'], ['2+0.5i']], 0.25], '3.25+1.5i'],
    ['IMP_REFER', ['150+420i', 11000, 415], '0.213502+0.597806i'],
    ['IMP_REFER', ['2+5i', 400, '6.6 kV'], '544.5+1361.25i'],
  ])('%s %j', (name, argv, printed) => expectPrinted(name, argv as never, printed));

  test.each([
    ['3+4i', 'Z', 5], ['1.5+9i', 'R/X', 0.166667], [[[1.5, 9]], 'pf', 0.164399], ['3+4i', 'R', 3], ['3+4i', 'X', 4], ['3+4i', 'X/R', 1.33333],
    ['3+4i', 'power factor', 0.6], ['3+4i', 'x over r', 1.33333], ['2+2i', 'angle', 45], ['5i', 'angle', 90], ['7', 'angle', 0],
  ])('IMP_PART(%j, %s)', (z, part, printed) => expectPrinted('IMP_PART', [z as never, part], printed));
});

describe('what is refused, and in which words', () => {
  test('sizes of conductors', () => {
    expectRefused('IMP_CABLE', [30, 100, 'Cu'], '#NUM!', 'csa_mm2: 100 is not a listed copper size (0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630, 800, 1000); use IMP_PER_METRE');
    expectRefused('IMP_CABLE', [30, 6, 'Al'], '#NUM!', 'csa_mm2: 6 is not a listed aluminium size (10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630, 800, 1000); use IMP_PER_METRE');
    expectPrinted('IMP_CABLE', [10, '1.2 cm2', 'aluminum'], '2.53+0.8i');
  });
  test('a loss that leaves no reactance', () => {
    expectRefused('IMP_TRANSFORMER', [100, 4, 4, 400], '#NUM!', 'loss_kW: R 64 mΩ is at or above Z 64 mΩ');
    expectRefused('IMP_TRANSFORMER', [100, 4, 3.5, 400, 1.05, false, -30], '#NUM!', 'loss_kW: R 56 mΩ is at or above Z 44.8 mΩ');
    // The nominal reactance, which K_T needs, is gone too.
    expectRefused('IMP_TRANSFORMER', [100, 4, 4.5, 400, 1.05, true, 20], '#NUM!', 'loss_kW: R 72 mΩ is at or above Z 64 mΩ');
  });
  test('vector groups', () => {
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Dy11'], '#NUM!', 'group: Dy11 brings out no star point, so there is no zero-sequence path');
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'yd5', 1, 1], '#NUM!', 'group: yd5 brings out no star point, so there is no zero-sequence path');
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Yyn0', 1], '#N/A', 'missing: x0_over_x1');
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'YNyn0'], '#N/A', 'missing: r0_over_r1');
    const takes = 'takes a vector group such as Dyn11, Dzn0, Yzn5 or YNyn, clock number 0 to 11 or none';
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Dyn12'], '#VALUE!', `group: got "Dyn12", ${takes}`);
    // A whole remark in the cell of the group does not fill the message.
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'x'.repeat(300)], '#VALUE!', `group: got "${'x'.repeat(40)}", ${takes}`);
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'star'], '#VALUE!', `group: got "star", ${takes}`);
    for (const more of ['xDyn11', 'Dyn11x', 'Dyn111']) expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', more], '#VALUE!', `group: got "${more}", ${takes}`);
    // A zigzag winding whose star point is not brought out, on either side.
    expect(run('IMP_TRANSFORMER_ZERO', '2+9i', 'Zyn5', 1, 1)).toBe('2+9i');
    expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Dz6', 1, 1], '#NUM!', 'group: Dz6 brings out no star point, so there is no zero-sequence path');
    expect(run('IMP_TRANSFORMER_ZERO', '2+9i', ' DYN ')).toBe('2+9i');
    expect(run('IMP_TRANSFORMER_ZERO', '2+9i', 'Dyn11', 0)).toBe('9i');
  });
  test('lists of impedances', () => {
    expectRefused('IMP_PARALLEL', ['2+8i', 0], '#NUM!', 'z_mohm 2: is zero, and would short the others');
    expectRefused('IMP_PARALLEL', [[['2+8i'], [null], ['1']]], '#N/A', 'missing: z_mohm 2');
    expectRefused('IMP_SERIES', ['2+8i', null], '#N/A', 'missing: z_mohm 2');
    expectRefused('IMP_SERIES', ['2+8i', 'about 3'], '#VALUE!', 'z_mohm 2: got "about 3", takes a number in mΩ');
    expectRefused('IMP_SERIES', ['2-8i'], '#VALUE!', 'z_mohm 1: got "2-8i", takes R and X of 0 or more');
    expect(run('IMP_SERIES', [['2+8i', '1', null, '']], 0)).toBe('3+8i');
    // Two numbers are two resistances here, never R and X.
    expect(run('IMP_PARALLEL', [[4, 4]])).toBe('2');
    const error = new CellError('#REF!');
    expect(run('IMP_SERIES', '1+1i', error)).toBe(error);
  });
  test('parts that do not exist', () => {
    expectRefused('IMP_PART', ['3', 'R/X'], '#NUM!', 'z_mohm: X is zero, so there is no R/X');
    expectRefused('IMP_PART', ['3i', 'X/R'], '#NUM!', 'z_mohm: R is zero, so there is no X/R');
    expectRefused('IMP_PART', [0, 'pf'], '#NUM!', 'z_mohm: is zero, so there is no power factor');
    expectRefused('IMP_PART', [0, 'angle'], '#NUM!', 'z_mohm: is zero, so there is no angle');
    expectRefused('IMP_PART', ['3+4i', 'sine'], '#VALUE!', 'part: got "sine", takes R · X · Z · R/X (r over x) · X/R (x over r) · pf (cos phi, power factor) · angle');
  });
});

describe('what a call says of itself', () => {
  test('cautions', () => {
    expect(outcomeOf('IMP_TRANSFORMER', [500, 4, 5.5, 400]).cautions).toEqual([]);
    expect(outcomeOf('IMP_TRANSFORMER', [500, 4, 15, 400, 1.05, true, 10]).cautions).toEqual(['uk tolerance is for sensitivity, not for the record', 'loss over 2.5 % of the rating: check the plate']);
    // 10 kW of 400 kVA are 2.5 %.
    expect(outcomeOf('IMP_TRANSFORMER', [400, 4, 10, 400]).cautions).toEqual([]);
    expect(outcomeOf('IMP_CABLE', [1000, 70, 'cu']).cautions).toEqual([]);
    expect(outcomeOf('IMP_CABLE', [1001, 240, 'cu']).cautions).toEqual(['unusual length for low voltage']);
    expect(outcomeOf('IMP_GENERATOR', [630, 14, 400]).cautions).toEqual(['sustained fault current may fall below this: ask the maker for the decay']);
  });
  test('working names the figures it used', () => {
    expect(run('SHOW_WORKING', 'IMP_CABLE', 140, 120, 'Al')).toBe('R20·(1+0.004·(θ−20))·l/n+j·x·l/n; length_m 140 m, csa_mm2 120 mm², metal aluminium, runs 1, temperature_C 20 °C, x_mohm_m 0.08 mΩ/m; 35.42+11.2i mΩ');
    expect(run('ASSUMED', 'IMP_CABLE', 140, 120, 'Al')).toBe('runs=1; temperature_C=20; x_mohm_m=0.08');
    expect(run('SHOW_WORKING', 'IMP_PART', '3+4i', 'Z')).toBe('R, X, √(R²+X²), R/X, X/R, R/|Z| or atan2(X, R); z_mohm 3+4i mΩ, part Z; 5 mΩ');
    // 1.05/(1 + 0.14·0.6).
    expect(run('SHOW_STEPS', 'IMP_GENERATOR', 630, 14, 400)).toContainEqual(['K_G = c/(1+x"d·sin φ)', '0.968635']);
    expect(run('SHOW_STEPS', 'IMP_GENERATOR', 630, 14, 400, '', false)).not.toContainEqual([expect.stringMatching('^K_G = '), expect.anything()]);
    expect(run('SHOW_STEPS', 'IMP_TRANSFORMER', 500, 4, 5.5, 400)).toContainEqual(['K_T = 0.95·c/(1+0.6·x_T)', '0.975002']);
    for (const [part, value] of [['R', '3 mΩ'], ['X', '4 mΩ'], ['Z', '5 mΩ'], ['R/X', '0.75'], ['pf', '0.6']]) {
      expect(run('SHOW_STEPS', 'IMP_PART', '3+4i', part!)).toContainEqual([expect.stringMatching(`^${part} = `), value]);
    }
    // 14 % of 400²/630 = 253.968 mΩ
    expect((outcomeOf('IMP_GENERATOR', [630, 14, 400]).work as Recorder).steps.at(-1)!.inputs['X"d']).toEqual([expect.closeTo(35.5556, 4), 'mΩ']);
    expect(run('CLAUSE', 'IMP_REFER')).toBe('IEC 60909-0:2016, 5.3 (from memory)');
  });
});
