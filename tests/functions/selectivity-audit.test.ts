import { valueOf } from '../support/evaluate';

describe('cautions', () => {
  // IEC 60269-1 tables 3 and 7 begin at 16 A (from memory).
  test('SELECT_RATIO below 16 A', () => {
    const words = 'minor_A 6 A: the limits that the ratio rests on begin at 16 A';
    expect(valueOf('=JW.CAUTION("SELECT_RATIO_TEST",10,6,"gG","gG")')).toBe(words);
    expect(valueOf('=JW.CAUTION("SELECT_RATIO_TEST",25,16,"gG","gG")')).toBe('');
  });

  test('tolerances and reserves of less than one per cent', () => {
    expect(valueOf('=JW.CAUTION("SELECT_JOULE_TEST",92001,140000,31,31,0.25)')).toBe('reserve_pct is 0.25 %: a fraction typed for per cent?');
    expect(valueOf('=JW.CAUTION("SELECT_PEAK_TEST",10.5,12000,0.2)')).toBe('ii_tol_pct is 0.2 %: a fraction typed for per cent?');
    expect(valueOf('=JW.CAUTION("SELECT_LIMIT",6300,50,,0.2)')).toContain('ii_tol_pct is 0.2 %');
    expect(valueOf('=JW.CAUTION("SELECT_LIMIT",6300,50,36,0.2)')).toBe('');
    const curves = '{900,10;1100,5},0.1,{2400,12;2900,5},0.08,2';
    expect(valueOf(`=JW.CAUTION("SELECT_RANGES",${curves})`)).toContain('minor_tolerance_pct is 0.1 %: a fraction typed for per cent?; major_tolerance_pct is 0.08 %');
    expect(valueOf('=JW.CAUTION("TAKEOVER_CURRENT",{2000,20;8000,0.05;16000,0.004},{1500,30;5000,6;5000,0.03;30000,0.02},0.1,"slow")')).toBe('tolerance_pct is 0.1 %: a fraction typed for per cent?');
  });
});
