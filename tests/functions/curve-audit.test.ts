import { CellError } from '../../src/functions/kernel/cell';
import { valueOf } from '../support/evaluate';

/** Acceptance that would be dangerous: a curve typed in other units, a tolerance typed as a fraction, a longest time at the fast edge. */

const refused = (formula: string, words: string): void => {
  const value = valueOf(formula);
  expect(value).toBeInstanceOf(CellError);
  expect(value).toMatchObject({ code: '#VALUE!', message: words });
};

describe('a heading that names another unit than the column is taken in', () => {
  // 10 s at 900 A, 0.2 s at 2400 A; as kA and ms without a look at the heading, 2 kA read 414 s where it is 0.41 s.
  test('kA for A, ms for s', () => {
    refused('=JW.CURVE_TIME({"kA","s";0.9,10;2.4,0.2},2,0,"slow")', 'points row 1: heading says kA, the column is taken in A');
    refused('=JW.CURVE_TIME({"A","ms";900,10000;2400,200},2000,0,"slow")', 'points row 1: heading says ms, the column is taken in s');
  });
  // 60 000 A²s at 5 kA would be read as 0.06 A²s, which every conductor stands.
  test('kA²s for A²s, A for kA', () => {
    refused('=JW.LETTHROUGH_POINTS({"kA","kA²s";5,0.06;10,0.09},7,415,400)', 'points row 1: heading says kA²s, the column is taken in A²s');
    refused('=JW.CUTOFF_POINTS({"kA","A peak";5,5600;10,9200},7,415,400)', 'points row 1: heading says A, the column is taken in kA peak');
  });
  test.each(['kA', 'I, kA', 'I (kA)', 'I [kA]', 'I / kA', 'current kA'])('however it is written: %s', (heading) => {
    refused(`=JW.CURVE_CURRENT({"${heading}","t, s";0.9,10;2.4,0.2},1,0,"slow")`, 'points row 1: heading says kA, the column is taken in A');
  });
  test.each([['A', 's'], ['I (A)', 't [s]'], ['fuse A', 'slow'], ['I', 't min'], ['amperes', 'min'], ['length, m', 'kg']])('others are skipped: %s, %s', (x, y) => {
    expect(valueOf(`=JW.CURVE_TIME({"${x}","${y}";900,10;2400,0.2},900,0,"slow")`)).toBe(10);
  });
  test('kA peak is a kA', () => {
    expect(valueOf('=JW.CUTOFF_POINTS({"kA","î (kA peak)";5,5.6;10,9.2},10,415,400)')).toBe(9.2);
  });
  test('CURVE_CHECK finds it too', () => {
    expect(valueOf('=JW.CURVE_CHECK({"A","ms";900,10;1100,5;1600,1;2400,0.2})')).toBe('row 1: heading says ms, the column is taken in s');
    expect(valueOf('=JW.CURVE_CHECK({"A","s";900,10;1100,5;1600,1;2400,0.2})')).toBe('no findings');
  });
});

describe('cautions', () => {
  const SHEET = '{900,10;1100,5;1600,1;2400,0.2}';
  const fraction = (name: string, percent: number): string => `${name} is ${percent} %: a fraction typed for per cent?`;

  test('a tolerance of a cell formatted as 10 % arrives as 0.1', () => {
    expect(valueOf(`=JW.CAUTION("CURVE_TIME",${SHEET},2000,0.1,"slow")`)).toBe(fraction('tolerance_pct', 0.1));
    expect(valueOf(`=JW.CAUTION("CURVE_CURRENT",${SHEET},0.4,0.1,"slow")`)).toBe(fraction('tolerance_pct', 0.1));
    expect(valueOf(`=JW.CAUTION("ARC_TIME_FUSE",${SHEET},1.2,0.1)`)).toBe(fraction('tolerance_pct', 0.1));
    expect(valueOf(`=JW.CAUTION("CURVE_TIME",${SHEET},2000,0,"slow")&JW.CAUTION("CURVE_TIME",${SHEET},2000,1,"slow")`)).toBe('');
    expect(valueOf('=JW.CAUTION("TRIP_TIME",2500,320,8,1600,0.15,3800,0.04,"slow",0.2,0.1)')).toBe(`${fraction('delayed_tol_pct', 0.2)}; ${fraction('ii_tol_pct', 0.1)}`);
  });

  test('tsd_s is the longest time: at the fast edge it is no least time', () => {
    const words = 'fast edge: tsd_s 0.3 s stands as typed; for selectivity give the least time of the setting';
    expect(valueOf('=JW.CAUTION("TRIP_TIME",3000,400,10,2000,0.3,4000,0.02,"fast")')).toBe(words);
    expect(valueOf('=JW.CAUTION("TRIP_TIME",3000,400,10,2000,0.3,4000,0.02,"slow")')).toBe('');
    expect(valueOf('=JW.CAUTION("TRIP_TIME",1000,400,10,2000,0.3,4000,0.02,"fast")')).toBe('');
  });
});
