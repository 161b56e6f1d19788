import { unzipSync, strFromU8 } from 'fflate';
import { CellError } from '../../../src/functions/kernel/cell';
import type { CellEdit } from '../../../src/sheet/xlsx/edit';
import { patchWorkbook } from '../../../src/sheet/xlsx/patch-workbook';
import { sheetCells, sheetNamed } from '../../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../../src/sheet/xlsx/workbook';
import { handMade } from '../../support/hand-made-workbook';

const SHEET = 'xl/worksheets/sheet1.xml';
const textOf = (bytes: Uint8Array, part = SHEET): string => strFromU8(unzipSync(bytes)[part]!);
const patched = (bytes: Uint8Array, edits: Record<string, CellEdit>): Uint8Array => patchWorkbook(openWorkbook(bytes), new Map([['S', new Map(Object.entries(edits))]]));
/** Rows of the first sheet after edits to it. */
const rowsAfter = (rows: string, edits: Record<string, CellEdit>): string => /<sheetData>([^]*)<\/sheetData>/.exec(textOf(patched(handMade({ sheets: { S: rows } }), edits)))![1]!;
const cellsOf = (bytes: Uint8Array) => {
  const workbook = openWorkbook(bytes);
  return Object.fromEntries(sheetCells(workbook, sheetNamed(workbook, 'S')).map((cell) => [cell.address, cell]));
};

