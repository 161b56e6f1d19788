import type { Recorder, Step } from '../../src/core/working';
import type { Outcome } from '../../src/functions/kernel/call';
import { CellError } from '../../src/functions/kernel/cell';
import { outcomeOf, run } from '../support/run';

const last = ({ work }: Outcome): Step | undefined => (work as Recorder).steps.at(-1);
const refusal = (code: CellError['code'], message: string) => new CellError(code, message);

describe('SELECT_RATIO', () => {
  test('ratio of two ratings', () => {
    expect(run('SELECT_RATIO', 250, 160)).toBe(1.5625);
    expect(run('SELECT_RATIO', '0.4 kA', 250)).toBe(1.6);
    expect(run('SELECT_RATIO', 250, 0)).toEqual(refusal('#VALUE!', 'minor_A: got 0, takes above 0, up to 10000 A'));
    expect(run('SELECT_RATIO', 250, '')).toEqual(refusal('#N/A', 'missing: minor_A'));
  });
  test.each([
    [250, 160, 'gG range 1', 'gG range 1', 'pass', 0.160256],
    [200, 160, 'gG', 'gG', 'FAIL', -19.871795],
    [63, 40, 'gG', 'GG ', 'pass', 0.961538],
    [63, 40, 'gG  range 1', 'gG range 1', 'pass', 0.961538],
  ])('%p over %p, %p and %p', (major, minor, majorType, minorType, verdict, margin) => {
    expect(run('SELECT_RATIO_TEST', major, minor, majorType, minorType)).toBe(verdict);
    expect(run('SELECT_RATIO_MARGIN', major, minor, majorType, minorType)).toBeCloseTo(margin, 5);
  });
  test('any ratio other than the nominal step stands as it is', () => {
    expect(run('SELECT_RATIO_TEST', 250, 160, 'gG', 'gG', 1.6)).toBe('pass');
    expect(run('SELECT_RATIO_TEST', 250, 160, 'gG', 'gG', 1.61)).toBe('FAIL');
    expect(run('SELECT_RATIO_TEST', 250, 160, 'gG', 'gG', 1.57)).toBe('FAIL');
    expect(run('SELECT_RATIO_TEST', 200, 100, 'gG', 'gG', 2)).toBe('pass');
    expect(run('SELECT_RATIO_MARGIN', 200, 100, 'gG', 'gG', 2)).toBe(0);
    expect(run('SELECT_RATIO_TEST', 250, 160, 'gG', 'gG', 0.9)).toEqual(refusal('#NUM!', 'least_ratio: 0.9 is outside 1 to 10'));
  });
  test('the working says from where the nominal step counts, and only of that step', () => {
    const counted = ['least = nominal step 1.6, counts from', '1.56'];
    expect(run('SHOW_STEPS', 'SELECT_RATIO_TEST', 250, 160, 'gG', 'gG')).toContainEqual(counted);
    expect(run('SHOW_STEPS', 'SELECT_RATIO_TEST', 250, 160, 'gG', 'gG', 1.56)).not.toContainEqual(counted);
  });
  test('across types or makes of range the ratio says nothing, however great it is', () => {
    const reason = 'the ratio holds within one type only: "gG" against "aM"';
    expect(run('SELECT_RATIO_TEST', 250, 100, 'gG', 'aM')).toBe('not shown');
    expect(run('SELECT_RATIO_MARGIN', 250, 100, 'gG', 'aM')).toEqual(refusal('#N/A', reason));
    expect(run('CAUTION', 'SELECT_RATIO_TEST', 250, 100, 'gG', 'aM')).toBe(reason);
    expect(run('SELECT_RATIO_TEST', 250, 100, 'aM', 'aM')).toBe('not shown');
    expect(run('CAUTION', 'SELECT_RATIO_TEST', 250, 100, 'aM', 'aM')).toBe('the ratio holds for gG links only, not for aM');
    expect(run('SELECT_RATIO_TEST', 250, 100, 'gG range 1', 'gG range 2')).toBe('not shown');
  });
  test('an unknown type is not shown; a bad argument wins over it', () => {
    expect(run('SELECT_RATIO_TEST', 250, 160, 'gG', '')).toBe('not shown');
    expect(run('SELECT_RATIO_MARGIN', 250, 160, 'gG', '')).toEqual(refusal('#N/A', 'missing: minor_type'));
    expect(run('SELECT_RATIO_TEST', 250, 160, '', 'gG', 99)).toEqual(refusal('#NUM!', 'least_ratio: 99 is outside 1 to 10'));
    expect(run('ASSUMED', 'SELECT_RATIO_TEST', 250, 160, 'gG', 'gG')).toBe('least_ratio=1.6');
  });
});

