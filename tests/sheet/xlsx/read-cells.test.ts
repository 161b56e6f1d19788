import ExcelJS from 'exceljs';
import * as fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { CellError } from '../../../src/functions/kernel/cell';
import { readCells } from '../../../src/sheet/xlsx/read-cells';
import { scanSheet } from '../../../src/sheet/xlsx/scan';
import { isProtected, sheetCells } from '../../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../../src/sheet/xlsx/workbook';
import { handMade, styles } from '../../support/hand-made-workbook';

const cellsOf = (rows: string, strings: readonly string[] = [], date1904 = false) =>
  Object.fromEntries(readCells(`<worksheet><sheetData>${rows}</sheetData></worksheet>`, { part: 'sheet1.xml', strings, date1904 }).map((cell) => [cell.address, cell]));
const valueOf = (cell: string): unknown => cellsOf(`<row r="1">${cell}</row>`, ['shared', 'Ω'])['A1']!.value;

describe('values', () => {
  test.each([
    ['<c r="A1"><v>1.5</v></c>', 1.5],
    ['<c r="A1" t="n"><v> -2E-3 </v></c>', -0.002],
    ['<c r="A1"><v>0.1</v></c>', 0.1],
    ['<c r="A1"><v></v></c>', null],
    ['<c r="A1"><v/></c>', null],
    ['<c r="A1" s="1"/>', null],
    ['<c r="A1" t="s"><v>1</v></c>', 'Ω'],
    ['<c r="A1" t="str"><f>""</f><v></v></c>', ''],
    ['<c r="A1" t="str"><v> 0012 </v></c>', ' 0012 '],
    ['<c r="A1" t="str"><v>a_x000a_b_x005F_x0041_&amp;</v></c>', 'a\nb_x0041_&'],
    ['<c r="A1" t="str"><v>a\r\nb</v></c>', 'a\nb'],
    ['<c r="A1" t="b"><v>1</v></c>', true],
    ['<c r="A1" t="b"><v>false</v></c>', false],
    ['<c r="A1" t="d"><v>2025-03-31</v></c>', 45747],
    ['<c r="A1" t="d"><v>2025-03-31T12:00:00Z</v></c>', 45747.5],
    ['<c r="A1" t="d"><v>1900-02-28</v></c>', 59],
    ['<c r="A1" t="d"><v>1900-03-01</v></c>', 61],
    ['<c r="A1" t="inlineStr"><is><t xml:space="preserve"> in </t></is></c>', ' in '],
    ['<c r="A1" t="inlineStr"><is><r><rPr><b/></rPr><t>ri</t></r><r><t>ch</t></r><rPh sb="0" eb="1"><t>no</t></rPh></is></c>', 'rich'],
    ['<c r="A1" t="inlineStr"><is><t/></is></c>', ''],
  ])('%s', (xml, value) => expect(valueOf(xml)).toBe(value));
  test('errors by their code; those of other programs are carried as not to be computed with', () => {
    expect(valueOf('<c r="A1" t="e"><v>#DIV/0!</v></c>')).toEqual(new CellError('#DIV/0!'));
    expect(valueOf('<c r="A1" t="e"><v>#FIELD!</v></c>')).toEqual(new CellError('#UNSUPPORTED!', 'the file stores the error "#FIELD!"'));
  });
  test('days from 1904', () => {
    expect(cellsOf('<row r="1"><c r="A1" t="d"><v>1904-01-02</v></c></row>', [], true)['A1']!.value).toBe(1);
  });
  test('places that are not written follow the ones before; order does not matter', () => {
    expect(Object.keys(cellsOf('<row><c><v>1</v></c><c r="D1"><v>2</v></c><c><v>3</v></c></row><row r="7"><c r="C7"/><c r="A7"/></row><row><c/></row>'))).toEqual(['A1', 'D1', 'E1', 'C7', 'A7', 'A8']);
  });
});

