import { call } from '../../src/functions/kernel/call';
import { assumedOf, resultShown, stepsOf } from '../../src/functions/kernel/explain';
import { catalogue } from '../../src/sheet/catalogue';
import { outcomeOf, run } from '../support/run';

/** What an outcome says in words: results with their units, steps, defaults. */

describe('a result with its unit', () => {
  test.each([
    ['a quantity', 'CABLE_WITHSTAND', [115, 25], '8.266E+06 A²s'],
    ['an impedance', 'IMP_SERIES', ['1+2i', 3], '4+2i mΩ'],
    ['a ratio', 'PEAK_RATIO', [50, 'breaker'], '2.1'],
    ['a unit that was asked for', 'UNIT_CONVERT', [12.5, 'J/cm²', 'cal/cm²'], '2.988 cal/cm²'],
    ['a ratio that was asked for', 'UNIT_CONVERT', [5, '%', '1'], '0.05'],
    ['a verdict', 'BREAKING_TEST', [36, 50, 50, 'once'], 'pass'],
    // Money is in whatever the sheet is in: 1480 less 35 %, and 4.5 h at 62; 78 W over 5200 h at 0.22 for the kilowatt-hour.
    ['money', 'FIRST_COST', [1480, 35, 4.5, 62], '1241'],
    ['money a year', 'LOSS_COST', [78, 5200, 0.22], '89.23 a year'],
    ['a table', 'AGREE_LIST', [[[1], [2], [3]], [[1], [5], [6]], 2], '3 rows'],
  ])('%s', (_, name, argv, shown) => {
    const outcome = outcomeOf(name, argv as never);
    expect(resultShown(outcome)).toBe(shown);
    expect(String(run('SHOW_WORKING', name, ...(argv as never[])))).toMatch(new RegExp(`; ${shown.replace(/[+^]/g, '\\$&')}$`));
  });
  test('none where the call was refused', () => {
    const outcome = outcomeOf('CABLE_WITHSTAND', [115, '']);
    expect([resultShown(outcome), assumedOf(outcome), stepsOf(outcome), outcome.leftOut]).toEqual([undefined, '', [], []]);
  });
});

test('a call without a formula, or without arguments, leaves no gap in the line', () => {
  expect(run('SHOW_WORKING', 'CLAUSE', 'CABLE_WITHSTAND')).toBe('function_name CABLE_WITHSTAND; IEC 60364-4-43:2023, 434.5.2');
  expect(run('SHOW_WORKING', 'CORE_VERSION')).toBe(run('CORE_VERSION'));
});

test('arguments as the line shows them, and what was taken where one was left out', () => {
  expect(run('SHOW_WORKING', 'CURVE_TIME', [['A', 's'], [100, 10], [200, 1]], 200, 0, 'slow')).toMatch(/; points 2 points, 100 to 200 A, current_A 200 A, tolerance_pct 0 %, edge slow; 1 s$/);
  expect(run('SHOW_WORKING', 'TRIP_TIME', 1920, 320, 8, 'off', '', 'off', '', 'mean')).toMatch(/, isd_A off, tsd_s none, ii_A off, ii_s none, edge mean, delayed_tol_pct 20 %, .*i2t_until_A off, tr_multiple 6; 8 s$/);
  expect(run('SHOW_WORKING', 'AGREE_LIST', [[1], [2]], [[1], [2]], 2)).toMatch(/; designer 2 cells, checker 2 cells, tolerance_pct 1 cell, floor 0, headers TRUE; 2 rows$/);
  expect(run('ASSUMED', 'AGREE_LIST', [[1], [2]], [[1], [2]], 2)).toBe('floor=0; headers=TRUE');
});

test('a step shows the figures that went into it, and a ratio has no unit', () => {
  expect(stepsOf(outcomeOf('CABLE_WITHSTAND', [115, 25]))).toEqual([{ step: 'k²S² = (k·S·n)²', value: '8.26563E+06 A²s', inputs: 'k 115 A√s/mm², S 25 mm², n 1' }]);
  expect(stepsOf(outcomeOf('UNIT_CONVERT', [5, '%', '1']))).toMatchObject([{ value: '0.05', inputs: 'value 5 %' }]);
  expect(stepsOf(outcomeOf('UNIT_CONVERT', [0.05, '1', '%']))).toMatchObject([{ value: '5 %', inputs: 'value 0.05' }]);
});

test('a call whose steps were not taken down has none to show', () => {
  expect(stepsOf(call(catalogue, catalogue.find('CABLE_WITHSTAND')!, [115, 25]))).toEqual([]);
});