describe('SELECT_JOULE', () => {
  test.each([
    [92000, 140000, 31, 31, undefined, 'pass', 52.1739],
    [150000, 140000, 31, 31, undefined, 'FAIL', -6.66667],
    [92000, 140000, 31, 31, 25, 'pass', 21.7391],
    ['0.092 kA²s', '140000 A2s', '31000 A', 31, 0, 'pass', 52.1739],
    [140000, 140000, 31, 31, 0, 'pass', 0],
    [92000, 140000, 31, 31.31, 0, 'pass', 52.1739],
  ])('total %p against pre-arcing %p at %p and %p kA, reserve %p', (total, prearc, minor, major, reserve, verdict, margin) => {
    expect(run('SELECT_JOULE_TEST', total, prearc, minor, major, reserve)).toBe(verdict);
    expect(run('SELECT_JOULE_MARGIN', total, prearc, minor, major, reserve)).toBeCloseTo(margin, 4);
  });
  test('figures of two fault levels are not compared', () => {
    const reason = 'read at two fault levels: minor at 31 kA, major at 22 kA';
    expect(run('SELECT_JOULE_TEST', 92000, 140000, 31, 22)).toBe('not shown');
    expect(run('SELECT_JOULE_MARGIN', 92000, 140000, 31, 22)).toEqual(refusal('#N/A', reason));
    expect(run('CAUTION', 'SELECT_JOULE_TEST', 92000, 140000, 31, 22)).toBe(reason);
    expect(run('SELECT_JOULE_TEST', 92000, 140000, 31, 31.32)).toBe('not shown');
    expect(run('SELECT_JOULE_TEST', 92000, 140000, 31.32, 31)).toBe('not shown');
  });
  test('a blank datum is not shown, a blank duty is missing', () => {
    expect(run('SELECT_JOULE_TEST', 92000, '', 31, 31)).toBe('not shown');
    expect(run('SELECT_JOULE_MARGIN', 92000, '', 31, 31)).toEqual(refusal('#N/A', 'missing: prearc_major_A2s'));
    expect(run('SELECT_JOULE_TEST', 92000, 140000, '', '')).toBe('not shown');
    expect(run('SELECT_JOULE_TEST', '', 140000, 31, 31)).toEqual(refusal('#N/A', 'missing: total_minor_A2s'));
  });
  test('pre-arcing against pre-arcing is caught where the figure is one of the standard', () => {
    const prearcing = run('BAND_FUSE_JOULE', 63, 'greatest') as number;
    expect(run('CAUTION', 'SELECT_JOULE_TEST', prearcing, 27000, 31, 31)).toBe(
      'total_minor_A2s 27000 is the pre-arcing limit of a 63 A gG link: take the total, never pre-arcing against pre-arcing',
    );
    // IEC 60269-1:2006, table 7: 0.3 to 1 thousand A²s for 16 A.
    for (const limit of [300, 1000]) expect(run('CAUTION', 'SELECT_JOULE_TEST', limit, 27000, 31, 31)).toMatch(`total_minor_A2s ${limit} is the pre-arcing limit of a 16 A gG link`);
    expect(run('CAUTION', 'SELECT_JOULE_TEST', 92000, 140000, 31, 31)).toBe('');
  });
  test('kA²s is read as 10⁶ A²s and said so; kA where A²s is asked is refused', () => {
    expect(outcomeOf('SELECT_JOULE_TEST', ['0.092 kA²s', 140000, 31, 31]).cautions).toEqual(['total_minor_A2s: kA²s read as 10⁶ A²s; some sheets mean 10³ A²s by it']);
    expect(run('SELECT_JOULE_TEST', '92 kA', 140000, 31, 31)).toEqual(refusal('#VALUE!', 'total_minor_A2s: got "92 kA": kA is current, takes A²s'));
    expect(run('SELECT_JOULE_TEST', 92000, 140000, 31000, 31000)).toEqual(refusal('#NUM!', 'minor_kA: 31000 is outside above 0, up to 300 kA'));
  });
  test('the working states the share', () => {
    expect(run('SHOW_STEPS', 'SELECT_JOULE_TEST', 70000, 140000, 31, 31)).toContainEqual(['share = 100·total/pre-arcing', '50 %']);
  });
});

