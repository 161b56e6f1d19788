import ExcelJS from 'exceljs';
import * as fc from 'fast-check';
import { unzipSync } from 'fflate';
import { type Cell, CellError } from '../../../src/functions/kernel/cell';
import { addressOf } from '../../../src/sheet/xlsx/address';
import type { CellEdit } from '../../../src/sheet/xlsx/edit';
import { patchWorkbook } from '../../../src/sheet/xlsx/patch-workbook';
import { sheetCells } from '../../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../../src/sheet/xlsx/workbook';
import { handMade } from '../../support/hand-made-workbook';
import { validateWorkbook } from '../../support/validate-xlsx';

const cells = (bytes: Uint8Array): Map<string, { value: Cell; formula: string | null; style: number }> => {
  const workbook = openWorkbook(bytes);
  return new Map(sheetCells(workbook, workbook.facts.sheets[0]!).map(({ address, value, formula, style }) => [address, { value, formula, style }]));
};

const number = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer(), fc.constantFrom(0.1 + 0.2, 1e-300, 5e-324, 1.7976931348623157e308, 1e21, 123456789012345680));
const text = fc.oneof(fc.string({ maxLength: 20 }), fc.string({ unit: 'binary', maxLength: 20 }), fc.constantFrom('', ' ', 'a\nb\r\n\tc', '_x0041_', '<&>"\'', '=1+1', '0012', '\ud800', '\u0000\uffff', ']]>', 'TRUE'));
const value: fc.Arbitrary<Cell> = fc.oneof(number, text, fc.boolean(), fc.constantFrom(new CellError('#N/A'), new CellError('#SPILL!')));
const formula = fc.constantFrom('A1+1', '"<&>"&B2', 'SUM(A1:C3)', ' A1 ', '"a\nb"', '_xldudf_JW_CABLE_K("PVC")', "'My sheet'!A1<>2");
const edit: fc.Arbitrary<CellEdit> = fc.oneof(
  fc.record({ value, formula: fc.constant(null) }), fc.record({ value, formula }), fc.record({ value, formula: fc.constant(null), style: fc.integer({ min: 0, max: 2 }) }),
);
const place = fc.tuple(fc.nat(12), fc.nat(30)).map(([row, column]) => addressOf(row, column));
const edits = fc.dictionary(place, edit, { maxKeys: 25 }).map((all) => new Map(Object.entries(all)));

/** A value as a file gives it back: negative zero is zero. */
const stored = (cell: Cell): Cell => (cell === 0 ? 0 : cell instanceof CellError ? new CellError(cell.code) : cell);

const rowsOf = (count: number): string => Array.from({ length: count }, (_, row) => `<row r="${row * 2 + 1}" spans="2:9"><c r="B${row * 2 + 1}" s="1"><v>${row}.50</v></c><c r="D${row * 2 + 1}"><f>B${row * 2 + 1}*2</f><v>1</v></c></row>`).join('');

describe('patched, then read', () => {
  test('every edited cell holds what was put in, every other what it held, and the file is sound', () => {
    fc.assert(fc.property(fc.nat(5), edits, (count, wanted) => {
      const before = handMade({ sheets: { S: rowsOf(count), Other: '<row r="1"><c r="A1"><v>7</v></c></row>' } });
      const after = patchWorkbook(openWorkbook(before), new Map([['s', wanted]]));
      const expected = cells(before);
      for (const [address, { value: now, formula: text = null, style }] of wanted) {
        const old = expected.get(address);
        expected.set(address, { value: stored(now!), formula: text, style: style ?? old?.style ?? 0 });
      }
      const found = cells(after);
      expect(new Map([...found].sort())).toEqual(new Map([...expected].filter(([address, cell]) => found.has(address) || cell.value !== null || cell.formula !== null).sort()));
      const [old, now] = [unzipSync(before), unzipSync(after)];
      for (const part of Object.keys(old)) if (part !== 'xl/worksheets/sheet1.xml') expect(now[part]).toEqual(old[part]);
      expect(validateWorkbook(after).filter((fault) => !fault.includes('without a stored value'))).toEqual([]);
    }), { numRuns: 200 });
  });
  test('the same edits again change nothing', () => {
    fc.assert(fc.property(edits, (wanted) => {
      const once = patchWorkbook(openWorkbook(handMade({ sheets: { S: rowsOf(3) } })), new Map([['S', wanted]]));
      expect(patchWorkbook(openWorkbook(once), new Map([['S', wanted]]))).toBe(once);
    }), { numRuns: 100 });
  });
});

