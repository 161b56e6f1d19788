import { valueOf } from '../support/evaluate';

describe('cautions of a pass that leans on more than was given', () => {
  // 50 kA·√(0.3 s/1 s) = 27.4 kA: the joule rule of assemblies, which no breaker is tested by.
  test('SHORTTIME beyond the time of its rating', () => {
    const words = "time_s is over the 0.3 s of icw_kA: allowed by equal joule integral, the assembly standard's rule; for a breaker take the maker's Icw at the delay";
    expect(valueOf('=JW.SHORTTIME_TEST(27.3,1,50,0.3)')).toBe('pass');
    expect(valueOf('=JW.CAUTION("SHORTTIME_TEST",27.3,1,50,0.3)')).toBe(words);
    expect(valueOf('=JW.CAUTION("SHORTTIME_MARGIN",27.3,1,50,0.3)')).toBe(words);
    expect(valueOf('=JW.CAUTION("SHORTTIME_TEST",50,0.3,50,0.3)')).toBe('');
  });

  test('BREAKING up to 4.5 kA: a power factor that was given is not compared', () => {
    const words = 'network_pf is not compared: no test power factor is held for a rating up to 4.5 kA';
    expect(valueOf('=JW.CAUTION("BREAKING_TEST",3,4.5,4.5,"once",0.3)')).toBe(words);
    expect(valueOf('=JW.CAUTION("BREAKING_TEST",3,6,4.5,"service",0.3)')).toBe(words);
    expect(valueOf('=JW.CAUTION("BREAKING_TEST",3,4.5,4.5,"once")')).toBe('');
    expect(valueOf('=JW.CAUTION("BREAKING_TEST",3,6,4.5,"once",0.8)')).toBe('');
  });
});

test('let-through in kA²s where A²s are asked passes everything', () => {
  expect(valueOf('=JW.LETTHROUGH_TEST(0.21,8265625,36,36)')).toBe('pass');
  expect(valueOf('=JW.CAUTION("LETTHROUGH_TEST",0.21,8265625,36,36)')).toBe('let_A2s is 0.21 A²s: kA²s typed for A²s?');
  expect(valueOf('=JW.CAUTION("SELECT_JOULE_TEST",0.092,140000,31,31)')).toBe('total_minor_A2s is 0.092 A²s: kA²s typed for A²s?');
  expect(valueOf('=JW.CAUTION("LETTHROUGH_TEST",210000,8265625,36,36)&JW.CAUTION("SELECT_JOULE_TEST",92001,140000,31,31)')).toBe('');
});
