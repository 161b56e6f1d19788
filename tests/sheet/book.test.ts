import { CellError } from '../../src/functions/kernel/cell';
import { type Book, openBook } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';
import { type CustomFunctions, NotSupported } from '../../src/sheet/evaluate';
import { type HandMade, handMade } from '../support/hand-made-workbook';

const none: CustomFunctions = { find: () => undefined };
const c = (address: string, content: string, attributes = ''): string => `<c r="${address}"${attributes}>${content}</c>`;
const f = (address: string, formula: string, stored = '<v>0</v>'): string => c(address, `<f>${formula.replace(/&(?!amp;)/g, '&amp;').replace(/</g, '&lt;')}</f>${stored}`);
/** A workbook of one sheet from its cells, one row each in the order given. */
const book = (cells: string[], more: Partial<HandMade> = {}, custom = none, now?: Date): Book => {
  const rows = new Map<number, string[]>();
  for (const cell of cells) {
    const row = Number(/r="[A-Z]+(\d+)"/.exec(cell)![1]);
    rows.set(row, [...(rows.get(row) ?? []), cell]);
  }
  return openBook(handMade({ sheets: { S: [...rows].map(([row, list]) => `<row r="${row}">${list.join('')}</row>`).join('') }, ...more }), custom, now);
};
const recalculated = (...args: Parameters<typeof book>): Book => {
  const made = book(...args);
  made.recalculate();
  return made;
};

describe('recalculation', () => {
  test('in whatever order formulas need one another', () => {
    const made = recalculated([f('A1', 'A2+1'), f('A2', 'A3*2'), c('A3', '<v>5</v>'), f('A4', 'SUM(A1:A3)')]);
    expect(['A1', 'A2', 'A4'].map((address) => made.value('S', address))).toEqual([11, 10, 26]);
    expect(made.changes()).toEqual([{ sheet: 'S', address: 'A1', was: 0, now: 11 }, { sheet: 'S', address: 'A2', was: 0, now: 10 }, { sheet: 'S', address: 'A4', was: 0, now: 26 }]);
  });
  test.each([['downwards', (row: number) => row - 1], ['upwards', (row: number) => row + 1]])('a chain of 100,000 formulas %s', (_, next) => {
    const [last, first] = next(1) === 0 ? [100_000, 1] : [1, 100_000];
    const cells = Array.from({ length: 100_000 }, (_unused, index) => (index + 1 === first ? c(`A${first}`, '<v>1</v>') : f(`A${index + 1}`, `A${next(index + 1)}+1`)));
    expect(recalculated(cells).value('S', `A${last}`)).toBe(100_000);
  });
  test('a sum over many long chains', () => {
    const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ', ...[...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `A${letter}`)];
    const rows = Array.from({ length: 400 }, (_, row) => letters.map((letter, index) => (letters[index + 1] ? f(`${letter}${row + 2}`, `${letters[index + 1]}${row + 2}+1`) : c(`${letter}${row + 2}`, '<v>1</v>')))).flat();
    expect(recalculated([f('A1', 'SUM(A2:A401)'), ...rows]).value('S', 'A1')).toBe(400 * 52);
  });
  test('formulas that nest deep in themselves', () => {
    const deep = (address: string): string => `${'IF(TRUE,'.repeat(60)}${address}+1${')'.repeat(60)}`;
    const cells = Array.from({ length: 300 }, (_, index) => (index === 299 ? c('A300', '<v>0</v>') : f(`A${index + 1}`, deep(`A${index + 2}`))));
    expect(recalculated(cells).value('S', 'A1')).toBe(299);
  });
  test('shared and array formulas', () => {
    const made = recalculated([c('A1', '<v>1</v>'), c('B1', '<f t="shared" ref="B1:B2" si="0">A1*10</f>'), c('C1', '<f t="array" ref="C1:C3">A1:A2*2</f><v>0</v>'), c('D1', '<f t="array" ref="D1:E1">SUM(A1:A2)</f>'),
      c('A2', '<v>2</v>'), c('B2', '<f t="shared" si="0"/>'), c('C2', '<v>9</v>'), f('D2', 'C1+C2'), c('C3', '<v>9</v>')]);
    expect(['B1', 'B2', 'C1', 'C2', 'C3', 'D1', 'E1', 'D2'].map((address) => made.value('S', address))).toEqual([10, 20, 2, 4, new CellError('#N/A', 'the array has no value for this cell'), 3, 3, 6]);
    expect(made.changes().find(({ address }) => address === 'E1')).toEqual({ sheet: 'S', address: 'E1', was: null, now: 3 });
  });
  test('a formula of one cell takes of a range the cell in its row', () => {
    expect(recalculated([c('A1', '<v>1</v>'), f('B1', 'A1:A2*10'), c('A2', '<v>2</v>'), f('B2', 'A1:A2*10')]).value('S', 'B2')).toBe(20);
  });
  test('spilled cells are referred to by #; one that no longer fits says so', () => {
    const spill = [c('A1', '<v>2</v>'), c('B1', '<f t="array" ref="B1:B2">SEQUENCE(A1)</f><v>1</v>', ' cm="1"'), f('C1', 'SUM(_xlfn.ANCHORARRAY(B1))'), c('B2', '<v>2</v>')];
    expect(recalculated(spill).value('S', 'C1')).toBe(3);
    const grown = recalculated([c('A1', '<v>3</v>'), ...spill.slice(1)]);
    expect(grown.changes()).toEqual([]);
    expect(grown.notComputed().map(({ address, reason }) => `${address}: ${reason}`)).toEqual([
      'B1: the array has 3 × 1 cells now (rows × columns), the file holds 2 × 1; open and save it in a spreadsheet program',
      'C1: depends on S!B1: the array has 3 × 1 cells now (rows × columns), the file holds 2 × 1; open and save it in a spreadsheet program',
    ]);
  });
  test('names, tables and our functions, in any case', () => {
    const table = '<table id="1" name="t" displayName="cables" ref="A1:B3"><tableColumns count="2"><tableColumn id="1" name="csa mm2"/><tableColumn id="2" name="I2t"/></tableColumns></table>';
    const text = (address: string, value: string): string => c(address, `<is><t>${value}</t></is>`, ' t="inlineStr"');
    const made = recalculated([text('A1', 'csa mm2'), text('B1', 'I2t'), c('A2', '<v>25</v>'), f('B2', '_xldudf_jw_cable_withstand(k_pvc,cables[[#This Row],[csa mm2]])'), c('A3', '<v>50</v>'), f('B3', '_xldudf_JW_CABLE_WITHSTAND(k_PVC,cables[[#This Row],[csa mm2]])'), f('C1', 'SUM(cables[csa mm2])+ROWS(cables)+S!local+above')],
      { tables: [{ sheet: 'S', xml: table }], names: '<definedName name="k_pvc">115</definedName><definedName name="local" localSheetId="0">S!$A$2</definedName><definedName name="local">1000</definedName><definedName name="above">S!A2</definedName>' }, customFunctions);
    expect(made.value('S', 'B2')).toBe((115 * 25) ** 2);
    expect(made.value('S', 'B3')).toBe((115 * 50) ** 2);
    // A name without $ is meant as seen from A1: one row below C1, two columns to the right of A2's column.
    expect(made.value('S', 'C1')).toBe(75 + 2 + 25 + 0);
    expect(made.notComputed()).toEqual([]);
  });
  test('the clock is the one handed in, or none', () => {
    expect(recalculated([f('A1', 'YEAR(TODAY())')], {}, none, new Date(2031, 4, 5)).value('S', 'A1')).toBe(2031);
    expect(recalculated([f('A1', 'YEAR(TODAY())')]).notComputed()).toHaveLength(1);
  });
});

