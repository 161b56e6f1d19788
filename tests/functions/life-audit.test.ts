import { valueOf } from '../support/evaluate';

test('per cents of cells formatted as per cent arrive as fractions', () => {
  const words = (name: string, percent: number): string => `${name} is ${percent} %: a fraction typed for per cent?`;
  expect(valueOf('=JW.FIRST_COST(1000,"35 %",0,0)')).toBe(650);
  expect(valueOf('=JW.CAUTION("FIRST_COST",1000,0.35,0,0)')).toBe(words('discount_pct', 0.35));
  expect(valueOf('=JW.CAUTION("PRESENT_COST",1000,100,0.07,15)')).toBe(words('rate_pct', 0.07));
  expect(valueOf('=JW.CAUTION("BREAKEVEN_RATE",2650,2100,950,3100,0.07,15)')).toBe(words('rate_pct', 0.07));
  expect(valueOf('=JW.CAUTION("BREAKEVEN_WORDS",2650,2100,950,3100,0.07,15)')).toBe(words('rate_pct', 0.07));
  expect(valueOf('=JW.CAUTION("POLE_SPREAD_TEST",0.22,0.215,0.2425,0.5)')).toContain(words('limit_pct', 0.5));
  expect(valueOf('=JW.CAUTION("PRESENT_COST",1000,100,0,15)')).toBe('');
});
