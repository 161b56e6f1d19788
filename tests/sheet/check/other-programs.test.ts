import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { openBook } from '../../../src/sheet/book';
import { customFunctions } from '../../../src/sheet/custom-functions';
import { recompute } from '../../../src/sheet/recompute';
import { checked, schedule, schedulePlanted, told } from '../../support/checked';
import { type WrittenSheet, byExceljs, byXlsxwriter } from '../../support/other-writers';
import { hasOffice, resaved } from '../../support/soffice';

/** Workbooks that other programs write are checked as those of spreadsheet programs are. */
const SHEET: WrittenSheet = {
  A1: 'k', B1: 'size', C1: 'stands', A2: 143, B2: 70, A3: 115, B3: 50,
  C2: { formula: '_xldudf_JW_CABLE_WITHSTAND(A2,B2)', result: 100200100 },
  C3: { formula: '_xldudf_JW_CABLE_WITHSTAND(A3,B3)', result: 33062500 },
  C4: { formula: 'SUM(C2:C3)', result: 5 },
  D2: { formula: 'IF(C2>1E6,"yes","no")', result: 'yes' },
};

test.each([['exceljs', byExceljs], ['xlsxwriter', (name: string, cells: WrittenSheet) => Promise.resolve(byXlsxwriter(name, cells))]] as const)('%s: the one wrong value is found; recomputed and opened again nothing is', async (_, write) => {
  const bytes = await write('Data', SHEET);
  const { findings, formulas, checked: done } = checked(bytes);
  expect(told(findings)).toEqual(['B stored-value Data!C4']);
  expect([formulas, done]).toEqual([4, 4]);
  const again = recompute(bytes, customFunctions);
  expect(again.changed.map(({ address, now }) => [address, now])).toEqual([['C4', 133262600]]);
  expect(told(checked(again.bytes).findings)).toEqual([]);
  expect(recompute(again.bytes, customFunctions).bytes).toBe(again.bytes);
}, 60_000);

test('a library that stores no results: nothing passes for checked', async () => {
  const bytes = await byExceljs('Data', { A1: 2, B1: { formula: 'A1*2', result: undefined as unknown as number }, C1: { formula: 'B1+1', result: undefined as unknown as number } });
  const { checked: done, notChecked, findings } = checked(bytes);
  expect([done, notChecked]).toEqual([0, 2]);
  expect(findings.map(({ reason }) => reason)).toEqual([expect.stringContaining('the file holds no value of it'), expect.stringContaining('the file holds no value of Data!B1')]);
});

/** The file as one that says which program made it: another program then keeps its stored values. */
function madeByExcel(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  const type = 'application/vnd.openxmlformats-officedocument.extended-properties+xml';
  const change = (name: string, from: string, to: string): void => void (parts[name] = strToU8(strFromU8(parts[name]!).replace(from, to)));
  change('[Content_Types].xml', '</Types>', `<Override PartName="/docProps/app.xml" ContentType="${type}"/></Types>`);
  change('_rels/.rels', '</Relationships>', '<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/extended-properties" Target="docProps/app.xml"/></Relationships>');
  parts['docProps/app.xml'] = strToU8('<?xml version="1.0" encoding="UTF-8"?><Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>');
  return zipSync(parts);
}

(hasOffice ? describe : describe.skip)('saved by another spreadsheet program', () => {
  test('which keeps the values: nothing to find in a correct schedule, and a mistake at its cell', () => {
    const { findings, notChecked } = checked(resaved(madeByExcel(schedule())));
    expect(told(findings)).toEqual([]);
    expect(notChecked).toBe(0);
    const planted = checked(resaved(madeByExcel(schedulePlanted({ 'Cables!S11': 'pass', 'Sources!B12': '=SUM(Cables!C9:C13)' }))));
    expect(told(planted.findings)).toEqual(['A verdict-by-hand Cables!S11', 'B short-range Sources!B12']);
  }, 200_000);
  test('which cannot keep all values: cells without theirs say so, those that read them are not checked, and computing it here restores all', () => {
    const bytes = resaved(schedule());
    const lost = checked(bytes).findings;
    expect(lost.length).toBeGreaterThan(50);
    expect([...new Set(lost.map(({ class: of, kind, reason }) => `${of} ${kind} ${reason}`))].sort()).toEqual([
      'B not-checked not checked: it reads a cell stored as #NAME?, a function that the program which saved the file last does not know',
      'B stored-value stored as #NAME?: the program that saved the file last does not know a function of it',
    ]);
    const restored = recompute(bytes, customFunctions).bytes;
    expect(told(checked(restored).findings)).toEqual([]);
    const value = (book: Uint8Array) => openBook(book, customFunctions).value('Cables', 'R11');
    expect(value(restored)).toBe(value(schedule()));
  }, 200_000);
});
