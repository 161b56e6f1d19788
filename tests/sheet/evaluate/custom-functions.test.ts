import { type Argument, type Cell, CellError, type Matrix } from '../../../src/functions/kernel/cell';
import { SmallWorkbook, errorOf, run } from './sheet';

const broken = new CellError('#DIV/0!', 'from the cell');
const workbook = new SmallWorkbook({ A1: 1, A2: 'two', A3: null, A4: true, A5: broken, B1: 10, B2: 20, B4: '' });

/** Calls JW.SPY with these arguments and tells what it was given. */
function given(args: string, oneCell = false): Argument[] {
  const calls: Argument[][] = [];
  const functions = { find: (name: string) => (name === 'JW.SPY' ? (list: Argument[]) => { calls.push(list); return 0; } : undefined) };
  run(`JW.SPY(${args})`, workbook, { functions, oneCell });
  expect(calls).toHaveLength(1);
  return calls[0]!;
}

const giving = (result: Cell | Matrix) => ({ functions: { find: () => () => result } });

describe('what a custom function is given', () => {
  it('cells as they are, blanks and omissions told apart', () => {
    expect(given('A1,A2,A3,A4,B4')).toEqual([1, 'two', null, true, '']);
    expect(given('')).toEqual([]);
    expect(given('1,,3')).toEqual([1, undefined, 3]);
    expect(given('1,')).toEqual([1, undefined]);
  });

  it('a range as rows of cells, whole, in a cell that spills and in one that does not', () => {
    const rows = [[1, 10], ['two', 20], [null, null]];
    expect(given('A1:B3')).toEqual([rows]);
    expect(given('A1:B3', true)).toEqual([rows]);
    expect(given('A1:A1')).toEqual([1]);
    expect(given('A1:A2*10', true)).toEqual([[[10], [expect.objectContaining({ code: '#VALUE!' })]]]);
    expect(given('{1,2;3,4}')).toEqual([[[1, 2], [3, 4]]]);
  });

  it('a whole column down to the last row in use', () => {
    expect(given('B:B')).toEqual([[[10], [20], [null], [''], [null]]]);
  });

  it('errors as values, with their words', () => {
    expect(given('A5')[0]).toBe(broken);
    expect(given('A4:A5')).toEqual([[[true], [broken]]]);
    expect(given('1/0,5')).toEqual([expect.objectContaining({ code: '#DIV/0!' }), 5]);
    expect(given('Nowhere!A1')[0]).toMatchObject({ code: '#REF!', message: 'there is no sheet "Nowhere"' });
  });

  it('refuses what no function of ours takes', () => {
    expect(given('LAMBDA(x,x)')[0]).toMatchObject({ code: '#VALUE!' });
    expect(given('(A1,B1)')[0]).toMatchObject({ code: '#VALUE!', message: 'several areas in one argument: name one range' });
  });
});

describe('what comes back', () => {
  it('keeps the words of an error to the end', () => {
    const error = new CellError('#N/A', 'missing: csa_mm2');
    expect(run('JW.X()', workbook, giving(error))).toBe(error);
    expect(run('ROUND(JW.X()*2+1,3)', workbook, giving(error))).toBe(error);
    expect(run('IFERROR(JW.X(),"none")', workbook, giving(error))).toBe('none');
    expect(run('JW.X(JW.X())', workbook, { functions: { find: () => ([inner]) => (inner === undefined ? error : (inner as Cell)) } })).toBe(error);
  });

  it('spills rows of cells, and can be worked on', () => {
    expect(run('JW.X()*2', workbook, giving([[1, 2], [3, 4]]))).toEqual([[2, 4], [6, 8]]);
    expect(run('SUM(JW.X())', workbook, giving([[1, 2], [3, 4]]))).toBe(10);
    expect(run('JW.X()', workbook, { ...giving([[1, 2], [3, 4]]), oneCell: true })).toBe(1);
  });

  it('lets no NaN, infinity or empty array out', () => {
    expect(errorOf(run('JW.X()', workbook, giving(Number.NaN))).code).toBe('#NUM!');
    expect(errorOf(run('IF(JW.X()>1,1,2)', workbook, giving(Infinity))).code).toBe('#NUM!');
    expect(run('JW.X()', workbook, giving([[1, Number.NaN]]))).toEqual([[1, expect.objectContaining({ code: '#NUM!' })]]);
    expect(errorOf(run('JW.X()', workbook, giving([])))).toEqual({ code: '#CALC!', message: 'JW.X gave an empty array' });
    expect(run('JW.X()', workbook, giving(null))).toBe(0);
  });

  it('turns what is thrown into words', () => {
    const throwing = (thrown: unknown) => ({ functions: { find: () => () => { throw thrown; } } });
    expect(errorOf(run('JW.X()', workbook, throwing(new TypeError('no such table'))))).toEqual({ code: '#VALUE!', message: 'JW.X failed: no such table' });
    expect(run('JW.X()', workbook, throwing(broken))).toBe(broken);
  });
});

it('asks for the name as it stands in the formula', () => {
  const asked: string[] = [];
  const functions = { find: (name: string) => { asked.push(name); return () => 1; } };
  run('JW.CABLE_K(1)+_xldudf_jw_cable_k(1)+_xlfn.Mine(1)', workbook, { functions });
  expect(asked).toEqual(['JW.CABLE_K', '_xldudf_jw_cable_k', 'Mine']);
});