describe('circles', () => {
  const reasons = (made: Book): string[] => made.notComputed().map(({ address, reason }) => `${address}: ${reason}`);
  test('all cells of a circle and all that hang on it are told, no other', () => {
    const made = recalculated([f('A1', 'A2+1'), f('A2', 'A3+1'), f('A3', 'A1+1'), f('A4', 'IFERROR(A2,0)'), f('A5', '1+1')]);
    expect(reasons(made)).toEqual(['A1: depends on S!A3: circular reference: S!A1 → S!A2 → S!A3 → S!A1', 'A2: depends on S!A3: circular reference: S!A1 → S!A2 → S!A3 → S!A1', 'A3: circular reference: S!A1 → S!A2 → S!A3 → S!A1', 'A4: depends on S!A3: circular reference: S!A1 → S!A2 → S!A3 → S!A1']);
    expect(made.value('S', 'A4')).toMatchObject({ code: '#CYCLE!' });
    expect(made.changes()).toEqual([{ sheet: 'S', address: 'A5', was: 0, now: 2 }]);
  });
  test('a cell that reads itself, alone or in a range', () => {
    expect(reasons(recalculated([f('A1', 'A1'), f('A2', 'SUM(A:A)')]))[0]).toBe('A1: circular reference: S!A1 → S!A1');
    expect(recalculated([f('A2', 'SUM(A:A)')]).notComputed()).toHaveLength(1);
  });
  test('a long circle names some of its cells', () => {
    const cells = Array.from({ length: 5000 }, (_, index) => f(`A${index + 1}`, `A${((index + 1) % 5000) + 1}`));
    const made = recalculated(cells);
    expect(made.notComputed()).toHaveLength(5000);
    expect(made.notComputed()[4999]!.reason.length).toBeLessThan(200);
  });
  test('what only looks like a circle is none', () => {
    const made = recalculated([f('A1', 'IF(B1,A2,7)'), c('B1', '<v>0</v>', ' t="b"'), f('A2', 'A1+1'), f('A3', 'ROWS(A1:A9)+COLUMN(A3)')]);
    expect(['A1', 'A2', 'A3'].map((address) => made.value('S', address))).toEqual([7, 8, 10]);
  });
});

