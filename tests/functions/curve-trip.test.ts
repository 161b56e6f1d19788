import { tripSettings } from '../../src/core/curve/trip-settings';
import { type Argument, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const ROW = [320, 8, 1600, 0.15, 3800, 0.04] as const;

describe('TRIP_TIME', () => {
  test.each([
    [1500, 'slow', 18.8744], [2500, 'slow', 0.15], [5000, 'slow', 0.04],
    [416, 'slow', 245.396], [1919, 'slow', 11.532], [1920, 'slow', 0.15], [4560, 'slow', 0.04],
    [1500, 'mean', 13.1072], [1600, 'mean', 0.15], [3800, 'mean', 0.04],
    [1279, 'fast', 11.538], [1280, 'fast', 0.15], [3039, 'fast', 0.15],
  ])('%p A at the %p edge', (current, edge, expected) => expect(run('TRIP_TIME', current, ...ROW, edge)).toBeCloseTo(expected, 3));

  test('short-time with an I²t ramp, instantaneous off', () => {
    expect(run('TRIP_TIME', 2500, 320, 8, 1600, 0.15, 'off', '', 'fast', 10, 20, 3200)).toBeCloseTo(0.199066, 6);
    expect(run('TRIP_TIME', 2880, 320, 8, 1600, 0.15, 'off', '', 'fast', 10, 20, 3200)).toBeCloseTo(0.15, 9);
    expect(run('TRIP_TIME', 8000, 320, 8, 1600, 0.15, 'OFF', '', 'fast', 10, 20, 3200)).toBe(0.15);
    expect(run('TRIP_TIME', 2500, 320, 8, 1600, 0.15, 'off', '', 'fast', 10, 20, 'off')).toBe(0.15);
  });
  test('the least of the stages reached counts, also where the long-time stage is the faster one', () => {
    expect(run('TRIP_TIME', 4000, 320, 0.5, 2000, 0.4, 'off', '', 'mean', 0, 0)).toBeCloseTo(0.5 * (1920 / 4000) ** 2, 12);
  });
  test('where the long-time law falls below a delay that is set, the call is cautioned', () => {
    const words = 'the long-time I²t law gives less than the later stage reached, 0.4 s: take that where the longest time counts';
    expect(run('TRIP_TIME', 50000, 1000, 8, 8000, 0.4, 'off', '', 'slow')).toBeCloseTo(0.165888, 9);
    expect(run('CAUTION', 'TRIP_TIME', 50000, 1000, 8, 8000, 0.4, 'off', '', 'slow')).toBe(words);
    expect(run('CAUTION', 'TRIP_TIME', 30000, 1000, 8, 8000, 0.4, 'off', '', 'slow')).toBe('');
    expect(run('CAUTION', 'TRIP_TIME', 50000, ...ROW, 'slow')).toBe('the long-time I²t law gives less than the later stage reached, 0.04 s: take that where the longest time counts');
    expect(run('CAUTION', 'TRIP_BAND', 50, 1000, 8, 8000, 0.4, 'off', '')).toBe(words);
    expect(run('CAUTION', 'TRIP_BAND', 20, ...ROW)).toBe('');
  });
  test('long-time delay alone', () => {
    expect(run('TRIP_TIME', 1920, 320, 8, 'off', '', 'off', '', 'mean')).toBeCloseTo(8, 12);
    expect(run('TRIP_TIME', 3840, 320, 8, 'off', '', 'off', '', 'mean')).toBeCloseTo(2, 12);
  });
  test('the multiple at which tr is stated: 6 unless given', () => {
    expect(run('TRIP_TIME', 2304, 320, 8, 'off', '', 'off', '', 'mean', 20, 20, 'off', 7.2)).toBeCloseTo(8, 12);
    expect(run('TRIP_TIME', 480, 320, 300, 'off', '', 'off', '', 'mean', '', '', '', 1.5)).toBeCloseTo(300, 9);
    expect(run('ASSUMED', 'TRIP_TIME', 1500, ...ROW, 'slow')).toBe('delayed_tol_pct=20; ii_tol_pct=20; i2t_until_A=off; tr_multiple=6');
    expect(run('ASSUMED', 'TRIP_TIME', 1500, ...ROW, 'slow', 10, 10, 3200, 6)).toBe('');
    expect(run('TRIP_TIME', 1500, ...ROW, 'slow', 20, 20, 'off', 1)).toEqual(refusal('#NUM!', 'tr_multiple: 1 is outside above 1, up to 20'));
  });
  test('the working shows every stage that is reached, by its own line, and then the least', () => {
    const stepsAt = (current: number, ...options: Argument[]) =>
      (run('SHOW_STEPS', 'TRIP_TIME', current, ...ROW, 'slow', ...options) as Matrix).filter(([step]) => String(step).startsWith('t '));
    // Long-time 8·(6·320·1.2)² = 42 467 328 A²s; ramp 0.15·(3200·1.2)² = 2 211 840 A²s.
    expect(stepsAt(1500)).toEqual([['t long-time = I²t/I²', '18.8744 s'], ['t = least of the stages reached', '18.8744 s']]);
    expect(stepsAt(2500, 20, 20, 3200)).toEqual([
      ['t long-time = I²t/I²', '6.79477 s'], ['t short-time = max(level, I²t/I²)', '0.353894 s'], ['t = least of the stages reached', '0.353894 s'],
    ]);
    expect(stepsAt(5000)).toEqual([
      ['t long-time = I²t/I²', '1.69869 s'], ['t short-time = level', '0.15 s'], ['t instantaneous = level', '0.04 s'], ['t = least of the stages reached', '0.04 s'],
    ]);
  });
  test('the mean of a release is not for the record where either of its tolerances counts', () => {
    const words = 'mean curve: not for the record';
    expect(run('CAUTION', 'TRIP_TIME', 2500, ...ROW, 'mean', 20, 0)).toBe(words);
    expect(run('CAUTION', 'TRIP_TIME', 2500, ...ROW, 'mean', 0, 20)).toBe(words);
  });
  test('outside the band', () => {
    expect(run('TRIP_TIME', 400, ...ROW, 'slow')).toEqual(refusal('#NUM!', 'current_A: trip not assured below 1.30 Ir, 416 A'));
    expect(run('TRIP_TIME', 400, ...ROW, 'mean')).toEqual(refusal('#NUM!', 'current_A: trip not assured below 1.30 Ir, 416 A'));
    expect(run('TRIP_TIME', 336, ...ROW, 'fast')).toEqual(refusal('#NUM!', 'current_A: no trip up to 1.05 Ir, 336 A'));
    expect(run('TRIP_TIME', 340, ...ROW, 'fast')).toBeCloseTo(163.27, 2);
    expect(run('TRIP_TIME', 3040, ...ROW, 'fast')).toEqual(refusal('#NUM!', 'current_A: no least time in the instantaneous range, from 3040 A'));
    expect(run('TRIP_TIME', 2.5, ...ROW, 'slow')).toEqual(refusal('#NUM!', 'current_A: trip not assured below 1.30 Ir, 416 A'));
  });
  test('settings that do not belong together', () => {
    expect(run('TRIP_TIME', 1500, 320, 8, 300, 0.15, 3800, 0.04, 'slow')).toEqual(refusal('#NUM!', 'isd_A: 300 A does not exceed ir_A, 320 A'));
    expect(run('TRIP_TIME', 1500, 320, 8, 320, 0.15, 3800, 0.04, 'slow')).toEqual(refusal('#NUM!', 'isd_A: 320 A does not exceed ir_A, 320 A'));
    expect(run('TRIP_TIME', 1500, 320, 8, 1.6, 0.15, 3.8, 0.04, 'slow')).toEqual(refusal('#NUM!', 'isd_A: 1.6 A does not exceed ir_A, 320 A'));
    expect(run('TRIP_TIME', 1500, 320, 8, 1600, 0.15, 1500, 0.04, 'slow')).toEqual(refusal('#NUM!', 'ii_A: 1500 A is below isd_A, 1600 A'));
    expect(run('TRIP_TIME', 1500, 320, 8, 'off', '', 300, 0.04, 'slow')).toEqual(refusal('#NUM!', 'ii_A: 300 A does not exceed ir_A, 320 A'));
    expect(run('TRIP_TIME', 2500, 320, 8, 1600, 0.15, 1600, 0.04, 'slow')).toBe(0.04);
  });
  test('a setting a hair above another by rounding does not exceed it', () => {
    const hair = 1 + 1e-12;
    expect(run('TRIP_TIME', 1500, 320, 8, 320 * hair, 0.15, 3800, 0.04, 'slow')).toMatchObject({ code: '#NUM!' });
    expect(run('TRIP_TIME', 1500, 320, 8, 'off', '', 320 * hair, 0.04, 'slow')).toMatchObject({ code: '#NUM!' });
    expect(run('TRIP_TIME', 2500, 320, 8, 1600 * hair, 0.15, 1600, 0.04, 'slow')).toBe(0.04);
    expect(run('TRIP_TIME', 336 * hair, ...ROW, 'fast')).toMatchObject({ code: '#NUM!' });
  });
  test('what is typed of a stage that is off counts nowhere', () => {
    const cells = { ir_A: 320, tr_s: 8, isd_A: 'off', tsd_s: 0.15, ii_A: 'off', ii_s: 0.04, delayed_tol_pct: 20, ii_tol_pct: 20, i2t_until_A: 3200, tr_multiple: 6 } as const;
    expect(tripSettings(cells)).toMatchObject({ shortTime: undefined, instantaneous: undefined });
    expect(run('TRIP_TIME', 1920, 320, 8, 'off', 0.15, 'off', 0.04, 'mean', 20, 20, 3200)).toBeCloseTo(8, 12);
  });
  test('a stage is off by the word only; a stage that is on needs its time', () => {
    expect(run('TRIP_TIME', 1500, 320, 8, '', 0.15, 3800, 0.04, 'slow')).toEqual(refusal('#N/A', 'missing: isd_A'));
    expect(run('TRIP_TIME', 1500, 320, 8, 1600, '', 3800, 0.04, 'slow')).toEqual(refusal('#N/A', 'missing: tsd_s'));
    expect(run('TRIP_TIME', 1500, 320, 8, 1600, 0.15, 3800, '', 'slow')).toEqual(refusal('#N/A', 'missing: ii_s'));
    expect(run('TRIP_TIME', 1500, 320, 8, 'none', 0.15, 3800, 0.04, 'slow')).toMatchObject({ code: '#VALUE!' });
    expect(run('TRIP_TIME', 1500, 320, 8, 0, 0.15, 3800, 0.04, 'slow')).toMatchObject({ code: '#VALUE!' });
  });
});

describe('TRIP_BAND', () => {
  const close = (table: unknown, expected: (string | number)[][]) => {
    const rows = table as (string | number)[][];
    expect(rows.map((row) => row.map((cell) => (typeof cell === 'number' ? Number(cell.toPrecision(6)) : cell)))).toEqual(expected);
  };
  const HEADINGS = ['fast A', 'fast s', 'slow A', 'slow s'];

  test('corners of both edges', () => {
    close(run('TRIP_BAND', 20, ...ROW), [
      HEADINGS, [336, 167.184, 416, 245.396], [1280, 11.52, 1920, 11.52], [1280, 0.15, 1920, 0.15], [3040, 0.15, 4560, 0.15], ['', '', 4560, 0.04], ['', '', 20000, 0.04],
    ]);
  });
  test('without headings, instantaneous off, with a ramp', () => {
    close(run('TRIP_BAND', 10, 320, 8, 1600, 0.15, 'off', '', 0, 0, 3200, '', false), [
      [336, 261.224, 416, 170.414], [1600, 11.52, 1600, 11.52], [1600, 0.6, 1600, 0.6], [3200, 0.15, 3200, 0.15], [10000, 0.15, 10000, 0.15],
    ]);
  });
  test('long-time faster than short-time: the corner is where the lines meet, not the pick-up', () => {
    close(run('TRIP_BAND', 20, 100, 1, 900, 0.1, 'off', '', 0, 0), [
      HEADINGS, [105, 32.6531, 130, 21.3018], [900, 0.444444, 900, 0.444444], [900, 0.1, 900, 0.1], [1897.37, 0.1, 1897.37, 0.1], [20000, 0.0009, 20000, 0.0009],
    ]);
    close(run('TRIP_BAND', 20, 100, 1, 900, 0.5, 'off', '', 0, 0), [
      HEADINGS, [105, 32.6531, 130, 21.3018], [20000, 0.0009, 20000, 0.0009],
    ]);
  });
  test('the band ends where it is asked to end', () => {
    close(run('TRIP_BAND', '1500 A', ...ROW), [HEADINGS, [336, 167.184, 416, 245.396], [1280, 11.52, 1500, 18.8744], [1280, 0.15, '', ''], [1500, 0.15, '', '']]);
    // 1.30 Ir itself is no band, and no rounding makes it one.
    expect(run('TRIP_BAND', 0.416, ...ROW)).toEqual(refusal('#NUM!', 'upto_kA: 0.416 kA does not exceed 1.30 Ir, 416 A'));
    expect(run('TRIP_BAND', 0.4, ...ROW)).toEqual(refusal('#NUM!', 'upto_kA: 0.4 kA does not exceed 1.30 Ir, 416 A'));
  });
  test('corners come by current, however the settings stand to each other', () => {
    // The ramp, 0.15·(3200·d)² A²s, ends before the instantaneous pick-up: at the pick-up it is 0.15·2² = 0.6 s, at 3200·d 0.15 s.
    close(run('TRIP_BAND', 20, ...ROW, 20, 20, 3200), [
      HEADINGS, [336, 167.184, 416, 245.396], [1280, 11.52, 1920, 11.52], [1280, 0.6, 1920, 0.6], [2560, 0.15, 3840, 0.15], [3040, 0.15, 4560, 0.15], ['', '', 4560, 0.04], ['', '', 20000, 0.04],
    ]);
    // Behind it, at 4200·d: the slow ramp, 0.15·(4200·1.2)² = 3 810 240 A²s, is cut off at 4560 A, where it has come to 0.18324 s.
    close(run('TRIP_BAND', 20, ...ROW, 20, 20, 4200), [
      HEADINGS, [336, 167.184, 416, 245.396], [1280, 11.52, 1920, 11.52], [1280, 1.03359, 1920, 1.03359], [3040, 0.183241, 4560, 0.183241], ['', '', 4560, 0.04], ['', '', 20000, 0.04],
    ]);
  });
  test('a short-time pick-up below the beginning of the band: it begins on the short-time line, and at 1.05 Ir', () => {
    const band = run('TRIP_BAND', 20, 320, 8, 400, 0.15, 3800, 0.04);
    close(band, [HEADINGS, [336, 0.15, 416, 245.396], [3040, 0.15, 480, 184.32], ['', '', 480, 0.15], ['', '', 4560, 0.15], ['', '', 4560, 0.04], ['', '', 20000, 0.04]]);
    // A pick-up a hair above 1.05 Ir, 420 A·0.8, is no corner of its own.
    expect((run('TRIP_BAND', 20, 320, 8, 420 * (1 + 5e-10), 0.15, 3800, 0.04) as Matrix)[1]!.slice(0, 2)).toEqual([336, 0.15]);
  });
  test('a corner stands only where the line bends', () => {
    // The long-time line, 1·600² A²s, meets the delay at its very pick-up: 600²/900² = 0.444 s, as a cell holds it.
    close(run('TRIP_BAND', 20, 100, 1, 900, 0.4444444444444, 'off', '', 0, 0), [HEADINGS, [105, 32.6531, 130, 21.3018], [20000, 0.0009, 20000, 0.0009]]);
  });
  test('a fast edge that lies wholly in the instantaneous range has no points', () => {
    close(run('TRIP_BAND', 5, 320, 8, 'off', '', 400, 0.04), [HEADINGS, ['', '', 416, 245.396], ['', '', 480, 184.32], ['', '', 480, 0.04], ['', '', 5000, 0.04]]);
  });
  test('a level stretch behind a ramp is level to the last digit, so that the columns serve as points', () => {
    const band = run('TRIP_BAND', 0.19, 20, 0.5, 84.55757068397457, 0.1822549527500948, 'off', '', 0, 0, 157.75444416635423, 6, false) as number[][];
    expect(band[band.length - 1]![1]).toBe(0.1822549527500948);
    expect(run('CURVE_TIME', band.map((row) => row.slice(0, 2)), 180, 0, 'fast')).toBe(0.1822549527500948);
  });
  test('so is one before the long-time line, where the line at the corner is a hair off', () => {
    const band = run('TRIP_BAND', 20, 94.46, 1.46, 850, 0.106, 'off', '', 0, 0) as Matrix;
    expect(band.slice(3, 5).map((row) => row[1])).toEqual([0.106, 0.106]);
    expect(run('CURVE_TIME', band.slice(1).map((row) => row.slice(0, 2)), 1500, 0, 'fast')).toBe(0.106);
  });
  test('tr_multiple stands before headers and is named when it is not given', () => {
    close(run('TRIP_BAND', 1, 100, 8, 'off', '', 'off', '', 0, 0, '', 3, 'no'), [[105, 65.3061, 130, 42.6036], [1000, 0.72, 1000, 0.72]]);
    expect(run('ASSUMED', 'TRIP_BAND', 20, ...ROW)).toBe('delayed_tol_pct=20; ii_tol_pct=20; i2t_until_A=off; tr_multiple=6; headers=TRUE');
  });
});
