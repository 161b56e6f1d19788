import { unzipSync, strFromU8 } from 'fflate';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { customFunctions } from '../../src/sheet/custom-functions';
import { recompute } from '../../src/sheet/recompute';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { sheetCells } from '../../src/sheet/xlsx/sheet';
import { validateWorkbook } from '../support/validate-xlsx';
import { cellsOf, formula, number, opened, row, text } from './support/opened';

const small = () => opened({
  names: '<definedName name="Vn">S!$A$1</definedName>',
  sheets: {
    S: row(1, number('A1', 415, ' s="1"'), formula('B1', 'A1*2', 830), formula('C1', 'Vn+1', 416), text('D1', 'was'), formula('E1', '_xldudf_JW_CABLE_K("Cu","XLPE")', 143))
      + row(2, number('A2', 7), formula('B2', 'CUBEVALUE(A1)', 5), formula('C2', 'B2+1', 6)),
  },
});

const part = (bytes: Uint8Array): string => strFromU8(unzipSync(bytes)['xl/worksheets/sheet1.xml']!);

it('nothing edited: the very same bytes', () => {
  const book = small();
  const { bytes, edited } = book.save();
  expect(bytes).toBe(book.bytes);
  expect(edited).toBe(0);
});

it('an edit undone is no edit', () => {
  const book = small();
  book.type('A2', '8');
  book.model.dispatch('REQUEST_UNDO');
  expect(book.save().bytes).toBe(book.bytes);
});

it('an input and all that hangs on it, nothing else', () => {
  const book = small();
  book.type('A1', '400');
  const { bytes, edited, recalculated, kept } = book.save();
  expect({ edited, recalculated, kept }).toEqual({ edited: 1, recalculated: 2, kept: 2 });
  const cells = cellsOf(bytes);
  expect([cells['A1'], cells['B1'], cells['C1']].map((cell) => cell!.value)).toEqual([400, 800, 401]);
  expect(cells['A1']!.style).toBe(1);
  // What is not worked out here keeps the value that is stored.
  expect([cells['B2']!.value, cells['C2']!.value]).toEqual([5, 6]);
  expect(part(bytes).replace(/<v>(400|800|401)<\/v>/g, '')).toBe(part(book.bytes).replace(/<v>(415|830|416)<\/v>/g, ''));
  expect(validateWorkbook(bytes)).toEqual([]);
});

it('numbers, texts, truth values, blanks and formulas come back as they were typed', () => {
  const book = small();
  book.type('A2', '0.1');
  book.type('D1', "'0012");
  book.type('F1', 'TRUE');
  book.type('B1', '12');
  book.type('E1', '');
  book.type('G9', '=jw.cable_k("Cu","XLPE")');
  book.type('H9', '=XLOOKUP(415,A1:A2,A1:A2)');
  book.type('I9', 'plain <text> & more');
  book.type('J9', '=Vn/0');
  const cells = cellsOf(book.save().bytes);
  expect(cells['A2']!.value).toBe(0.1);
  expect(cells['D1']!.value).toBe('0012');
  expect(cells['F1']!.value).toBe(true);
  expect(cells['B1']).toMatchObject({ value: 12, formula: null });
  expect(cells['E1']).toMatchObject({ value: null, formula: null });
  expect(cells['G9']).toMatchObject({ value: 143, formula: '_xldudf_JW_CABLE_K("Cu","XLPE")' });
  expect(cells['H9']).toMatchObject({ value: 415, formula: '_xlfn.XLOOKUP(415,A1:A2,A1:A2)' });
  expect(cells['I9']!.value).toBe('plain <text> & more');
  expect(cells['J9']!.value).toMatchObject({ code: '#DIV/0!' });
  expect(validateWorkbook(book.save().bytes)).toEqual([]);
});

it('a typed date or share is saved as its number, and it is said that the format is not', () => {
  const book = small();
  book.type('F5', '2026-03-01');
  book.type('G5', '5%');
  book.type('A1', '12');
  const { bytes, unformatted } = book.save();
  expect([cellsOf(bytes)['F5']!.value, cellsOf(bytes)['G5']!.value]).toEqual([46082, 0.05]);
  expect(unformatted).toEqual(['S!F5', 'S!G5']);
});