describe('formulas', () => {
  test('shared ones are written out for each cell', () => {
    const cells = cellsOf('<row r="1"><c r="B1"><f t="shared" ref="B1:C2" si="0">A1*$A1+A$1+"A1"+Sheet2!A1</f><v>0</v></c><c r="C1"><f t="shared" si="0"/></c></row><row r="2"><c r="B2"><f t="shared" si="0"></f></c></row>');
    expect(cells['B1']!.formula).toBe('A1*$A1+A$1+"A1"+Sheet2!A1');
    expect(cells['C1']!.formula).toBe('B1*$A1+B$1+"A1"+Sheet2!B1');
    expect(cells['B2']!.formula).toBe('A2*$A2+A$1+"A1"+Sheet2!A2');
  });
  test('arrays and their place; spilling ones by their mark', () => {
    const cells = cellsOf('<row r="1"><c r="A1"><f t="array" ref="A1:A2">B1:B2*2</f></c><c r="C1" cm="1"><f t="array" ref="C1:D1">B1:C1</f></c><c r="E1"><f t="array" aca="1">SUM(B1*2)</f></c></row>');
    expect(cells['A1']).toMatchObject({ formula: 'B1:B2*2', arrayRef: 'A1:A2', dynamic: false });
    expect(cells['C1']).toMatchObject({ arrayRef: 'C1:D1', dynamic: true });
    expect(cells['E1']).toMatchObject({ arrayRef: 'E1' });
  });
  test('escapes and spaces', () => {
    expect(cellsOf('<row r="1"><c r="A1"><f xml:space="preserve"> A2 &amp;&#10;"&lt;"</f></c></row>')['A1']!.formula).toBe(' A2 &\n"<"');
    expect(cellsOf('<row r="1"><c r="A1"><f/></c></row>')['A1']!.formula).toBeNull();
  });
});

test('a workbook written by another program', async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('Data');
  sheet.getCell('A1').value = 'text';
  sheet.getCell('B2').value = { richText: [{ text: 'ri', font: { bold: true } }, { text: 'ch ' }] };
  sheet.getCell('C3').value = { formula: 'A1&"x"', result: 'textx' };
  sheet.getCell('D4').value = new Date(Date.UTC(2025, 2, 31));
  sheet.getCell('D4').numFmt = 'yyyy-mm-dd';
  sheet.getCell('E5').value = true;
  sheet.getCell('F6').value = { error: '#N/A' };
  sheet.getCell('G7').value = 1 / 3;
  await sheet.protect('', {});
  sheet.getCell('G7').protection = { locked: false };
  const workbook = openWorkbook(new Uint8Array(await book.xlsx.writeBuffer()));
  const data = workbook.facts.sheets[0]!;
  const cells = Object.fromEntries(sheetCells(workbook, data).map((cell) => [cell.address, cell]));
  expect(Object.entries(cells).map(([address, { value }]) => [address, value])).toEqual([['A1', 'text'], ['B2', 'rich '], ['C3', 'textx'], ['D4', 45747], ['E5', true], ['F6', new CellError('#N/A')], ['G7', 1 / 3]]);
  expect(cells['C3']!.formula).toBe('A1&"x"');
  expect(workbook.styles[cells['D4']!.style]!.numberFormat).toBe('yyyy-mm-dd');
  expect(workbook.styles[cells['G7']!.style]!.locked).toBe(false);
  expect(workbook.styles[cells['A1']!.style]!.locked).toBe(true);
  expect(isProtected(workbook, data)).toBe(true);
});