test('a workbook of another program keeps everything beside the edited cells, and that program reads it', async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('Data', { views: [{ state: 'frozen', ySplit: 1 }] });
  sheet.addTable({ name: 'cables', ref: 'A1', headerRow: true, columns: [{ name: 'ref' }, { name: 'In' }], rows: [['C-1', 63], ['C-2', 100]] });
  sheet.getCell('D1').value = 'merged';
  sheet.mergeCells('D1:E1');
  sheet.getCell('F2').value = { formula: 'SUM(B2:B3)', result: 163 };
  sheet.getCell('B2').note = 'a note';
  sheet.addConditionalFormatting({ ref: 'B2:B3', rules: [{ type: 'cellIs', operator: 'greaterThan', formulae: [80], priority: 1, style: { font: { bold: true } } }] });
  const before = new Uint8Array(await book.xlsx.writeBuffer());
  const after = patchWorkbook(openWorkbook(before), new Map([['Data', new Map<string, CellEdit>([['B2', { value: 80 }], ['F2', { value: 180 }], ['F3', { value: 'new', style: 0 }]])]]));
  const again = new ExcelJS.Workbook();
  await again.xlsx.load(after.buffer as ArrayBuffer);
  const read = again.getWorksheet('Data')!;
  expect([read.getCell('B2').value, read.getCell('F2').result, read.getCell('F2').formula, read.getCell('F3').value]).toEqual([80, 180, 'SUM(B2:B3)', 'new']);
  expect(read.getTable('cables')).toBeDefined();
  expect(() => patchWorkbook(openWorkbook(before), new Map([['Data', new Map([['B1', { value: 'current' }]])]]))).toThrow('Data!B1 is the heading "In" of the table cables, by which formulas find its column; it is renamed in a spreadsheet program only.');
});

test('a calculation chain goes when formulas do, and stays otherwise', () => {
  const chain = 'xl/calcChain.xml';
  const types = '<?xml version="1.0"?><t:Types xmlns:t="http://schemas.openxmlformats.org/package/2006/content-types"><t:Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><t:Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
    + '<t:Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><t:Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/><t:Override\n PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"></t:Override></t:Types>';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const links = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/worksheet" Target="/xl/worksheets/sheet1.xml"/><Relationship Id="rId2" Type="${office}/styles" Target="styles.xml"/><Relationship Id="rId3" Type="${office}/calcChain" Target="/xl/calcChain.xml"/></Relationships>`;
  const before = handMade({ sheets: { S: '<row r="1"><c r="A1"><f>1+1</f><v>2</v></c></row>' }, parts: { '[Content_Types].xml': types, 'xl/_rels/workbook.xml.rels': links, [chain]: '<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="A1" i="1"/></calcChain>' } });
  expect(validateWorkbook(before)).toEqual([]);
  const put = (change: CellEdit): Uint8Array => patchWorkbook(openWorkbook(before), new Map([['S', new Map([['A1', change]])]]));
  expect(unzipSync(put({ value: 3 }))[chain]).toBeDefined();
  const without = put({ value: 3, formula: null });
  expect(unzipSync(without)[chain]).toBeUndefined();
  expect(validateWorkbook(without)).toEqual([]);
  expect(validateWorkbook(put({ value: 3, formula: 'A2:A3', arrayRef: 'A1:A2', dynamic: true }))).toEqual([]);
});