it('a formula in a table keeps the form of files', () => {
  const table = '<table id="1" name="T" displayName="T" ref="A1:B3"><tableColumns count="2"><tableColumn id="1" name="In"/><tableColumn id="2" name="twice"/></tableColumns></table>';
  const book = opened({
    tables: [{ sheet: 'S', xml: table }],
    sheets: { S: row(1, text('A1', 'In'), text('B1', 'twice')) + row(2, number('A2', 16), formula('B2', 'T[[#This Row],[In]]*2', 32)) + row(3, number('A3', 25), formula('B3', 'T[[#This Row],[In]]*2', 50)) },
  });
  book.type('B3', '=[@In]*3');
  const cells = cellsOf(book.save().bytes);
  expect(cells['B3']).toMatchObject({ formula: 'T[[#This Row],[In]]*3', value: 75, arrayRef: null });
  expect(cells['B2']).toMatchObject({ formula: 'T[[#This Row],[In]]*2', value: 32 });
});

it('what spills is stored as an array of its size, and grows and shrinks', () => {
  const book = opened({ sheets: { S: row(1, number('A1', 2), number('B1', 1)) } });
  book.type('C1', '=SEQUENCE(A1)');
  book.type('D1', '=SUM(A1:B1*2)');
  const first = book.save().bytes;
  expect(cellsOf(first)['C1']).toMatchObject({ formula: '_xlfn.SEQUENCE(A1)', arrayRef: 'C1:C2', dynamic: true, value: 1 });
  expect(cellsOf(first)['C2']).toMatchObject({ value: 2, formula: null });
  expect(cellsOf(first)['D1']).toMatchObject({ formula: 'SUM(A1:B1*2)', arrayRef: 'D1', dynamic: true, value: 6 });
  expect(validateWorkbook(first)).toEqual([]);

  const again = opened(first);
  expect(again.save().bytes).toBe(first);
  again.type('A1', '3');
  const grown = again.save().bytes;
  expect(cellsOf(grown)['C1']).toMatchObject({ arrayRef: 'C1:C3', dynamic: true });
  expect([1, 2, 3].map((line) => cellsOf(grown)[`C${line}`]!.value)).toEqual([1, 2, 3]);
  expect(validateWorkbook(grown)).toEqual([]);

  const shrunk = opened(grown);
  shrunk.type('A1', '1');
  const small = cellsOf(shrunk.save().bytes);
  expect(small['C1']).toMatchObject({ value: 1, arrayRef: 'C1' });
  expect([small['C2']?.value ?? null, small['C3']?.value ?? null]).toEqual([null, null]);
});

it.each([
  ['=NOSUCH(1)', /NOSUCH/], ['=1+', /cannot be read/], ['=(1', /cannot be read/], ['=JW.NOSUCH(1)', /JW\.NOSUCH/], ['=unknown+1', /unknown/], ['=A5', /itself/], ['=[@x]', /table/],
])('%s is not written into a file, and the refusal names cell and formula', (typed, words) => {
  const book = small();
  book.type('A5', typed);
  expect(book.value('A5')).toMatch(/^#/);
  expect(() => book.save()).toThrow(words);
  expect(() => book.save()).toThrow(/S!A5/);
});

describe('the sample', () => {
  const bytes = new Uint8Array(readFileSync(path.resolve(__dirname, '../../sample-workbooks/cable-schedule.xlsx')));
  const book = opened(bytes);

  it('shows the stored values in every formula', () => {
    const { formulas, differing, notWorked } = book.agreement();
    expect(formulas).toBeGreaterThan(100);
    expect({ differing, notWorked }).toEqual({ differing: [], notWorked: [] });
  });

  it('comes back as the very same bytes', () => expect(book.save().bytes).toBe(book.bytes));

  it('takes an edit of an input, and stays sound', () => {
    const workbook = openWorkbook(bytes);
    const sheet = workbook.facts.sheets.find(({ name }) => name === 'Cables')!;
    const length = sheetCells(workbook, sheet).find(({ address }) => address === 'D9')!;
    expect(typeof length.value).toBe('number');
    expect(book.type('D9', String((length.value as number) * 2), 'Cables')).toBe(true);
    const saved = book.save();
    expect(saved.recalculated).toBeGreaterThan(0);
    expect(validateWorkbook(saved.bytes)).toEqual([]);
    expect(opened(saved.bytes).agreement()).toMatchObject({ differing: [], notWorked: [] });
    // The command line, which works formulas out on its own, finds nothing to change either.
    expect(recompute(saved.bytes, customFunctions).changed).toEqual([]);
  });
});