test('facts of a workbook', () => {
  const table = '<table id="1" name="t" displayName="cables" ref="A1:B3" totalsRowCount="1"><tableColumns count="2"><tableColumn id="1" name="In _x000a_A"/><tableColumn id="2" name="x"><calculatedColumnFormula>cables[[#This Row],[In]]*2</calculatedColumnFormula></tableColumn></tableColumns></table>';
  const workbook = openWorkbook(handMade({
    sheets: { S: '', 'A &amp; B': '' }, tables: [{ sheet: 'A &amp; B', xml: table }], workbookPr: '<workbookPr date1904="1"/><workbookProtection lockStructure="1"/>',
    names: '<definedName name="Vn">S!$A$1</definedName><definedName name="k" localSheetId="1" hidden="1">115*&quot;x&quot;</definedName>',
  }));
  expect(workbook.facts).toMatchObject({
    sheets: [{ name: 'S', state: 'visible', kind: 'worksheet' }, { name: 'A & B' }], date1904: true, structureProtected: true, macros: false, signed: false, externalLinks: 0, strict: false, fullPrecision: true,
    names: [{ name: 'Vn', text: 'S!$A$1', sheet: undefined, hidden: false }, { name: 'k', text: '115*"x"', sheet: 'A & B', hidden: true }],
    tables: [{ name: 'cables', sheet: 'A & B', box: { top: 0, left: 0, bottom: 2, right: 1 }, headerRows: 1, totalsRows: 1, columns: [{ name: 'In \nA', formula: undefined }, { name: 'x', formula: 'cables[[#This Row],[In]]*2' }] }],
  });
  expect(workbook.styles[1]).toMatchObject({ numberFormatId: 164, numberFormat: '0.00" kA"', locked: true });
  expect(workbook.styles[2]!.locked).toBe(false);
  expect(styles).toContain('<protection locked="0"/>');
});

describe('the scanner against an XML parser', () => {
  const space = fc.constantFrom('', ' ', '\n ', '<!-- <c r="Z9"><v>9</v></c> -->', '<?pi <c> ?>');
  const attribute = fc.tuple(fc.constantFrom(' ', '\n', '  '), fc.constantFrom('s', 'x14:r', 'zz'), fc.constantFrom('="1"', " = '1'", '="&gt;"', "='>'")).map((parts) => parts.join(''));
  const text = fc.constantFrom('1', '2.5', '&#49;', '<![CDATA[3]]>', '<!-- 8 -->4', '');
  const cell = fc.tuple(fc.option(attribute, { nil: '' }), text, space, fc.boolean()).map(([extra, value, gap, empty]) => (empty ? `<p:c${extra}/>` : `<p:c${extra}>${gap}<p:f >A1</p:f>${gap}<p:v>${value}</p:v></p:c>`));
  const sheet = fc.array(fc.tuple(space, fc.array(cell, { maxLength: 4 })), { maxLength: 5 }).map((rows) => `<p:worksheet xmlns:p="m" xmlns:x14="n"><p:cols><p:c/></p:cols><p:sheetData>${rows.map(([gap, cells]) => `${gap}<p:row>${cells.join(gap)}</p:row>`).join('')}</p:sheetData></p:worksheet>`);
  test('both see the same cells with the same texts', () => {
    fc.assert(fc.property(sheet, (xml) => {
      const seen: string[] = [];
      let row = 0, column = 0, value: string | undefined, inData = false;
      const parser = new SaxesParser({ xmlns: true });
      parser.on('opentag', ({ local }) => { if (local === 'sheetData') inData = true; if (local === 'row') { row++; column = 0; } if (local === 'c' && inData) column++; if (local === 'v') value = ''; });
      parser.on('text', (piece) => { if (value !== undefined) value += piece; });
      parser.on('cdata', (piece) => { if (value !== undefined) value += piece; });
      parser.on('closetag', ({ local }) => { if (local === 'c' && inData) { seen.push(`${row},${column},${value ? Number(value) : 'null'}`); value = undefined; } });
      parser.on('error', (error) => { throw error; });
      parser.write(xml).close();
      expect(readCells(xml, { part: 'p', strings: [], date1904: false }).map((each) => `${each.row + 1},${each.column + 1},${String(each.value)}`)).toEqual(seen);
    }));
  });
  test('offsets are those of the cell', () => {
    fc.assert(fc.property(sheet, (xml) => {
      scanSheet(xml, 'p', { cell: ({ start, end }) => expect(xml.slice(start, end)).toMatch(/^<p:c(?=[\s/>])[^]*(\/>|<\/p:c>)$/) });
    }));
  });
});
