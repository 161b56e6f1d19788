import { CellError } from '../../src/functions/kernel/cell';
import { fuseGateCurrent, fuseJouleLimit } from '../../src/core/curve/fuse-band';
import { fuseGates, fuseRatings } from '../../src/core/standards/fuse-gates';
import { fuseJouleLimits } from '../../src/core/standards/fuse-joule';
import { run } from '../support/run';

const refusal = (code: CellError['code'], message: string) => new CellError(code, message);
const RATINGS = '[16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250]';

describe('limit bands of gG links', () => {
  test.each([
    [16, '10 s least', 33], [100, '5 s greatest', 580], [200, '0.1 s least', 1910], [400, '0.1 s greatest', 8060], [1250, '5 s greatest', 13000],
    [100, ' IMAX 5 s ', 580], [100, 'imin 10 s', 290], ['0.1 kA', 'Imin 0.1 s', 820],
  ])('gate of %p A, %p', (rated, gate, expected) => expect(run('BAND_FUSE', rated, gate)).toBe(expected));

  test.each([
    [63, 'greatest', 27000], [100, 'least', 27000], [16, 'min', 300], [20, 'MAX', 1800], [1000, 'least', 7840000],
  ])('joule integral of %p A, %p', (rated, limit, expected) => expect(run('BAND_FUSE_JOULE', rated, limit)).toBe(expected));

  test('a rating between those of the list is refused, not interpolated', () => {
    expect(run('BAND_FUSE', 110, '5 s greatest')).toEqual(refusal('#NUM!', `rated_A: 110 is not in the list ${RATINGS}`));
    expect(run('BAND_FUSE_JOULE', 10, 'least')).toEqual(refusal('#NUM!', `rated_A: 10 is not in the list ${RATINGS}`));
    expect(run('BAND_FUSE', -16, '5 s greatest')).toMatchObject({ code: '#VALUE!' });
    expect(run('BAND_FUSE', '', '5 s greatest')).toEqual(refusal('#N/A', 'missing: rated_A'));
  });

  test('the core refuses a rating that is not listed by itself, for those who call it without the sheet', () => {
    const words = 'rated_A: 110 is not among the rated currents of the table';
    expect(() => fuseGateCurrent(110, '5 s greatest')).toThrow(words);
    expect(() => fuseJouleLimit(110, 'least')).toThrow(words);
  });

  test('no gate is built for another time', () => {
    expect(run('BAND_FUSE', 100, '0.4 s greatest')).toEqual(
      refusal('#VALUE!', 'gate: got "0.4 s greatest", takes 10 s least (imin 10 s) · 5 s greatest (imax 5 s) · 0.1 s least (imin 0.1 s) · 0.1 s greatest (imax 0.1 s)'),
    );
  });

  test('the caution always says that a band is no curve', () => {
    const words = 'limit band of the standard, not the curve of a link';
    expect(run('CAUTION', 'BAND_FUSE', 100, '5 s greatest')).toBe(words);
    expect(run('CAUTION', 'BAND_FUSE_JOULE', 63, 'greatest')).toBe(words);
    expect(run('CLAUSE', 'BAND_FUSE_JOULE')).toBe('IEC 60269-1:2006+A2, tables 3 and 7 (from memory)');
  });
});

/**
 * Where the ratio 1.6 : 1 of IEC 60269-2 comes from: with rated currents in that ratio (250/160 = 1.5625 is the least of the rounded series)
 * the larger link's least figure is at least the smaller one's greatest. Each of the two tables shows it without the other.
 */
describe('the two fuse tables reproduce the ratio 1.6', () => {
  const pairs = fuseRatings.flatMap((major) => fuseRatings.filter((minor) => minor < major).map((minor) => ({ major, minor, ratio: major / minor })));
  const step = pairs.filter(({ ratio }) => ratio >= 1.56);
  const below = pairs.filter(({ ratio }) => ratio < 1.56);

  test('the list holds twenty ratings, and every rating but the two least has a partner at the step', () => {
    expect(fuseRatings).toHaveLength(20);
    expect(step.filter(({ ratio }) => ratio < 1.64).map(({ major }) => major)).toEqual(fuseRatings.slice(2));
    expect(below.map(({ major }) => major)).toEqual(fuseRatings.slice(1));
  });
  test('joule table: least of the larger ≥ greatest of the smaller', () => {
    for (const { major, minor } of step) expect(fuseJouleLimits.get(major)!.least).toBeGreaterThanOrEqual(fuseJouleLimits.get(minor)!.greatest);
  });
  test('gate table at 0.1 s: least of the larger ≥ greatest of the smaller', () => {
    for (const { major, minor } of step) expect(fuseGates.get(major)!['0.1 s least']).toBeGreaterThanOrEqual(fuseGates.get(minor)!['0.1 s greatest']);
  });
  test('one step of the series, about 1.25, does not do in either table', () => {
    for (const { major, minor } of below) {
      expect(fuseJouleLimits.get(major)!.least).toBeLessThan(fuseJouleLimits.get(minor)!.greatest);
      expect(fuseGates.get(major)!['0.1 s least']).toBeLessThan(fuseGates.get(minor)!['0.1 s greatest']);
    }
  });
  test('so the ratio test and the joule test agree on every pair of the list', () => {
    for (const { major, minor } of pairs) {
      const byRatio = run('SELECT_RATIO_TEST', major, minor, 'gG', 'gG');
      const byTable = run('SELECT_JOULE_TEST', run('BAND_FUSE_JOULE', minor, 'greatest') as number, run('BAND_FUSE_JOULE', major, 'least') as number, 50, 50);
      expect([major, minor, byTable]).toEqual([major, minor, byRatio]);
    }
  });
  test('within one rating the limits stand in order', () => {
    for (const gates of fuseGates.values()) {
      expect(gates['10 s least']).toBeLessThan(gates['5 s greatest']);
      expect(gates['0.1 s least']).toBeLessThan(gates['0.1 s greatest']);
      expect(gates['10 s least']).toBeLessThan(gates['0.1 s least']);
    }
    for (const { least, greatest } of fuseJouleLimits.values()) expect(least).toBeLessThan(greatest);
  });
});