describe('storing values', () => {
  const rows = '<row r="1"><c r="A1" s="1"><v>1.50</v></c><c r="B1"><f>A1*2</f><v>3</v></c></row>';
  test('the very same bytes come back where nothing changes', () => {
    const bytes = handMade({ sheets: { S: rows } });
    expect(patched(bytes, {})).toBe(bytes);
    expect(patched(bytes, { A1: { value: 1.5 }, B1: { value: 3, formula: 'A1*2' }, D9: { value: null } })).toBe(bytes);
  });
  test.each<[CellEdit['value'], string]>([
    [4, '<c r="B1"><f>A1*2</f><v>4</v></c>'],
    [1e21, '<c r="B1"><f>A1*2</f><v>1E+21</v></c>'],
    ['a<b', '<c r="B1" t="str"><f>A1*2</f><v>a&lt;b</v></c>'],
    [' x', '<c r="B1" t="str"><f>A1*2</f><v xml:space="preserve"> x</v></c>'],
    [true, '<c r="B1" t="b"><f>A1*2</f><v>1</v></c>'],
    [new CellError('#N/A', 'missing'), '<c r="B1" t="e"><f>A1*2</f><v>#N/A</v></c>'],
    [null, '<c r="B1"><f>A1*2</f></c>'],
  ])('the value %p stands beside its formula, all else as it was', (value, xml) => {
    expect(rowsAfter(rows, { B1: { value } })).toBe(rows.replace(/<c r="B1">.*?<\/c>/, xml));
  });
  test('a text that was entered is written into the cell itself', () => {
    expect(rowsAfter(rows, { A1: { value: '_x0041_\u0001\r' } })).toContain('<c r="A1" s="1" t="inlineStr"><is><t xml:space="preserve">_x005F_x0041__x0001__x000D_</t></is></c>');
  });
  test('what only newer programs know of a value goes with the value', () => {
    expect(rowsAfter('<row r="1"><c r="A1" t="e" vm="1"><f>B1</f><v>#VALUE!</v></c></row>', { A1: { value: 2 } })).toBe('<row r="1"><c r="A1"><f>B1</f><v>2</v></c></row>');
  });
  test('extension lists of a cell stay', () => {
    expect(rowsAfter('<row r="1"><c r="A1"><v>1</v><extLst><ext uri="x"/></extLst></c></row>', { A1: { value: 2 } })).toBe('<row r="1"><c r="A1"><v>2</v><extLst><ext uri="x"/></extLst></c></row>');
  });
  test.each<[CellEdit, RegExp]>([
    [{ value: NaN }, /no number that a workbook can hold/],
    [{ value: new CellError('#CYCLE!') }, /#CYCLE! cannot be stored/],
    [{ value: 'x'.repeat(32_768) }, /up to 32767/],
    [{ formula: '=A1' }, /without its "="/],
    [{ formula: ' ' }, /formula is empty/],
    [{ value: 1, style: 3 }, /no cell format 3/],
    [{ formula: 'A1+'.repeat(3000) + '1' }, /up to 8192/],
  ])('edit %# is refused in words', (edit, words) => {
    expect(() => patched(handMade({ sheets: { S: rows } }), { A1: edit })).toThrow(words);
  });
});

describe('formulas and constants', () => {
  const rows = '<row r="1"><c r="A1" s="2"><v>1</v></c><c r="B1" s="1"><f>A1*2</f><v>2</v></c></row>';
  test('a constant in place of a formula keeps the format', () => {
    expect(rowsAfter(rows, { B1: { value: 'off', formula: null } })).toContain('<c r="B1" s="1" t="inlineStr"><is><t>off</t></is></c>');
  });
  test('a formula in place of a constant', () => {
    expect(rowsAfter(rows, { A1: { value: 5, formula: '2+3<6' } })).toContain('<c r="A1" s="2"><f>2+3&lt;6</f><v>5</v></c>');
  });
  test('new cells and rows come in order', () => {
    const sparse = '<row r="2" spans="2:4"><c r="B2"><v>1</v></c><c r="D2"><v>1</v></c></row><row r="4" ht="30" customHeight="1"/><row r="9"><c r="A9"><v>1</v></c></row>';
    const edits = Object.fromEntries(['F4', 'C2', 'A2', 'E2', 'A1', 'B3', 'A12', 'C9', 'B9'].map((address, value) => [address, { value }]));
    expect(rowsAfter(sparse, edits)).toBe('<row r="1"><c r="A1"><v>4</v></c></row><row r="2" spans="1:5"><c r="A2"><v>2</v></c><c r="B2"><v>1</v></c><c r="C2"><v>1</v></c><c r="D2"><v>1</v></c><c r="E2"><v>3</v></c></row>'
      + '<row r="3"><c r="B3"><v>5</v></c></row><row r="4" ht="30" customHeight="1"><c r="F4"><v>0</v></c></row><row r="9"><c r="A9"><v>1</v></c><c r="B9"><v>8</v></c><c r="C9"><v>7</v></c></row><row r="12"><c r="A12"><v>6</v></c></row>');
  });
  test('an empty list of rows is opened, and the sheet says how far it reaches', () => {
    const sheet = '<?xml version="1.0"?><x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:dimension ref="A1"/><x:sheetData/></x:worksheet>';
    expect(textOf(patched(handMade({ sheets: { S: sheet } }), { B3: { value: 1, style: 1 }, C2: { formula: 'B3', value: 1 } }))).toBe(sheet.replace('"A1"', '"A1:C3"')
      .replace('<x:sheetData/>', '<x:sheetData><x:row r="2"><x:c r="C2"><x:f>B3</x:f><x:v>1</x:v></x:c></x:row><x:row r="3"><x:c r="B3" s="1"><x:v>1</x:v></x:c></x:row></x:sheetData>'));
  });
  test('cells and rows whose place is implied', () => {
    expect(rowsAfter('<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>', { B1: { value: 5 }, C1: { value: 6 }, A2: { value: 7 } }))
      .toBe('<row><c><v>1</v></c><c><v>5</v></c><c r="C1"><v>6</v></c></row><row><c><v>7</v></c></row>');
  });
});

describe('shared and array formulas', () => {
  const shared = '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*$C$1</f><v>2</v></c></row>'
    + '<row r="2"><c r="B2"><f t="shared" si="0"/><v>0.10</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>6</v></c></row>';
  test('the first of a shared formula changes: the others keep theirs, written out, and their values untouched', () => {
    expect(rowsAfter(shared, { B1: { formula: null, value: 9 }, B3: { value: 7 } })).toBe('<row r="1"><c r="A1"><v>1</v></c><c r="B1"><v>9</v></c></row>'
      + '<row r="2"><c r="B2"><f>A2*$C$1</f><v>0.10</v></c></row><row r="3"><c r="B3"><f>A3*$C$1</f><v>7</v></c></row>');
  });
  test('one that follows changes alone', () => {
    expect(rowsAfter(shared, { B2: { formula: 'A2', value: 1 } })).toBe(shared.replace('<f t="shared" si="0"/><v>0.10</v>', '<f>A2</f><v>1</v>'));
  });
  const array = '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:A3">B1:B3*2</f><v>2</v></c></row><row r="2"><c r="A2"><v>4</v></c></row><row r="3"><c r="A3" s="1"><v>6</v></c></row>';
  test('values of an array are stored without touching its formula; texts as computed ones', () => {
    expect(rowsAfter(array, { A2: { value: 'n/a' } })).toBe(array.replace('<c r="A2"><v>4</v>', '<c r="A2" t="str"><v>n/a</v>'));
  });
  test('a part of an array is not changed', () => {
    expect(() => rowsAfter(array, { A2: { value: 1, formula: null } })).toThrow('A2 is part of the array A1:A3, whose formula stands in A1; only the whole array can be changed.');
  });
  test('an array that is replaced leaves nothing behind', () => {
    expect(rowsAfter(array, { A1: { value: 1, formula: null } })).toBe('<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"/></row><row r="3"><c r="A3" s="1"/></row>');
  });
  test('a spilling array marks its cell and brings the part that explains the mark', () => {
    const file = patched(handMade({ sheets: { S: '<row r="1"><c r="A1"><v>1</v></c></row>' } }), { B1: { formula: 'A1:A2*2', arrayRef: 'B1:B2', dynamic: true, value: 2 }, B2: { value: 'x' } });
    expect(textOf(file)).toContain('<row r="1"><c r="A1"><v>1</v></c><c r="B1" cm="1"><f t="array" ref="B1:B2">A1:A2*2</f><v>2</v></c></row><row r="2"><c r="B2" t="str"><v>x</v></c></row>');
    expect(textOf(file, 'xl/metadata.xml')).toContain('name="XLDAPR"');
    expect(cellsOf(file).B1).toMatchObject({ arrayRef: 'B1:B2', dynamic: true });
    expect(openWorkbook(file).package.related('xl/workbook.xml', 'sheetMetadata')).toBe('xl/metadata.xml');
  });
  test('an array does not cover a formula', () => {
    expect(() => rowsAfter(shared, { A1: { formula: 'C1:D1', arrayRef: 'A1:B1' } })).toThrow('The array A1:B1 would cover the formula in B1.');
  });
  test('what-if tables are left alone', () => {
    const table = '<row r="1"><c r="A1"><f t="dataTable" ref="A1:A2" dt2D="0" dtr="0" r1="C1"/><v>1</v></c></row>';
    expect(cellsOf(handMade({ sheets: { S: table } })).A1).toMatchObject({ formula: 'TABLE(,C1)', arrayRef: 'A1:A2' });
    expect(() => rowsAfter(table, { A1: { formula: 'B1' } })).toThrow(/what-if table A1:A2/);
  });
});
