import { type Cell, CellError } from '../../../src/functions/kernel/cell';
import { NotSupported, compile, emptyWorkbook, evaluate } from '../../../src/sheet/evaluate';
import { SmallWorkbook, errorOf, run } from './sheet';

const alone = (formula: string) => evaluate(compile(formula), { workbook: emptyWorkbook, functions: { find: () => undefined }, sheet: '', row: 0, column: 0 });

describe('formulas that cannot be read', () => {
  it.each([
    ['', 'it is empty'],
    ['1+', 'something is missing or stands in the wrong place'],
    ['SUM(1', 'something is missing or stands in the wrong place'],
    ['SUM(1))', 'expected the end but got )'],
    ['"abc', 'a quote is not closed'],
    ['SUM(1 2)', 'a comma or an operator is missing before 2'],
    ['A1 5', 'a comma or an operator is missing before 5'],
    ['{1,2;3}', 'the rows of an array in braces differ in length'],
    ['{1 2}', 'a comma or an operator is missing before 2'],
    ['1E400', '1E400 is too large for a number'],
    ['ROUND(1)', 'ROUND takes 2 arguments, got 1'],
    ['PI(1)', 'PI takes 0 arguments, got 1'],
    ['SUM()', 'SUM takes at least 1 argument, got 0'],
    ['LEFT()', 'LEFT takes 1 to 2 arguments, got 0'],
    ['[1]Sheet1!A1', '[1]Sheet1!A1 refers to another workbook'],
    ["'Jan:Mar'!A1", "'Jan:Mar'!A1 is not a reference that is taken here"],
    ['A1.:.B3', 'A1.:.B3 is not a reference that is taken here'],
    ['LAMBDA(1,2)', 'LAMBDA argument is not a name'],
  ])('%s', (formula, words) => {
    const compiled = compile(formula);
    expect(compiled.refusal).toMatchObject({ code: '#UNSUPPORTED!', message: `the formula cannot be read: ${words}` });
    expect(run(formula)).toEqual(compiled.refusal);
  });
});

describe('what cannot be worked out is not papered over', () => {
  const unknown = new SmallWorkbook({ A1: new NotSupported('#UNSUPPORTED!', 'not worked out'), A2: 1, B1: new CellError('#N/A', 'an error') });

  it.each(['NOSUCH(1)', 'IFERROR(NOSUCH(1),0)', 'ISERROR(NOSUCH(1))', 'COUNT(1,NOSUCH(1))', 'AGGREGATE(9,6,NOSUCH(1))', 'IFERROR({1,2}*NOSUCH(1),0)'])('%s', (formula) => {
    expect(errorOf(run(formula))).toEqual({ code: '#NAME?', message: 'function NOSUCH is not supported here' });
  });

  it.each(['RAND()', 'IFERROR(RANDBETWEEN(1,6),0)', 'IFERROR(TODAY(),0)', 'IFERROR(INDIRECT("R1C1",FALSE),0)', 'CELL("filename",A1)', 'DATEDIF(1,40,"md")'])('%s is refused in words', (formula) => {
    const { code, message } = errorOf(run(formula));
    expect(code).toBe('#UNSUPPORTED!');
    expect(message).toMatch(/not supported here/);
  });

  it.each([
    '"12,5"*2', 'VALUE("1 000")', 'VALUE("1.234,5")', '"15.01.2024"+0', 'DATEVALUE("1/2/2024")', 'DATEVALUE("15/01/2024")', '"1/2"+0', 'IFERROR("1/2"+0,0)',
    'TEXT(1.5,"0,00")', 'TEXT(1234.5,"#.##0,00")', 'TEXT(45000,"TT.MM.JJJJ")', 'TEXT(45000,"jj/mm/aaaa")',
  ])('%s hangs on the language of the program, which a file does not tell', (formula) => {
    expect(errorOf(run(formula))).toEqual({ code: '#UNSUPPORTED!', message: expect.stringMatching(/hangs? on the language of the program: not supported here$/) });
  });

  it.each<[string, Cell]>([
    ['"1,234.5"+0', 1234.5], ['"2024-01-15"+0', 45306], ['DATEVALUE("5/5/2024")', 45417], ['DATEVALUE("1/15/2024")', 45306], ['COUNTIF({"1.2.3","1/2"},"1.2.3")', 1],
    ['TEXT(1234.5,"#,##0.00")', '1,234.50'], ['TEXT(1234567,"0,")', '1235'], ['TEXT(1234.5,"0,0.0")', '1,234.5'], ['TEXT(5,"0 ""tt"" ""0,00""")', '5 tt 0,00'],
  ])('%s does not', (formula, result) => expect(run(formula)).toBe(result));

  it('nor is a cell that could not be, by whatever reads it', () => {
    for (const formula of ['A1+1', 'IFERROR(A1,0)', 'SUMIF(A1:A2,1)', 'COUNTA(A1:A2)', 'XLOOKUP(1,A1:A2,A1:A2)']) {
      expect(errorOf(run(formula, unknown))).toEqual({ code: '#UNSUPPORTED!', message: 'not worked out' });
    }
    expect(run('IFERROR(B1,0)', unknown)).toBe(0);
    expect(run('IF(FALSE,A1,5)', unknown)).toBe(5);
  });
});

