import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const MINOR: Matrix = [[900, 10], [1100, 5], [1600, 1], [2400, 0.2], [3600, 0.04], [5500, 0.01]];
const MAJOR: Matrix = [['A', 's'], [2400, 12], [2900, 5], [4200, 1], [6400, 0.2], [9600, 0.04], [14500, 0.01]];
const BELOW = 'curves end where energy begins: below 0.1 s use SELECT_JOULE_TEST, SELECT_PEAK_TEST or the tested table';

const rounded = (table: unknown) => (table as (string | number)[][]).map((row) => row.map((cell) => (typeof cell === 'number' ? Number(cell.toPrecision(6)) : cell)));

describe('SELECT_RANGES', () => {
  test('three ranges, each with its own verdict', () => {
    expect(rounded(run('SELECT_RANGES', MINOR, 10, MAJOR, 10, 12))).toEqual([
      ['range', 'from A', 'to A', 'least time ratio', 'verdict'],
      ['overload', 990, 1760, 1.2, 'pass'],
      ['short-time', 1760, 3143.71, 12, 'pass'],
      ['instantaneous', 3143.71, 12000, 1.32575, 'not shown'],
    ]);
    expect(run('SELECT_RANGES', MINOR, 10, MAJOR, 10, 12, false)).toHaveLength(3);
  });
  test('one range at a time', () => {
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, 'overload')).toBe('pass');
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, 'Short time')).toBe('pass');
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, 'short-circuit')).toBe('not shown');
    expect(run('CAUTION', 'SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, 'instantaneous')).toBe(BELOW);
    expect(run('SELECT_RANGES_AT', MAJOR, 10, MINOR, 10, 12, 'short-time')).toBe('FAIL');
  });
  /** Minor: level at 2 s up to 1000 A, at 0.5 s beyond. Major: I²t line through 20 s at 1000 A, level at 0.2 s from 10 kA. */
  test('the current where selectivity is lost is named', () => {
    const minor: Matrix = [[100, 2], [1000, 2], [1000, 0.5], [10000, 0.5], [20000, 0.5]];
    const major: Matrix = [[1000, 20], [10000, 0.2], [20000, 0.2]];
    expect(run('SELECT_RANGES_AT', minor, 0, major, 0, 15, 'short-time')).toBe('FAIL');
    // 20·(1000/I)² = 0.5 at I = 1000·√40
    expect(run('CAUTION', 'SELECT_RANGES_AT', minor, 0, major, 0, 15, 'short-time')).toBe('short-time: selectivity lost from 6324.56 A');
    expect(run('CAUTION', 'SELECT_RANGES', minor, 0, major, 0, 15)).toBe('short-time: selectivity lost from 6324.56 A');
    expect(run('SHOW_STEPS', 'SELECT_RANGES_AT', minor, 0, major, 0, 15, 'short-time')).toContainEqual(['I lost, short-time = first current with ratio < 1', '6324.56 A']);
    expect(rounded(run('SELECT_RANGES', minor, 0, major, 0, 15))).toEqual([
      ['range', 'from A', 'to A', 'least time ratio', 'verdict'],
      ['overload', 100, 1000, 10, 'pass'],
      ['short-time', 1000, 15000, 0.4, 'FAIL'],
      ['instantaneous', '', '', '', 'not shown'],
    ]);
  });
  test('a loss in a later stretch of the range, and one from its first current', () => {
    const minor: Matrix = [[100, 2], [1000, 2], [1000, 0.5], [20000, 0.5]];
    // The same I²t line with a point more, so that the crossing is not in its first stretch.
    expect(run('CAUTION', 'SELECT_RANGES_AT', minor, 0, [[1000, 20], [5000, 0.8], [10000, 0.2], [20000, 0.2]], 0, 15, 'short-time')).toBe('short-time: selectivity lost from 6324.56 A');
    // 10 s against 20 s at 100 A; they meet at 1000 A.
    expect(run('CAUTION', 'SELECT_RANGES_AT', [[100, 20], [1000, 2]], 0, [[100, 10], [1000, 2]], 0, 1, 'overload')).toBe('overload: selectivity lost from 100 A');
  });
  test('equal times are no loss: it begins where the major device is really the faster one', () => {
    expect(run('CAUTION', 'SELECT_RANGES_AT', [[1000, 0.5], [20000, 0.5]], 0, [[1000, 2], [2000, 0.5], [4000, 0.5], [8000, 0.25]], 0, 6, 'short-time')).toBe('short-time: selectivity lost from 4000 A');
  });
  test('steps of both devices at one current, which ends a range, are no loss', () => {
    // 3 s over 2 s before the step, 1 s over 0.5 s after it; 1000 A·1.1 and 1375 A·0.8 differ in the last digit, the minor's the greater; 800 A·1.15 and 1150 A·0.8 the other way round.
    const [minor, major] = [(at: number): Matrix => [[100, 2], [at, 2], [at, 0.5], [9000, 0.5]], (at: number): Matrix => [[100, 3], [at, 3], [at, 1], [9000, 1]]];
    for (const [a, minorPct, b, majorPct] of [[1000, 0, 1000, 0], [1000, 10, 1375, 20], [800, 15, 1150, 20]] as const) {
      expect(rounded(run('SELECT_RANGES', minor(a), minorPct, major(b), majorPct, 5, false)).map(([range, , , ratio, verdict]) => [range, ratio, verdict])).toEqual([
        ['overload', 1.5, 'pass'], ['short-time', 2, 'pass'], ['instantaneous', '', 'not shown'],
      ]);
    }
  });
  test('a minor device without overload range is compared in the others', () => {
    expect(rounded(run('SELECT_RANGES', [[1000, 0.5], [5000, 0.2]], 0, [[1000, 2], [10000, 1]], 0, 4, false)).map(([range, from, to, , verdict]) => [range, from, to, verdict])).toEqual([
      ['overload', '', '', 'not shown'], ['short-time', 1000, 4000, 'pass'], ['instantaneous', '', '', 'not shown'],
    ]);
  });
  test('the least ratio of each range stands in the working', () => {
    expect(run('SHOW_STEPS', 'SELECT_RANGES', MINOR, 10, MAJOR, 10, 12)).toContainEqual(['least ratio, overload = t major fast/t minor slow', '1.2']);
  });
  test('edge against edge: curves that pass as means fail with their tolerances', () => {
    const major: Matrix = MINOR.map(([current, time]) => [(current as number) * 1.15, time!]);
    expect(run('SELECT_RANGES_AT', MINOR, 0, major, 0, 5, 'short-time')).toBe('pass');
    expect(run('SELECT_RANGES_AT', MINOR, 10, major, 10, 5, 'short-time')).toBe('FAIL');
  });
  test('lost in the instantaneous range is FAIL, not merely not shown', () => {
    expect(run('SELECT_RANGES_AT', [[1000, 5], [2000, 0.05], [20000, 0.05]], 0, [[3000, 10], [10000, 0.02], [20000, 0.02]], 0, 15, 'instantaneous')).toBe('FAIL');
  });
  test('beyond the last points bounds count: the last time of the minor, the first of the major', () => {
    expect(rounded(run('SELECT_RANGES', [[100, 5], [200, 0.5]], 0, [[1000, 3], [5000, 0.6]], 0, 4, false))).toEqual([
      ['overload', 100, 162.335, 0.6, 'FAIL'],
      ['short-time', 162.335, 4000, 1.5, 'pass'],
      ['instantaneous', '', '', '', 'not shown'],
    ]);
  });
  test('curves that end before the fault level are not taken further, and it is said', () => {
    const words = 'compared up to 13050 A, the end of major_points; the fault is 18 kA';
    expect(run('CAUTION', 'SELECT_RANGES', MINOR, 10, MAJOR, 10, 18)).toBe(words);
    expect(run('CAUTION', 'SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 18, 'overload')).toBe('');
    expect(run('CAUTION', 'SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 18, 'instantaneous')).toBe(`${BELOW}; ${words}`);
    expect(run('CAUTION', 'SELECT_RANGES', MINOR, 10, MAJOR, 10, 12)).toBe('');
  });
  test('an empty range is not shown', () => {
    expect(run('CAUTION', 'SELECT_RANGES_AT', MINOR, 10, [[1000, 100], [2000, 30]], 10, 18, 'instantaneous')).toBe(
      'no current up to 1800 A falls in the instantaneous range; compared up to 1800 A, the end of major_points; the fault is 18 kA',
    );
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 0.5, 'overload')).toBe('not shown');
    expect(run('CAUTION', 'SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 1.5, 'short-time')).toBe('no current up to 1500 A falls in the short-time range');
  });
  test('a step of the major device at the very end of its points counts as taken', () => {
    expect(run('SELECT_RANGES_AT', [[100, 5], [5000, 0.2], [9000, 0.2]], 0, [[1000, 30], [5000, 6], [5000, 0.03]], 0, 20, 'short-time')).toBe('FAIL');
  });
  test('the band of a breaker serves as points', () => {
    const columns = (band: unknown, first: number): Matrix => (band as Matrix).map((row) => row.slice(first, first + 2)).filter((row) => row[0] !== '');
    const slow = columns(run('TRIP_BAND', 20, 100, 4, 800, 0.1, 1200, 0.02), 2);
    const fast = columns(run('TRIP_BAND', 20, 630, 8, 5000, 0.3, 'off', ''), 0);
    expect(run('SELECT_RANGES_AT', slow, 0, fast, 0, 18, 'overload')).toBe('pass');
    expect(run('SELECT_RANGES_AT', slow, 0, fast, 0, 18, 'short-time')).toBe('pass');
    expect(run('SELECT_RANGES_AT', fast, 0, slow, 0, 18, 'short-time')).toBe('FAIL');
    // With the same delay the minor takes 245 s at 130 A, the major at least 167 s at 661.5 A, where its points begin: no more is known of it below.
    const slower = columns(run('TRIP_BAND', 20, 100, 8, 800, 0.1, 1200, 0.02), 2);
    expect(run('SELECT_RANGES_AT', slower, 0, fast, 0, 18, 'overload')).toBe('FAIL');
    expect(run('CAUTION', 'SELECT_RANGES_AT', slower, 0, fast, 0, 18, 'overload')).toBe(
      'overload: selectivity lost from 130 A; below 661.5 A, where major_points begin, their first time stands as a bound',
    );
  });
  test('the bound below the first point of the major device is told where the loss begins under it, in any range', () => {
    const [minor, words] = [[[100, 20], [1000, 10], [9000, 0.5]] as Matrix, 'major_points begin, their first time stands as a bound'];
    expect(run('CAUTION', 'SELECT_RANGES', minor, 0, [[1000, 12], [9000, 5]], 0, 8)).toBe(`overload: selectivity lost from 100 A; below 1000 A, where ${words}`);
    expect(run('CAUTION', 'SELECT_RANGES', minor, 0, [[1000, 20], [1000, 5], [9000, 5]], 0, 8)).toBe('overload: selectivity lost from 1000 A');
  });
  test('bad input names the argument', () => {
    expect(run('SELECT_RANGES', MINOR, 10, [[1, 2], [1, 3]], 10, 12)).toEqual(refusal('#VALUE!', 'major_points row 2: first column must rise'));
    expect(run('SELECT_RANGES', MINOR, 10, MAJOR, 10, 12000)).toEqual(refusal('#NUM!', 'fault_kA: 12000 is outside above 0, up to 300 kA'));
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, '')).toEqual(refusal('#N/A', 'missing: range'));
    expect(run('SELECT_RANGES_AT', MINOR, 10, MAJOR, 10, 12, 'long')).toEqual(
      refusal('#VALUE!', 'range: got "long", takes overload · short-time (short time) · instantaneous (short-circuit)'),
    );
  });
});

