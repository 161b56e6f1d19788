import { CellError } from '../../../src/functions/kernel/cell';
import { SmallWorkbook, errorOf, run } from './sheet';

const workbook = new SmallWorkbook({
  A1: 10, A2: 20, A3: 30, B1: 'a', B2: 'b', B3: 'c', C1: 'pump', C2: 'fan', C3: 'Pump', D1: 1, D2: 2, D3: 3, E1: 1, E2: new CellError('#N/A', 'why'),
}, { names: { Volts: 'Data!$A$3', twice: 'LAMBDA(x,x*2)', factorial: 'LAMBDA(n,IF(n<2,1,n*factorial(n-1)))' } });

const gap = expect.objectContaining({ code: '#N/A' });

describe('arrays place by place', () => {
  it.each<[string, unknown]>([
    ['A1:A3*2', [[20], [40], [60]]],
    ['A1:A3&B1:B3', [['10a'], ['20b'], ['30c']]],
    ['A1:A2*{1,10}', [[10, 100], [20, 200]]],
    ['{1;2;3}+{1;2}', [[2], [4], [gap]]],
    ['IF(A1:A3>15,"big","small")', [['small'], ['big'], ['big']]],
    ['IFERROR(1/(A1:A3-20),"none")', [[-0.1], ['none'], [0.1]]],
    ['ROUND(A1:A3/7,1)', [[1.4], [2.9], [4.3]]],
    ['VLOOKUP({"a","c"},CHOOSE({1,2},B1:B3,A1:A3),2,FALSE)', [[10, 30]]],
    ['INDEX(A1:A3,{1;3})', [[10], [30]]],
    ['XLOOKUP(B1:B3,B1:B3,A1:A3)', [[10], [20], [30]]],
    ['SUM(COUNTIFS(C1:C3,{"pump","fan"}))', 3],
    ['SUMPRODUCT(1/COUNTIF(C1:C3,C1:C3))', 2],
    ['SUM(LARGE(A1:A3,{1,2}))', 50],
    ['LOOKUP(2,1/(C1:C3="pump"),A1:A3)', 30],
    ['SWITCH(A1:A2,10,"ten","other")', [['ten'], ['other']]],
  ])('%s', (formula, expected) => {
    expect(run(formula, workbook)).toEqual(expected);
  });

  it('keeps an error in its place', () => {
    expect(run('E1:E2+1', workbook)).toEqual([[2], [expect.objectContaining({ code: '#N/A', message: 'why' })]]);
  });
});