describe('what is not computed here', () => {
  const reason = (formula: string, more: Partial<HandMade> = {}): string | undefined => recalculated([f('A1', formula)], more).notComputed()[0]?.reason;
  test.each<[string, Partial<HandMade>, RegExp]>([
    ['RAND()', {}, /random numbers/],
    ['MyMacro(1)', {}, /MyMacro is not supported here/],
    ['[1]Sheet1!A1', {}, /another workbook/],
    ['1+', {}, /cannot be read/],
    ['TABLE(B1,)', {}, /what-if table/],
    ['YEAR(45000)', { workbookPr: '<workbookPr date1904="1"/>' }, /days from 1904/],
    ['1+1', { parts: { 'xl/workbook.xml': '<workbook xmlns:r="r"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets><calcPr fullPrecision="0"/></workbook>' } }, /precision that its cells show/],
  ])('%s', (formula, more, words) => expect(reason(formula, more)).toMatch(words));
  test('a stored error of another program', () => {
    const made = recalculated([c('A1', '<v>#FIELD!</v>', ' t="e"'), f('A2', 'ISERROR(A1)')]);
    expect(made.notComputed().map(({ address, reason: why }) => `${address}: ${why}`)).toEqual(['A2: depends on S!A1: the file stores the error "#FIELD!"']);
  });
  test('names that are defined by themselves', () => {
    expect(recalculated([f('A1', 'a+1')], { names: '<definedName name="a">b*2</definedName><definedName name="b">a*2</definedName>' }).value('S', 'A1')).toMatchObject({ code: '#NAME?' });
  });
});

describe('a formula by the stored values of what it reads', () => {
  const check = (made: Book, address: string) => made.storedAgainstStored(made.formulaCells.find((cell) => cell.address === address)!);
  const made = book([c('A1', '<v>2</v>'), f('B1', 'A1*2', '<v>5</v>'), f('C1', 'B1*2', '<v>10</v>'), f('D1', '1/3', '<v>0.333333333333333</v>'), f('E1', '1/3', '<v>0.3333333333</v>'), f('F1', 'G1+1', '<v>2</v>'), f('G1', '1', ''), f('H1', 'H1', '<v>0</v>'), c('I1', '<f t="array" ref="I1:I2">A1:A2+1</f><v>3</v>'), c('I2', '<v>4</v>')]);
  test('differs only where the formula itself does not fit its stored value', () => {
    expect(check(made, 'B1')).toEqual({ computed: 4, reason: undefined, differs: [{ sheet: 'S', address: 'B1', was: 5, now: 4 }] });
    expect(check(made, 'C1').differs).toEqual([]);
  });
  test('a number written with 15 digits is the same number, with 10 it is another', () => {
    expect(check(made, 'D1').differs).toEqual([]);
    expect(check(made, 'E1').differs).toHaveLength(1);
  });
  test('nothing is said of what reads a formula without a stored value, or itself', () => {
    expect(check(made, 'F1')).toMatchObject({ reason: 'the file holds no value of S!G1', differs: [] });
    expect(check(made, 'H1').reason).toMatch(/H1 reads itself/);
    expect(check(made, 'G1').differs).toEqual([{ sheet: 'S', address: 'G1', was: null, now: 1 }]);
  });
  test('each cell of an array', () => expect(check(made, 'I1').differs).toEqual([{ sheet: 'S', address: 'I2', was: 4, now: 1 }]));
  test('is not disturbed by a recalculation', () => {
    made.recalculate();
    expect(check(made, 'C1').differs).toEqual([]);
    expect(made.value('S', 'C1')).toBe(8);
  });
});

test('any formula as if it stood in the book', () => {
  const made = recalculated([c('A1', '<v>2</v>'), f('B1', 'A1*2')]);
  expect(made.evaluate('SUM(A1:B1)', 'S')).toBe(6);
  expect(made.evaluate('Gone!A1', 'S')).toMatchObject({ code: '#REF!' });
  expect(made.evaluate('A1:B1', 'S')).toEqual([[2, 4]]);
  expect(made.evaluate('RAND()', 'S')).toBeInstanceOf(NotSupported);
});