describe('TAKEOVER_CURRENT', () => {
  const FUSE: Matrix = [[2000, 20], [4000, 1], [8000, 0.05], [16000, 0.004]];
  const BREAKER: Matrix = [[1500, 30], [5000, 6], [5000, 0.03], [30000, 0.02]];

  test.each([['slow', 10.6085], ['fast', 8.56511]])('%p edge', (edge, expected) => expect(run('TAKEOVER_CURRENT', FUSE, BREAKER, 10, edge)).toBeCloseTo(expected, 4));
  test('a crossing on a vertical step is the step', () => {
    expect(run('TAKEOVER_CURRENT', [[1000, 10], [3000, 2], [3000, 0.01], [9000, 0.01]], [[500, 5], [9000, 0.05]], 0, 'mean')).toBe(3);
    expect(run('TAKEOVER_CURRENT', [[1000, 10], [3000, 2], [3000, 0.01], [9000, 0.01]], [[500, 5], [9000, 0.05]], 10, 'slow')).toBeCloseTo(3.3, 12);
  });
  test('the last crossing counts where there are several', () => {
    // Fuse 1 s at 1 kA to 0.01 s at 10 kA (I²t). Breaker level 0.5 s, dropping to 0.02 s at 2 kA: the fuse is first from 1.41 to 2 kA, and again from 7.07 kA.
    expect(run('TAKEOVER_CURRENT', [[1000, 1], [10000, 0.01]], [[1000, 0.5], [2000, 0.5], [2000, 0.02], [10000, 0.02]], 0, 'mean')).toBeCloseTo(Math.sqrt(50), 9);
  });
  test('by hand, and whatever the breaker does beyond the end of the fuse', () => {
    // Level breaker at 0.1 s against 1 s·(1 kA/I)²: √10 kA, between the first two points.
    expect(run('TAKEOVER_CURRENT', [[1000, 1], [10000, 0.01]], [[1000, 0.1], [10000, 0.1]], 0, 'mean')).toBeCloseTo(Math.sqrt(10), 9);
    // Fuse (I/4 kA)^(lg 0.05/lg 2) s, breaker 0.1 s·(I/5 kA)^(lg 0.2/lg 6): equal at 5 kA·3.8123^(1/3.42366).
    expect(run('TAKEOVER_CURRENT', FUSE.slice(0, 3), [[1500, 30], [5000, 6], [5000, 0.1], [30000, 0.02]], 0, 'mean')).toBeCloseTo(7.391244, 6);
  });
  test('no take-over current', () => {
    expect(run('TAKEOVER_CURRENT', [[100, 1], [800, 0.01]], [[800, 30], [9000, 6]], 0, 'mean')).toEqual(refusal('#NUM!', 'fuse_points: no common range of current with breaker_points'));
    expect(run('TAKEOVER_CURRENT', [[2000, 20], [4000, 1], [8000, 0.2]], BREAKER, 10, 'slow')).toEqual(refusal('#NUM!', 'fuse_points: the breaker is still first at the end of the common range'));
    expect(run('TAKEOVER_CURRENT', BREAKER, BREAKER, 0, 'mean')).toEqual(refusal('#NUM!', 'fuse_points: the breaker is still first at the end of the common range'));
    expect(run('TAKEOVER_CURRENT', [[2000, 1], [8000, 0.01]], [[1500, 30], [9000, 6]], 10, 'slow')).toEqual(refusal('#NUM!', 'fuse_points: the fuse is first throughout the common range'));
    expect(run('TAKEOVER_CURRENT', [[100, 1], [800, 0.01]], [[1500, 30], [9000, 6]], 10, 'slow')).toEqual(refusal('#NUM!', 'fuse_points: no common range of current with breaker_points'));
  });
  test('a mean curve is not for the record', () => {
    expect(run('CAUTION', 'TAKEOVER_CURRENT', FUSE, BREAKER, 10, 'mean')).toBe('mean curve: not for the record');
    expect(run('CAUTION', 'TAKEOVER_CURRENT', FUSE, BREAKER, 10, 'slow')).toBe('');
  });
});