describe('shaping', () => {
  it.each<[string, unknown]>([
    ['SORT(A1:B3,1,-1)', [[30, 'c'], [20, 'b'], [10, 'a']]],
    ['SORTBY(B1:B3,A1:A3,-1)', [['c'], ['b'], ['a']]],
    ['SORT({3,1,2},1,1,TRUE)', [[1, 2, 3]]],
    ['UNIQUE(C1:C3)', [['pump'], ['fan']]],
    ['UNIQUE(C1:C3,FALSE,TRUE)', 'fan'],
    ['FILTER(A1:B3,A1:A3>10)', [[20, 'b'], [30, 'c']]],
    ['FILTER({1,2,3},{TRUE,FALSE,TRUE})', [[1, 3]]],
    ['SEQUENCE(2,3,10,5)', [[10, 15, 20], [25, 30, 35]]],
    ['HSTACK(A1:A3,{1;2})', [[10, 1], [20, 2], [30, gap]]],
    ['VSTACK({1,2},3)', [[1, 2], [3, gap]]],
    ['TAKE(A1:B3,-1)', [[30, 'c']]],
    ['TAKE(A1:B3,,1)', [[10], [20], [30]]],
    ['DROP(A1:B3,1)', [[20, 'b'], [30, 'c']]],
    ['CHOOSECOLS(A1:B3,-1,1)', [['a', 10], ['b', 20], ['c', 30]]],
    ['CHOOSEROWS(A1:B3,3)', [[30, 'c']]],
    ['TOROW(A1:B2)', [[10, 'a', 20, 'b']]],
    ['TOCOL(A1:B2)', [[10], ['a'], [20], ['b']]],
    ['WRAPROWS({1,2,3},2,0)', [[1, 2], [3, 0]]],
    ['EXPAND({1},2,2,0)', [[1, 0], [0, 0]]],
    ['TRANSPOSE(A1:B2)', [[10, 20], ['a', 'b']]],
    ['TEXTSPLIT("a,b;c",",",";",,,"-")', [['a', 'b'], ['c', '-']]],
    ['MMULT({1,2;3,4},{1;1})', [[3], [7]]],
    ['MINVERSE({2,0;0,4})', [[0.5, 0], [0, 0.25]]],
    ['FREQUENCY({1,2,3,4,9},{2,4})', [[2], [2], [1]]],
  ])('%s', (formula, expected) => {
    expect(run(formula, workbook)).toEqual(expected);
  });

  it('says why there is no result', () => {
    expect(errorOf(run('FILTER(A1:A3,A1:A3>99)', workbook))).toEqual({ code: '#CALC!', message: 'nothing is left after the filter' });
    expect(errorOf(run('MINVERSE({1,2;2,4})'))).toEqual({ code: '#NUM!', message: 'the matrix has no inverse' });
    expect(errorOf(run('MMULT({1,2},{1,2})')).message).toBe('2 columns do not fit 1 rows');
    expect(errorOf(run('TAKE({1,2},0)')).code).toBe('#CALC!');
    expect(errorOf(run('SUMPRODUCT(A1:A3,D1:D2)', workbook)).message).toBe('the arrays differ in size: 3 × 1 and 2 × 1');
  });
});

describe('LET and LAMBDA', () => {
  it.each<[string, unknown]>([
    ['LET(x,2,y,x+1,x*y)', 6],
    ['LET(x,1,LET(x,2,x)+x)', 3],
    ['LET(f,LAMBDA(a,b,a+b),f(1,2))', 3],
    ['LET(k,10,f,LAMBDA(a,a*k),f(2))', 20],
    ['LAMBDA(x,LAMBDA(y,x-y))(5)(2)', 3],
    ['LET(x,1/0,IFERROR(x,"e"))', 'e'],
    ['_xlfn.LET(_xlpm.x,4,_xlpm.x/2)', 2],
    ['_xlfn.LAMBDA(_xlpm.x,_xlop.y,IF(_xlfn.ISOMITTED(_xlpm.y),1,2))(1)', 1],
    ['twice(4)', 8],
    ['factorial(10)', 3628800],
    ['Volts*2', 60],
    ['MAP(A1:A3,D1:D3,LAMBDA(a,d,a+d))', [[11], [22], [33]]],
    ['BYROW(A1:B3,LAMBDA(row,COUNTA(row)))', [[2], [2], [2]]],
    ['BYCOL(A1:B3,LAMBDA(column,COUNTA(column)))', [[3, 3]]],
    ['REDUCE(100,A1:A3,LAMBDA(a,b,a+b))', 160],
    ['SCAN(0,A1:A3,LAMBDA(a,b,a+b))', [[10], [30], [60]]],
    ['MAKEARRAY(2,2,LAMBDA(r,c,r*10+c))', [[11, 12], [21, 22]]],
  ])('%s', (formula, expected) => {
    expect(run(formula, workbook)).toEqual(expected);
  });

  it.each([
    ['LAMBDA(x,x)', '#CALC!', 'a LAMBDA that is not called'],
    ['LAMBDA(x,x)(1,2)', '#VALUE!', 'the LAMBDA takes 1 arguments, got 2'],
    ['MAP(A1:A3,5)', '#VALUE!', 'MAP takes a LAMBDA as its last argument'],
  ])('%s is %s', (formula, code, message) => {
    expect(errorOf(run(formula, workbook))).toEqual({ code, message });
  });
});

