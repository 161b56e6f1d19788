import { curveAtEdge } from '../../src/core/curve/edge';
import { logLogAt } from '../../src/core/curve/interpolate';
import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { outcomeOf, run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const SHEET: Matrix = [[900, 10], [1100, 5], [1600, 1], [2400, 0.2], [3600, 0.04], [5500, 0.01]];
/** A vertical step at 5000 A and a level stretch behind it. */
const STEPPED: Matrix = [['A', 's'], [1500, 30], [5000, 6], [5000, 0.03], [30000, 0.03]];

describe('CURVE_TIME', () => {
  test.each([
    [2000, 10, 'slow', 0.602049], [2000, 10, 'fast', 0.271457], [2000, 10, 'mean', 0.41241], ['1.2 kA', 0, 'slow', 3.44077],
  ])('%p A, %p %, %p edge', (current, tolerance, edge, expected) => expect(run('CURVE_TIME', SHEET, current, tolerance, edge)).toBeCloseTo(expected, 5));

  test('at a point of the sheet it is the figure of the sheet, ends included', () => {
    for (const [current, time] of SHEET) for (const edge of ['slow', 'mean', 'fast']) expect(run('CURVE_TIME', SHEET, current, 0, edge)).toBe(time);
    expect(run('CURVE_TIME', SHEET, 990, 10, 'slow')).toBe(10);
    expect(run('CURVE_TIME', SHEET, 6050, 10, 'slow')).toBe(0.01);
  });
  test('the first and the last stretch are read like the others', () => {
    // 10·(5/10)^(ln(1000/900)/ln(1100/900)) = 10·0.5^0.52504; 0.04·(0.01/0.04)^(ln(5000/3600)/ln(5500/3600)) = 0.04·0.25^0.77511.
    expect(run('CURVE_TIME', SHEET, 1000, 0, 'slow')).toBeCloseTo(6.94939, 5);
    expect(run('CURVE_TIME', SHEET, 5000, 0, 'slow')).toBeCloseTo(0.01365826, 8);
  });
  test('an end is met to 1 part in 10⁹, by current and by time, whatever their size', () => {
    const [hair, more] = [5e-10, 5e-9];
    expect(run('CURVE_TIME', SHEET, 5500 * (1 + hair), 0, 'mean')).toBe(0.01);
    expect(run('CURVE_TIME', SHEET, 5500 * (1 + more), 0, 'mean')).toMatchObject({ code: '#NUM!' });
    expect(run('CURVE_CURRENT', SHEET, 10 * (1 + hair), 0, 'mean')).toBe(900);
    expect(run('CURVE_CURRENT', SHEET, 10 * (1 + more), 0, 'mean')).toMatchObject({ code: '#NUM!' });
    // Points in kA or as multiples may be far below 1: the slack goes with the figure.
    expect(logLogAt({ x: [0.001, 0.002], y: [2, 1] }, 0.002 * (1 + hair))).toBe(1);
    expect(logLogAt({ x: [0.001, 0.002], y: [2, 1] }, 0.002 * (1 + more))).toBeUndefined();
  });
  test('a whole curve moved to an edge reads there as the mean curve with its tolerance', () => {
    const curve = { x: [900, 2400], y: [10, 0.2] };
    expect(curveAtEdge(curve, 'slow', 10)).toEqual({ x: [expect.closeTo(990, 9), expect.closeTo(2640, 9)], y: [10, 0.2] });
    expect(curveAtEdge(curve, 'fast', 10)).toEqual({ x: [810, 2160], y: [10, 0.2] });
    expect(curveAtEdge(curve, 'mean', 10)).toEqual(curve);
  });
  test('at a vertical step slow and mean read the upper time, fast the lower', () => {
    expect(run('CURVE_TIME', STEPPED, 5000, 0, 'slow')).toBe(6);
    expect(run('CURVE_TIME', STEPPED, 5000, 0, 'mean')).toBe(6);
    expect(run('CURVE_TIME', STEPPED, 5000, 0, 'fast')).toBe(0.03);
    expect(run('CURVE_TIME', STEPPED, 5500, 10, 'slow')).toBe(6);
    expect(run('CURVE_TIME', STEPPED, 4500, 10, 'fast')).toBe(0.03);
    expect(run('CURVE_TIME', STEPPED, 20000, 10, 'slow')).toBe(0.03);
  });
  test('outside the edge nothing is extrapolated', () => {
    expect(run('CURVE_TIME', SHEET, 950, 10, 'slow')).toEqual(refusal('#NUM!', 'current_A: 950 is outside the slow edge, 990 to 6050 A'));
    expect(run('CURVE_TIME', SHEET, 5000, 10, 'fast')).toEqual(refusal('#NUM!', 'current_A: 5000 is outside the fast edge, 810 to 4950 A'));
    expect(run('CURVE_TIME', SHEET, 5501, 5, 'mean')).toEqual(refusal('#NUM!', 'current_A: 5501 is outside the mean edge, 900 to 5500 A'));
  });
  test('kiloamperes typed where amperes are asked are outside every curve', () => {
    expect(run('CURVE_TIME', SHEET, 2, 10, 'slow')).toEqual(refusal('#NUM!', 'current_A: 2 is outside the slow edge, 990 to 6050 A'));
  });
  test('a mean curve is not for the record, and says so', () => {
    const words = 'mean curve: not for the record';
    expect(run('CAUTION', 'CURVE_TIME', SHEET, 2000, 10, 'mean')).toBe(words);
    expect(run('CAUTION', 'CURVE_TIME', SHEET, 2000, 0, 'mean')).toBe('');
    expect(run('CAUTION', 'CURVE_TIME', SHEET, 2000, 10, 'slow')).toBe('');
    expect(run('CAUTION', 'CURVE_CURRENT', SHEET, 1, 10, 'mean')).toBe(words);
    expect(run('CAUTION', 'TRIP_TIME', 2500, 320, 8, 1600, 0.15, 3800, 0.04, 'mean')).toBe(words);
    expect(run('CAUTION', 'TRIP_TIME', 2500, 320, 8, 1600, 0.15, 3800, 0.04, 'mean', 0, 0)).toBe('');
  });
  test.each([
    [[[900, 10], [800, 5]], '#VALUE!', 'points row 2: first column must rise'],
    [[['A', 's'], [900, 10], [900, 11]], '#VALUE!', 'points row 3: first column must rise'],
    [[[900, 10], [1000, 11]], '#VALUE!', 'points row 2: time may not rise'],
    [[[900, 10], [1000, null], [1100, 1]], '#N/A', 'missing: points row 2'],
    [[[900, 10], [1000, '5 s']], '#VALUE!', 'points row 2: got "5 s", takes a number'],
    [[[900, 10], [1000, 0]], '#VALUE!', 'points row 2: got 0, takes numbers above 0'],
    [[[900, 10]], '#VALUE!', 'points: got one point, takes two or more'],
    [[[900, 10, 1], [1000, 5, 1]], '#VALUE!', 'points: got 3 columns, takes two: A and s'],
  ])('points %j are refused', (points, code, message) => {
    expect(run('CURVE_TIME', points as Matrix, 950, 0, 'slow')).toEqual(refusal(code as CellError['code'], message as string));
  });
  test('blank and bad arguments', () => {
    expect(run('CURVE_TIME', '', 2000, 10, 'slow')).toEqual(refusal('#N/A', 'missing: points'));
    expect(run('CURVE_TIME', SHEET, 2000, '', 'slow')).toEqual(refusal('#N/A', 'missing: tolerance_pct'));
    expect(run('CURVE_TIME', SHEET, 2000, 60, 'slow')).toEqual(refusal('#NUM!', 'tolerance_pct: 60 is outside 0 to 50 %'));
    expect(run('CURVE_TIME', SHEET, 2000, 10, 'upper')).toEqual(refusal('#VALUE!', 'edge: got "upper", takes slow · mean · fast'));
    expect(outcomeOf('CURVE_TIME', [SHEET, 2000, 0, 'slow'], { blankArrivesAsZero: true }).value).toEqual(refusal('#VALUE!', 'tolerance_pct is blank or zero: write 0 as text'));
  });
});

describe('CURVE_CURRENT', () => {
  test.each([
    [5, 10, 'slow', 1210], [0.4, 10, 'slow', 2217], ['400 ms', 8, 'fast', 1854.22], [10, 0, 'mean', 900], [0.01, 10, 'fast', 4950],
  ])('%p s, %p %, %p edge', (time, tolerance, edge, expected) => expect(run('CURVE_CURRENT', SHEET, time, tolerance, edge)).toBeCloseTo(expected, 2));
  test('a level stretch gives its left end, a vertical step the step', () => {
    expect(run('CURVE_CURRENT', STEPPED, 1, 0, 'mean')).toBe(5000);
    expect(run('CURVE_CURRENT', STEPPED, 0.03, 0, 'mean')).toBe(5000);
    expect(run('CURVE_CURRENT', STEPPED, 6, 10, 'slow')).toBeCloseTo(5500, 9);
    expect(run('CURVE_CURRENT', [[100, 10], [500, 2], [900, 2], [1000, 1]], 2, 0, 'slow')).toBe(500);
  });
  test('a time outside the points is refused', () => {
    expect(run('CURVE_CURRENT', SHEET, 20, 10, 'slow')).toEqual(refusal('#NUM!', 'time_s: 20 is outside the points, 0.01 to 10 s'));
    expect(run('CURVE_CURRENT', SHEET, 0.005, 10, 'slow')).toEqual(refusal('#NUM!', 'time_s: 0.005 is outside the points, 0.01 to 10 s'));
  });
});

describe('CURVE_CHECK', () => {
  test.each([
    [SHEET, undefined, 'no findings'],
    [[['A', 's'], [2000, 30], [5000, 6], [5000, 0.03], [12000, 0.03]], 'time', 'no findings'],
    [[[100, 10], [150, 1], [140, 0.5], [900, 0.01]], undefined, 'row 3: first column does not rise; 1 more'],
    [[['kA', 'kA peak'], [5, 5.6], [50, 17], [100, 16]], 'cut-off', 'row 3: gap of more than half a decade; 2 more'],
    [[['A', 's'], [100, 10], [150, null], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 3: blank cell'],
    [[[100, 10], [150, 'fast'], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 2: not numbers'],
    [[[100, 10], ['150 A', 5], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 2: not numbers'],
    [[[100, 10], [150, 5], [200, 1], [300, 0.5], ['1e999', 0.1]], undefined, 'row 5: not numbers'],
    // Over one column only it is no heading, and is said once.
    [[['kA', 10], [150, 5], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 1: not numbers'],
    [[[100, 10], [150, true], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 2: not numbers'],
    [[[100, 10], [150, new CellError('#DIV/0!')], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 2: not numbers'],
    [[[100, 10], [150, 0], [200, 1], [300, 0.5], [400, 0.1]], undefined, 'row 2: not above zero'],
    [[[0, 10], [10, 5], [20, 4], [30, 3], [40, 2]], undefined, 'row 1: not above zero'],
    [[[100, 10], [150, 1], [200, 2], [300, 0.5]], undefined, 'row 3: time rises'],
    [[[100, 10], [100, 10], [200, 4], [300, 3]], undefined, 'row 2: first column does not rise'],
    [[[5, 9], [10, 9], [20, 9], [30, 9]], 'cut-off', 'no findings'],
    [[[100, 10], [150, 1], [150, 2], [300, 0.5]], undefined, 'row 3: first column does not rise; 1 more'],
    [[[5, 9], [10, 8], [20, 12], [40, 16]], 'peak', 'row 2: cut-off falls'],
    [[[5, 9], [5, 8], [10, 12], [20, 16]], 'cut-off', 'row 2: first column does not rise; 1 more'],
    [[[100, 100], [150, 0.9], [200, 0.5], [300, 0.1]], undefined, 'row 2: jump of more than two decades'],
    [[[100, 100], [150, 1], [200, 0.5], [300, 0.1]], undefined, 'no findings'],
    [[[5, 1e4], [10, 1.1e5], [20, 9e4], [40, 1e5]], 'I2T', 'row 2: jump of more than a decade'],
    [[[100, 10], [150, 1], [200, 0.5]], undefined, 'fewer than 4 points'],
    [[['100', '10'], [150, 1], [200, 0.5], [300, 0.1], [null, ''], [null, null]], undefined, 'no findings'],
    [[[100, 10, 3], [150, 1, 3]], undefined, '3 columns, a curve takes two'],
    [700, undefined, 'one column, a curve takes two'],
    // A third time of one current is no step: the functions that read the points refuse it.
    [[[100, 10], [200, 5], [200, 3], [200, 1], [300, 0.5]], undefined, 'row 4: first column does not rise'],
    [[[100, 10], [200, 5], [200, 3], [300, 2], [300, 1]], undefined, 'no findings'],
    // Half a decade is a factor of 3.1623.
    [[[100, 10], [316.2, 5], [900, 3], [1200, 1]], undefined, 'no findings'],
    [[[100, 10], [316.3, 5], [900, 3], [1200, 1]], undefined, 'row 2: gap of more than half a decade'],
    [[[100, 10], [100 * Math.sqrt(10) * (1 + 1e-12), 5], [900, 3], [1200, 1]], undefined, 'no findings'],
    // 0.07/0.0007 and 2.35/0.235 are a hair over 100 and 10 as doubles.
    [[[100, 7], [150, 0.07], [200, 0.0007], [300, 0.0005]], undefined, 'no findings'],
    [[[1, 0.235], [2, 2.35], [5, 4], [10, 6]], 'cut-off', 'no findings'],
    [[[1, 0.235], [2, 2.36], [5, 4], [10, 6]], 'cut-off', 'row 2: jump of more than a decade'],
  ])('%j, %p', (points, kind, expected) => expect(run('CURVE_CHECK', points as Matrix, kind)).toBe(expected));
  test('nothing to look over is missing', () => {
    expect(run('CURVE_CHECK', [[null, null], ['', ' ']])).toEqual(refusal('#N/A', 'missing: points'));
    expect(run('CURVE_CHECK', SHEET, 'fault')).toEqual(refusal('#VALUE!', 'kind: got "fault", takes time · cut-off (cutoff, peak) · joule (i2t, let-through)'));
  });
});

describe('bands and conventional currents of breakers and links', () => {
  test.each([
    [20, 'B', 'trip', 100], [40, 'D', 'hold', 400], [10, 'c', 'no-trip', 50], [10, 'C', 'TRIP', 100], [6, 'B', 'no trip', 18], [16, 'D', 'trip', 320],
  ])('BAND_MINIATURE %p %p %p', (rated, type, limit, expected) => expect(run('BAND_MINIATURE', rated, type, limit)).toBe(expected));
  test.each([
    [80, 'gG', undefined, 128], [320, 'breaker', 'no trip', 336], [10, 'gG', undefined, 19], [10, 'gG', 'hold', 15], [4, 'gG', 'trip', 8.4], [2, 'gg', 'no trip', 3],
    [16, 'gG', 'trip', 25.6], [16, 'gG', 'no trip', 20], [400, 'MCCB', undefined, 520], [32, 'mcb', undefined, 46.4], [100, 'miniature', 'hold', 113],
  ])('CONVENTIONAL_CURRENT %p %p %p', (rated, kind, limit, expected) => expect(run('CONVENTIONAL_CURRENT', rated, kind, limit)).toBeCloseTo(expected, 9));
  test('the working names the limit by its symbol', () => {
    expect(run('SHOW_STEPS', 'CONVENTIONAL_CURRENT', 80, 'gG', 'trip')).toContainEqual(['I2 = 1.6·In', '128 A']);
    expect(run('SHOW_STEPS', 'CONVENTIONAL_CURRENT', 80, 'gG', 'no trip')).toContainEqual(['I no trip = 1.25·In', '100 A']);
  });
  test('limits and words', () => {
    expect(run('BAND_MINIATURE', 160, 'C', 'trip')).toEqual(refusal('#NUM!', 'rated_A: 160 is outside above 0, up to 125 A'));
    expect(run('BAND_MINIATURE', 16, 'K', 'trip')).toEqual(refusal('#VALUE!', 'type: got "K", takes B · C · D'));
    expect(run('CONVENTIONAL_CURRENT', 16, 'aM')).toEqual(refusal('#VALUE!', 'kind: got "aM", takes gG · breaker (mccb, acb) · miniature (mcb)'));
    expect(run('ASSUMED', 'CONVENTIONAL_CURRENT', 80, 'gG')).toBe('limit=trip');
  });
});

describe('RELAY_TIME', () => {
  test.each([
    [640, 160, 0.2, 'standard', 0.995951], [900, 120, 0.15, 'very', 0.311538], [400, 100, 1, 'EI', 5.333333], ['2 kA', 100, 1, 'si', 2.267356],
  ])('%p A over %p A, %p, %p', (current, setting, multiplier, law, expected) => expect(run('RELAY_TIME', current, setting, multiplier, law)).toBeCloseTo(expected, 5));
  test('at or below the setting, and over 20 times, there is no time', () => {
    expect(run('RELAY_TIME', 100, 120, 0.15, 'very')).toEqual(refusal('#NUM!', 'current_A: 100 does not exceed the setting 120'));
    expect(run('RELAY_TIME', 120, 120, 0.15, 'very')).toEqual(refusal('#NUM!', 'current_A: 120 does not exceed the setting 120'));
    expect(run('RELAY_TIME', 120 * (1 + 1e-12), 120, 0.15, 'very')).toMatchObject({ code: '#NUM!' });
    expect(run('RELAY_TIME', 2401, 120, 0.15, 'very')).toEqual(refusal('#NUM!', 'current_A: 2401 is over 20 times the setting 120'));
    expect(run('RELAY_TIME', 0.64, 160, 0.2, 'standard')).toEqual(refusal('#NUM!', 'current_A: 0.64 does not exceed the setting 160'));
    expect(run('RELAY_TIME', 640, 160, 0.005, 'standard')).toEqual(refusal('#NUM!', 'multiplier: 0.005 is outside 0.01 to 15'));
  });
  test('below twice the setting the call is cautioned', () => {
    expect(run('CAUTION', 'RELAY_TIME', 200, 120, 0.15, 'very')).toBe('below twice the setting a relay may be slow or fail to start');
    expect(run('CAUTION', 'RELAY_TIME', 240, 120, 0.15, 'very')).toBe('');
  });
});