describe('SELECT_PEAK', () => {
  test.each([
    [10.5, 12000, undefined, 'pass', 29.2995], [10.5, 8000, 10, 'FAIL', -3.0254], ['10.5 kA', '12 kA', 20, 'pass', 29.2995], [12, 12000, 0, 'pass', 41.4214],
  ])('peak %p kA under a release of %p, tolerance %p', (cutoff, ii, tolerance, verdict, margin) => {
    expect(run('SELECT_PEAK_TEST', cutoff, ii, tolerance)).toBe(verdict);
    expect(run('SELECT_PEAK_MARGIN', cutoff, ii, tolerance)).toBeCloseTo(margin, 4);
  });
  test('no release, no verdict', () => {
    expect(run('SELECT_PEAK_TEST', 10.5, '')).toBe('not shown');
    expect(run('CAUTION', 'SELECT_PEAK_TEST', 10.5, '')).toBe('missing: ii_A');
    expect(run('SELECT_PEAK_TEST', 10.5, 'off')).toBe('not shown');
    const reason = 'ii_A is off: show SELECT_TIME_TEST and SHORTTIME_TEST instead';
    expect(run('CAUTION', 'SELECT_PEAK_TEST', 10.5, 'off')).toBe(reason);
    expect(run('SELECT_PEAK_MARGIN', 10.5, 'off')).toEqual(refusal('#N/A', reason));
    expect(run('SELECT_PEAK_TEST', '', 12000)).toEqual(refusal('#N/A', 'missing: cutoff_kA'));
  });
  test('a setting typed in kA where A are asked is caught', () => {
    expect(run('CAUTION', 'SELECT_PEAK_TEST', 10.5, 12)).toBe('ii_A 12 A is very low for an instantaneous release: is it in kA?');
    for (const ii of [50, 12000]) expect(run('CAUTION', 'SELECT_PEAK_TEST', 10.5, ii)).toBe('');
    expect(run('SELECT_PEAK_TEST', 10500, 12000)).toEqual(refusal('#NUM!', 'cutoff_kA: 10500 is outside above 0, up to 700 kA'));
  });
});

describe('SELECT_TIME', () => {
  test.each([
    [0.15, 0.3, undefined, 'pass', 50], [0.2, 0.3, 0.15, 'FAIL', -33.3333], ['200 ms', 0.3, undefined, 'pass', 0], [0.4, 0.3, undefined, 'FAIL', -200],
  ])('%p s under %p s, gap %p', (minor, major, gap, verdict, margin) => {
    expect(run('SELECT_TIME_TEST', minor, major, gap)).toBe(verdict);
    expect(run('SELECT_TIME_MARGIN', minor, major, gap)).toBeCloseTo(margin, 4);
  });
  test('blanks and limits', () => {
    expect(run('SELECT_TIME_TEST', 0.15, '')).toBe('not shown');
    expect(run('SELECT_TIME_TEST', 0.15, 0.3, 0)).toMatchObject({ code: '#VALUE!' });
    expect(run('SELECT_TIME_TEST', 0.15, 0.3, 20)).toEqual(refusal('#NUM!', 'gap_s: 20 is outside above 0, up to 10 s'));
    expect(run('ASSUMED', 'SELECT_TIME_TEST', 0.15, 0.3)).toBe('gap_s=0.1');
  });
});