describe('a formula on its own', () => {
  it('works out what needs no sheet', () => {
    expect(alone('SUM({1,2;3,4})*2')).toBe(20);
    expect(alone('ROW()')).toBe(1);
  });

  it.each([
    ['A1+1', '#REF!', 'no workbook: A1 cannot be read'],
    ['SUM(Sheet2!B7:C9)', '#REF!', 'no workbook: B7:C9'],
    ['Vn*2', '#NAME?', 'no workbook: the name Vn is not defined'],
    ['cables[csa]', '#REF!', 'no workbook: cables[csa] cannot be read'],
    ['B7#', '#REF!', 'no workbook: B7# cannot be read'],
    ['INDIRECT("A1")', '#REF!', 'no workbook: A1'],
  ])('%s says that there is none', (formula, code, message) => {
    expect(errorOf(alone(formula))).toEqual({ code, message });
  });
});

describe('input beyond all bounds ends in words', () => {
  const nested = (open: string, close: string, times: number, inner = '1') => open.repeat(times) + inner + close.repeat(times);

  it.each<[string, string, string, RegExp]>([
    ['10,000 brackets', nested('(', ')', 10_000), '#UNSUPPORTED!', /20001 characters, Excel takes 8192/],
    ['4,000 brackets', nested('(', ')', 4_000), '#UNSUPPORTED!', /nests more than 256 deep/],
    ['4,000 open brackets', '('.repeat(4_000), '#UNSUPPORTED!', /nests more than 256 deep/],
    ['8,000 signs', `${'-'.repeat(8_000)}1`, '#UNSUPPORTED!', /nests more than 256 deep/],
    ['8,000 per cent signs', `1${'%'.repeat(8_000)}`, '#UNSUPPORTED!', /nests more than 256 deep/],
    ['a text too long for a formula', `"${'x'.repeat(9_000)}"`, '#UNSUPPORTED!', /9002 characters/],
    ['a repeated text', 'REPT("abc",1E9)', '#VALUE!', /a cell holds 32767/],
    ['texts joined', 'REPT("a",30000)&REPT("b",30000)', '#VALUE!', /60000 characters/],
    ['a substitution', 'SUBSTITUTE(REPT("a",30000),"a","bb")', '#VALUE!', /60000 characters/],
    ['a long sequence', 'SEQUENCE(1E9,1E9)', '#NUM!', /over the limit of 1048576 cells/],
    ['a broad product', 'SEQUENCE(5000)*SEQUENCE(1,5000)', '#NUM!', /5000 × 5000 cells is over the limit/],
    ['a made array', 'MAKEARRAY(1E5,1E5,LAMBDA(r,c,1))', '#NUM!', /over the limit/],
    ['a LAMBDA without end', 'LET(f,LAMBDA(g,n,g(g,n+1)),f(f,1))', '#UNSUPPORTED!', /calls itself more than 200 deep/],
    ['a factorial', 'FACT(1E300)', '#NUM!', /0 to 170/],
    ['combinations', 'COMBIN(1E300,1E200)', '#NUM!', /too large/],
  ])('%s', (_, formula, code, words) => {
    const error = errorOf(run(formula));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(words);
  });

  it('what is only long works', () => {
    expect(run(Array(4000).fill('1').join('+'))).toBe(4000);
    expect(run(nested('(', ')', 200))).toBe(1);
    expect(run(nested('IF(TRUE,', ')', 64, '7'))).toBe(7);
    expect(run(`${'-'.repeat(200)}1`)).toBe(1);
    expect(run('SEARCH("*a*a*a*a*a*a*b",REPT("a",32000)&"b")')).toBe(1);
  });
});

it('lets pass what a workbook throws that is no cell error', () => {
  const notReady = new Error('work out the precedent first');
  const workbook = new SmallWorkbook({});
  workbook.get = () => {
    throw notReady;
  };
  expect(() => run('IFERROR(A1,0)', workbook)).toThrow(notReady);
});
