import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

/** Figures of the reference calculation, printed to six digits. */
describe('fault currents at one place', () => {
  test.each([
    ['FAULT_3PH_MAX', ['2.31+7.9i', 415], 30.5657],
    ['FAULT_3PH_MAX', [[[1.2, 6]], '0.4 kV', 1.1], 41.5168],
    ['FAULT_3PH_MIN', ['4.6+10.2i', 415], 20.3427],
    ['FAULT_3PH_MIN', ['4.6+10.2i', 400, 0.9], 18.5755],
    ['FAULT_2PH_MAX', ['2.31+7.9i', 415], 26.4707],
    ['FAULT_2PH_MAX', ['3+20i', 400, 1.05, '3+26i'], 9.05374],
    ['FAULT_2PH_MIN', ['4.6+10.2i', 415], 17.6173],
    ['FAULT_2PH_MIN', ['44+12i', 400], 4.16603],
    ['FAULT_EARTH_MAX', ['2+9i', '2+8.6i', 415], 27.6783],
    ['FAULT_EARTH_MAX', ['2+9i', '0.8+0.9i', 400, 1.1], 39.0822],
    ['FAULT_EARTH_MIN', ['20+14i', '74+23i', 415], 5.46779],
    ['FAULT_LOOP_MAX', ['6+9i', 240], 23.2974],
    ['FAULT_LOOP_MAX', [95, 230, 1.1], 2.66316],
    ['FAULT_LOOP_MIN', ['120+31i', 240], 1.83961],
    ['FAULT_LOOP_MIN', ['0.35 Ω', 230], 0.624286],
    ['FAULT_FROM_RATING', [1250, 5.5, 415], 31.6183],
    ['FAULT_FROM_RATING', ['2 MVA', 6, 400], 48.1125],
    ['FAULT_MOTOR_SHARE', [250, 0.87, 0.93, 38, 415], 1.13122],
    ['FAULT_MOTOR_SHARE', [60, 0.85, 0.92, 22, 400], 0.503386],
    ['PEAK_FACTOR', [0.35], 1.36294],
    ['PEAK_FACTOR', [0.35, 'B'], 1.56738],
    ['PEAK_FACTOR', [0.62, 'C'], 1.48571],
    ['PEAK_FACTOR', [0.05, 'B'], 1.8],
    ['FAULT_PEAK', [31.5, 0.28], 64.2858],
    ['FAULT_PEAK', [42, 0.18, 'plain', 2.6], 99.2862],
    ['FAULT_PEAK', [42, 0.18, 'B'], 106.915],
    ['FAULT_THERMAL', [31.5, 1.44, 0.2], 32.445],
    ['FAULT_THERMAL', [50, 1.7, 1, 0.95, 60], 49.3296],
  ])('%s %j', (name, argv, printed) => expectPrinted(name, argv as never, printed));

  test('a declared level comes back', () => expectPrinted('FAULT_3PH_MAX', [run('IMP_DECLARED', '16 kA', 0.65, 415), 415], 16));

  // Worked by hand: Z0 = Z1 = Z2 = j10 mΩ, so √3·1.05·400·10/300 = 24.2487 kA; and with Z0 = 0 it is √3·c·U/|Z1|.
  test('two lines to earth', () => {
    expectPrinted('FAULT_2PH_EARTH_MAX', ['10i', '10i', 400], 24.2487);
    expectPrinted('FAULT_2PH_EARTH_MAX', ['10i', 0, 400], 72.7461);
  });
  // Worked by hand: no decay at R/X = 0 or at the start; 1/e after X/(2π·f·R) = 1/(100π·0.1) s = 31.831 ms.
  test('direct part', () => {
    expectPrinted('FAULT_DC', [10, 0.1, 0], 14.1421);
    expectPrinted('FAULT_DC', [10, 0, 500], 14.1421);
    expectPrinted('FAULT_DC', [10, 0.1, 31.8309886], 5.2026);
    expectPrinted('FAULT_DC', [10, 0.1, 26.5258238, 60], 5.2026);
  });
  test('an undamped direct part adds its whole heat', () => expectPrinted('FAULT_THERMAL', [10, 2, 1], 17.3205));
});

