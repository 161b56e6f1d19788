import { CellError } from '../../../src/functions/kernel/cell';
import { applyOperator, callFunction, compile, functionNames } from '../../../src/sheet/evaluate';
import { errorOf } from './sheet';

describe("Excel's functions for another engine", () => {
  it('work on values at hand', () => {
    expect(callFunction('ROUND', [1.005, 2])).toBe(1.01);
    expect(callFunction('sum', [[[1, 2], [3, 'x']], '4'])).toBe(10);
    expect(callFunction('IF', [false, 1])).toBe(false);
    expect(callFunction('IF', [true, undefined, 5])).toBe(0);
    expect(callFunction('SORT', [[[3], [1]], undefined, -1])).toEqual([[3], [1]]);
    expect(callFunction('LEN', [null])).toBe(0);
    expect(callFunction('ROUND', [[[1.25], [2.35]], 1])).toEqual([[1.3], [2.4]]);
    expect(callFunction('IFERROR', [new CellError('#N/A', 'x'), 7])).toBe(7);
  });

  it('answer with errors, never by throwing', () => {
    expect(errorOf(callFunction('SQRT', [-1])!).code).toBe('#NUM!');
    expect(errorOf(callFunction('SUM', [new CellError('#REF!', 'gone')])!)).toEqual({ code: '#REF!', message: 'gone' });
    expect(errorOf(callFunction('ROUND', [1])!).message).toBe('ROUND takes 2 to 2 arguments, got 1');
    expect(callFunction('NOSUCH', [])).toBeUndefined();
    expect(callFunction('constructor', [])).toBeUndefined();
  });

  it('operators too', () => {
    expect(applyOperator('^', 0, 0)).toMatchObject({ code: '#NUM!' });
    expect(applyOperator('+', '', 1)).toMatchObject({ code: '#VALUE!' });
    expect(applyOperator('>', true, 'zzz')).toBe(true);
    expect(applyOperator('&', 1 / 3, '')).toBe('0.333333333333333');
    expect(applyOperator('*', [[1, 2]], [[10], [20]])).toEqual([[10, 20], [20, 40]]);
  });

  it('are listed by name, each once', () => {
    const names = functionNames();
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(expect.arrayContaining(['XLOOKUP', 'INDEX', 'SUMIFS', 'TEXT', 'IMPRODUCT', 'STDEV.S']));
  });
});

it('tells which formulas can change of themselves', () => {
  expect(['TODAY()', 'OFFSET(A1,1,0)', '1+INDIRECT("A1")', 'IF(TRUE,1,NOW())'].map((formula) => compile(formula).volatile)).toEqual([true, true, true, true]);
  expect(['A1+1', 'SUM(A:A)', 'INDEX(A1:A3,2)'].map((formula) => compile(formula).volatile)).toEqual([false, false, false]);
});