describe('SELECT_LIMIT and SELECT_EXTENT', () => {
  test.each([
    [6300, 50, undefined, undefined, 5.04], ['off', 30, undefined, undefined, 30], [6300, 50, 36, undefined, 36], [6300, undefined, undefined, 0, 6.3],
    [60000, 42, undefined, undefined, 42], ['OFF', undefined, 25, undefined, 25],
  ])('release %p, Icw %p, tested %p, tolerance %p', (ii, icw, tested, tolerance, expected) => expect(run('SELECT_LIMIT', ii, icw, tested, tolerance)).toBeCloseTo(expected, 9));
  test.each([[42, { Icw: [42, 'kA'] }, 'min(Ii fast, Icw)', 42], [null, {}, 'Ii fast', 48]])('the working with Icw %p', (icw, named, formula, limit) => {
    expect(last(outcomeOf('SELECT_LIMIT', [60000, icw]))).toEqual({ symbol: 'Is', formula, inputs: { 'Ii fast': [48, 'kA'], ...named }, result: [limit, 'kA'] });
  });
  test('off without Icw has no limit; a blank is not off', () => {
    expect(run('SELECT_LIMIT', 'off', '')).toEqual(refusal('#N/A', 'missing: icw_kA'));
    expect(run('SELECT_LIMIT', '', 50)).toEqual(refusal('#N/A', 'missing: ii_A'));
  });
  test.each([[18, 30, 'total'], [18, 5.04, 'partial'], [18, 18, 'total'], [18.001, 18, 'partial']])('fault %p kA, limit %p kA: %p', (fault, limit, expected) => {
    expect(run('SELECT_EXTENT', fault, limit)).toBe(expected);
  });
  test('cautions: by settings only; the delay too where the release is off; kA for A', () => {
    const settings = "by settings only: above this only the maker's tested table counts";
    expect(run('CAUTION', 'SELECT_LIMIT', 6300, 50)).toBe(settings);
    expect(run('CAUTION', 'SELECT_LIMIT', 6300, 50, 36)).toBe('');
    expect(run('CAUTION', 'SELECT_LIMIT', 'off', 30)).toBe(`${settings}; ii_A is off: show the delay too (SELECT_TIME_TEST, SHORTTIME_TEST)`);
    expect(run('CAUTION', 'SELECT_LIMIT', 6.3, 50)).toBe(`${settings}; ii_A 6.3 A is very low for an instantaneous release: is it in kA?`);
    expect(run('CAUTION', 'SELECT_LIMIT', 6.3, 50, 36)).toBe('');
    expect(run('SELECT_EXTENT', 18000, 5)).toEqual(refusal('#NUM!', 'fault_kA: 18000 is outside above 0, up to 300 kA'));
  });
});

describe('BACKUP', () => {
  test.each([
    [42, 25, 12, '', 'not shown', -40.4762], [42, 25, 12, 50, 'pass', 19.0476], [42, 25, 31, '', 'FAIL', -40.4762], [20, 25, '', '', 'pass', 25],
    [20, 25, '', 50, 'pass', 150], [20, 25, 31, 22, 'pass', 25], [42, 25, '', '', 'not shown', -40.4762], [55, 25, 12, 50, 'FAIL', -9.0909], [42, 25, 31, 50, 'pass', 19.0476],
    [25, 25, '', '', 'pass', 0], [42, 25, 25, '', 'not shown', -40.4762],
  ])('fault %p, Icu %p, take-over %p, tested %p', (fault, icu, takeover, tested, verdict, margin) => {
    expect(run('BACKUP_TEST', fault, icu, takeover, tested)).toBe(verdict);
    expect(run('BACKUP_MARGIN', fault, icu, takeover, tested)).toBeCloseTo(margin, 4);
  });
  test('above Icu only a tested pair counts, and without Icu nothing is shown', () => {
    expect(run('CAUTION', 'BACKUP_TEST', 42, 25, 12)).toBe('above icu_kA only a tested pair counts: tested_kA is blank');
    expect(run('BACKUP_TEST', 42, '', 12, 50)).toBe('not shown');
    expect(run('BACKUP_MARGIN', 42, '', 12, 50)).toEqual(refusal('#N/A', 'missing: icu_kA'));
  });
});