describe('what is refused, and in which words', () => {
  test.each([
    ['FAULT_3PH_MAX', ['0.01+0.05i', 400], '#NUM!', 'z_mohm: size 0.0509902 mΩ is below 0.1 mΩ'],
    ['FAULT_3PH_MAX', ['', 400], '#N/A', 'missing: z_mohm'],
    ['FAULT_3PH_MAX', ['2+8i', null], '#N/A', 'missing: volts_V'],
    ['FAULT_3PH_MAX', ['2+8i', 400, 0.95], '#NUM!', 'c: 0.95 is outside 1 to 1.1'],
    ['FAULT_3PH_MIN', ['2+8i', 400, 1.05], '#NUM!', 'c: 1.05 is outside 0.9 to 1'],
    ['FAULT_3PH_MAX', ['2+8i', 1e9], '#NUM!', 'volts_V: 1000000000 is outside 50 to 1000 V'],
    ['FAULT_3PH_MAX', ['2+8i', '63 kA'], '#VALUE!', 'volts_V: got "63 kA": kA is current, takes V'],
    ['FAULT_3PH_MAX', ['2+8i', -400], '#VALUE!', 'volts_V: got -400, takes 50 to 1000 V'],
    ['FAULT_3PH_MAX', [[['2', '8', '1']], 400], '#VALUE!', 'z_mohm: got a range of 3 cells, takes one cell'],
    ['FAULT_EARTH_MIN', ['2+9i', '', 400], '#N/A', 'missing: z0_mohm'],
    ['FAULT_2PH_MAX', ['2+9i', 400, 1.05, 0.01], '#NUM!', 'z2_mohm: size 0.01 mΩ is below 0.1 mΩ'],
    ['FAULT_LOOP_MIN', ['120+31i', 415 * 2], '#NUM!', 'u0_V: 830 is outside 25 to 600 V'],
    ['PEAK_FACTOR', [-0.1], '#VALUE!', 'r_over_x: got -0.1, takes 0 to 100'],
    ['PEAK_FACTOR', [0.3, 'D'], '#VALUE!', 'method: got "D", takes plain (a, radial) · B (method b) · C (method c)'],
    ['FAULT_THERMAL', [10, 1, 1], '#NUM!', 'kappa: 1 is outside 1.02 to 2'],
    ['FAULT_DC', [10, 0.1, -1], '#VALUE!', 'time_ms: got -1, takes 0 to 5000 ms'],
  ])('%s %j', (name, argv, code, message) => expectRefused(name, argv as never, code as never, message));
});

describe('what a call says of itself', () => {
  test('cautions', () => {
    expect(outcomeOf('FAULT_FROM_RATING', [1250, 5.5, 415]).cautions).toEqual(['rough: leaves out grid, cable, motors and correction factor']);
    // IEC 60909-0: up to 1 % motors may be neglected. √3·400 V·100 A at a fault of 10 kA is 1 %.
    expect(outcomeOf('FAULT_MOTOR_SHARE', [(Math.sqrt(3) * 400 * 100) / 1000, 1, 1, 10, 400])).toMatchObject({ value: 1, cautions: [] });
    expect(outcomeOf('FAULT_MOTOR_SHARE', [250, 0.87, 0.93, 38, 415]).cautions).toEqual(['over 1 %: the motors must be counted']);
    expect(outcomeOf('FAULT_MOTOR_SHARE', [60, 0.85, 0.92, 22, 400]).cautions).toEqual([]);
    expect(outcomeOf('PEAK_FACTOR', [0]).cautions).toEqual(['peak is 2.828 times r.m.s., over 2.55: check R/X']);
    expect(outcomeOf('PEAK_FACTOR', [0.35]).cautions).toEqual([]);
    expect(outcomeOf('FAULT_PEAK', [30, 0.01]).cautions).toEqual(['peak is 2.787 times r.m.s., over 2.55: check R/X']);
    // √2·(1.02 + 0.98·e^(−3·R/X)) is 2.55 at R/X 0.07474: no figure is said to be over itself.
    expect(outcomeOf('PEAK_FACTOR', [0.0746]).cautions).toEqual(['peak is 2.551 times r.m.s., over 2.55: check R/X']);
    expect(outcomeOf('PEAK_FACTOR', [0.0748]).cautions).toEqual([]);
    // Method B stops at 1.8, where √2·κ is 2.546.
    expect(outcomeOf('FAULT_PEAK', [30, 0.01, 'B']).cautions).toEqual([]);
  });
  test('working holds c and what a blank z2 stood for', () => {
    expect(run('SHOW_WORKING', 'FAULT_2PH_MIN', '44+12i', 400)).toBe('c·Un/|Z1+Z2|; z1_mohm 44+12i mΩ, volts_V 400 V, c 0.95, z2_mohm z1_mohm; 4.166 kA');
    expect(run('ASSUMED', 'FAULT_2PH_MIN', '44+12i', 400)).toBe('c=0.95; z2_mohm=z1_mohm');
    expect(run('SHOW_STEPS', 'FAULT_PEAK', 42, 0.18, 'B')).toContainEqual(['κ = min(1.8, 1.15·(1.02+0.98·e^(−3·R/X))), method B', '1.8']);
    expect(run('CLAUSE', 'FAULT_THERMAL')).toBe('IEC 60909-0:2016, 12 (Joule integral) (from memory)');
  });
});
