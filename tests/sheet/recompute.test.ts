import ExcelJS from 'exceljs';
import { strFromU8, unzipSync } from 'fflate';
import { customFunctions } from '../../src/sheet/custom-functions';
import { recompute } from '../../src/sheet/recompute';
import { sheetCells } from '../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { type HandMade, handMade, handMadeParts, zipped } from '../support/hand-made-workbook';
import { hasOffice, resaved } from '../support/soffice';
import { validateWorkbook } from '../support/validate-xlsx';

const rows = '<row r="1"><c r="A1" s="1"><v>25</v></c><c r="B1"><f>_xldudf_JW_CABLE_WITHSTAND(115,A1)</f><v>8265625</v></c><c r="C1" t="str"><f>IF(B1&gt;8E6,"pass","FAIL")</f><v>pass</v></c></row>'
  + '<row r="2"><c r="A2"><v>35</v></c><c r="B2" s="2"><f>_xldudf_JW_CABLE_WITHSTAND(115,A2)</f><v>8265625</v></c><c r="C2" t="str"><f>IF(B2&gt;2E7,"pass","FAIL")</f><v>pass</v></c></row>';
const stale: HandMade = { sheets: { Cables: rows, Notes: '<row r="1"><c r="A1" t="inlineStr"><is><t>note</t></is></c></row>' } };
const values = (bytes: Uint8Array, sheet = 0): unknown[] => {
  const workbook = openWorkbook(bytes);
  return sheetCells(workbook, workbook.facts.sheets[sheet]!).map(({ value }) => value);
};

test('only stored values that differ change, and no byte beside them', () => {
  const before = handMade(stale);
  const { bytes, changed, formulas, notComputed, facts } = recompute(before, customFunctions);
  expect(changed).toEqual([{ sheet: 'Cables', address: 'B2', was: 8265625, now: (115 * 35) ** 2 }, { sheet: 'Cables', address: 'C2', was: 'pass', now: 'FAIL' }]);
  expect([formulas, notComputed, facts.sheets.length]).toEqual([4, [], 2]);
  const [old, now] = [unzipSync(before), unzipSync(bytes)];
  const sheet = 'xl/worksheets/sheet1.xml';
  expect(strFromU8(now[sheet]!)).toBe(strFromU8(old[sheet]!).replace(/(A2\)<\/f><v>)8265625/, '$116200625').replace(/("FAIL"\)<\/f><v>)pass(<\/v><\/c><\/row><\/sheetData>)/, '$1FAIL$2'));
  for (const part of Object.keys(old)) if (part !== sheet) expect(now[part]).toEqual(old[part]);
  expect(validateWorkbook(bytes)).toEqual([]);
});

test('the very same bytes where nothing differs', () => {
  const { bytes } = recompute(handMade(stale), customFunctions);
  const again = recompute(bytes, customFunctions);
  expect(again.bytes).toBe(bytes);
  expect(again.changed).toEqual([]);
});

test('cells that cannot be computed keep what they hold, and so do those that hang on them', () => {
  const sheet = '<row r="1"><c r="A1"><f>RAND()</f><v>0.5</v></c><c r="B1"><f>A1*2</f><v>1</v></c><c r="C1"><f>D1</f><v>3</v></c><c r="D1"><f>C1</f><v>3</v></c><c r="E1"><f>1+1</f><v>3</v></c></row>';
  const before = handMade({ sheets: { S: sheet } });
  const { bytes, changed, notComputed } = recompute(before, customFunctions);
  expect(values(bytes)).toEqual([0.5, 1, 3, 3, 2]);
  expect(changed.map(({ address }) => address)).toEqual(['E1']);
  expect(notComputed.map(({ address, formula, reason }) => [address, formula, reason])).toEqual([
    ['A1', 'RAND()', expect.stringContaining('random numbers')], ['B1', 'A1*2', expect.stringContaining('depends on S!A1')],
    ['C1', 'D1', expect.stringContaining('S!C1 → S!D1 → S!C1')], ['D1', 'C1', expect.stringContaining('S!C1 → S!D1 → S!C1')],
  ]);
});

test.each<[string, HandMade]>([
  ['absolute targets', { ...stale, target: (file) => `/xl/worksheets/${file}` }],
  ['names in small letters', { ...stale, sheets: { Cables: rows.replaceAll('_xldudf_JW_CABLE_WITHSTAND', '_xldudf_jw_cable_withstand') } }],
])('files of other programs: %s', (_, what) => {
  expect(values(recompute(handMade(what), customFunctions).bytes)).toEqual([25, 8265625, 'pass', 35, 16200625, 'FAIL']);
});

test('files of other programs: prefixed elements', () => {
  const parts = handMadeParts(stale);
  const prefixed = (text: string): string => text.replace(/<(\/?)(?=[a-zA-Z])/g, '<$1x:').replace(' xmlns="', ' xmlns:x="');
  const bytes = zipped(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, /worksheets\/sheet|workbook\.xml$|styles/.test(name) ? prefixed(text as string) : text])));
  const after = recompute(bytes, customFunctions).bytes;
  expect(values(after)).toEqual([25, 8265625, 'pass', 35, 16200625, 'FAIL']);
  expect(strFromU8(unzipSync(after)['xl/worksheets/sheet1.xml']!)).toContain('<x:f>_xldudf_JW_CABLE_WITHSTAND(115,A2)</x:f><x:v>16200625</x:v></x:c>');
  expect(validateWorkbook(after)).toEqual([]);
});

test('a workbook without any stored value gets them all', async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet('Cables');
  sheet.getCell('A1').value = 25;
  sheet.getCell('B1').value = { formula: '_xldudf_JW_CABLE_WITHSTAND(115,A1)' } as ExcelJS.CellFormulaValue;
  sheet.fillFormula('C1:C3', 'B$1*ROW()');
  const { bytes, changed } = recompute(new Uint8Array(await book.xlsx.writeBuffer()), customFunctions);
  expect(changed.map(({ address }) => address)).toEqual(['B1', 'C1', 'C2', 'C3']);
  const again = new ExcelJS.Workbook();
  await again.xlsx.load(bytes.buffer as ArrayBuffer);
  expect(again.getWorksheet('Cables')!.getCell('C3').result).toBe(8265625 * 3);
});

(hasOffice ? describe : describe.skip)('with a second spreadsheet program on this machine', () => {
  test('it opens the recomputed file with the new values, and its own writing of it is recomputed to the same', () => {
    const { bytes } = recompute(handMade(stale), customFunctions);
    expect(strFromU8(resaved(bytes, 'csv')).trim().split('\n')).toEqual(['25,8265625,pass', '35,16200625,FAIL']);
    const theirs = resaved(bytes);
    expect(strFromU8(unzipSync(theirs)['xl/worksheets/sheet1.xml']!)).toMatch(/_xldudf_jw_cable_withstand/i);
    const again = recompute(theirs, customFunctions);
    expect(values(again.bytes)).toEqual([25, 8265625, 'pass', 35, 16200625, 'FAIL']);
    expect(again.notComputed).toEqual([]);
    expect(validateWorkbook(again.bytes)).toEqual([]);
  }, 400_000);
});