describe('references', () => {
  it.each<[string, unknown]>([
    ['SUM(A1:INDEX(A1:A10,2))', 30],
    ['A1:A3 A2:B2', 20],
    ['SUM((A1:A2,A2:A3))', 80],
    ['SMALL((A1,A3),2)', 30],
    ['INDEX((A1:A3,D1:D3),2,1,2)', 2],
    ['AREAS((A1,A2:A3))', 2],
    ['SUM(OFFSET(A3,0,0,-3))', 60],
    ['ROW(A2:A3)', [[2], [3]]],
    ['COLUMN(A1:C1)', [[1, 2, 3]]],
    ['ROWS(A:A)', 1048576],
    ['SUM(A:A)', 60],
    ['COUNTBLANK(A:A)', 1048573],
    ['COUNTIF(A:A,"")', 1048573],
    ['COUNTIFS(A:A,"",B:B,"")', 1048573],
    ['ADDRESS(2,28)', '$AB$2'],
    ['ADDRESS(2,3,4,,"My sheet")', "'My sheet'!C2"],
    ['INDIRECT("Data!A"&2)', 20],
    ['INDIRECT("Volts")', 30],
    ['CELL("address",B2)', '$B$2'],
    ['SUM(A1#)', 60],
  ])('%s', (formula, expected) => {
    expect(run(formula, workbook)).toEqual(expected);
  });

  it.each([
    ['A1 B1', '#NULL!', 'A1 and B1 have no cell in common'],
    ['OFFSET(A1,-1,0)', '#REF!', 'the reference leaves the sheet'],
    ['INDEX(A1:A3,4)', '#REF!', 'row 4, column 1 lies outside 3 × 1 cells'],
    ['INDIRECT("nonsense!!")', '#REF!', '"nonsense!!" is no reference'],
    ['Nowhere!A1', '#REF!', 'there is no sheet "Nowhere"'],
    ['SUM(Nowhere!A1:A2)', '#REF!', 'there is no sheet "Nowhere": A1:A2'],
    ['Amps', '#NAME?', 'the name Amps is not defined'],
  ])('%s is %s', (formula, code, message) => {
    expect(errorOf(run(formula, workbook))).toEqual({ code, message });
  });

  it('a reference to a deleted sheet is #REF!', () => {
    expect(errorOf(run('Sheet1!#REF!+1', workbook)).code).toBe('#REF!');
  });
});

describe('a formula that stands for one cell', () => {
  const here = (formula: string, at = 'H2') => run(formula, workbook, { oneCell: true, at });

  it.each<[string, unknown]>([
    ['A1:A3', 20],
    ['A:A*2', 40],
    ['-A1:A3', -20],
    ['ROUND(A1:A3/3,1)', 6.7],
    ['IF(A1:A3,"yes","no")', 'yes'],
    ['VLOOKUP(B1:B3,B1:D3,3,FALSE)', 2],
    ['SUM(A1:A3)', 60],
    ['SUM(A1:A3*D1:D3)', 40],
    ['SUMPRODUCT((A1:A3>10)*D1:D3)', 5],
    ['INDEX(A1:A3,0)', 20],
    ['{7,8}', 7],
    ['COUNTIF(C1:C3,C1:C3)', 1],
  ])('%s in row 2', (formula, expected) => {
    expect(here(formula)).toBe(expected);
  });

  it('has no value where no cell is in line', () => {
    expect(errorOf(here('A1:A3', 'H9') as CellError)).toEqual({ code: '#VALUE!', message: 'A1:A3 has no single cell in this row or column' });
  });
});

it('the same compiled formula serves any workbook and place', () => {
  expect(run('A1:A3', workbook, { oneCell: true, at: 'H1' })).toBe(10);
  expect(run('A1:A3', new SmallWorkbook({ A1: 'other' }), { oneCell: true, at: 'H1' })).toBe('other');
});
