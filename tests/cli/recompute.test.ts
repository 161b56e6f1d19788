import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import ExcelJS from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { openBook } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';
import { joulewright } from '../support/terminal';
import { validateWorkbook } from '../support/validate-xlsx';

const SAMPLE = path.resolve(__dirname, '../../sample-workbooks/cable-schedule.xlsx');
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string): string => path.join(folder, name);
const valueAt = (bytes: Uint8Array, sheet: string, address: string) => openBook(bytes, customFunctions).value(sheet, address);

/** A workbook of two inputs and a formula of ours, whose stored value is old. */
async function stale(name = 'stale.xlsx'): Promise<string> {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('Sheet 1');
  sheet.getCell('A1').value = 143;
  sheet.getCell('A2').value = 70;
  sheet.getCell('A3').value = { formula: '_xldudf_JW_CABLE_WITHSTAND(A1,A2)', result: 1 };
  sheet.getCell('A4').value = { formula: 'A3*2', result: 2 };
  sheet.getCell('A5').value = { formula: '_xldudf_JW_CABLE_WITHSTAND(A1,B9)', result: 7 };
  writeFileSync(file(name), new Uint8Array(await workbook.xlsx.writeBuffer()));
  return file(name);
}

describe('recompute', () => {
  test('the sample is up to date: the copy has the same bytes', async () => {
    const { status, out } = await joulewright(['recompute', SAMPLE, '-o', file('out.xlsx')]);
    expect(status).toBe(0);
    expect(out[0]).toMatch(/formulas, 0 stored values differ, 0 not computed$/);
    expect(readFileSync(file('out.xlsx')).equals(readFileSync(SAMPLE))).toBe(true);
  });
  test('old values are made new, all else stays, the input is untouched', async () => {
    const input = await stale();
    const before = readFileSync(input);
    const { status, out } = await joulewright(['recompute', input, '-o', file('out.xlsx'), '--list']);
    expect(status).toBe(0);
    expect(out.join('\n')).toContain('3 formulas, 3 stored values differ');
    expect(out.join('\n')).toMatch(/Sheet 1!A5\s+7\s+→\s+#N\/A missing: csa_mm2/);
    const bytes = new Uint8Array(readFileSync(file('out.xlsx')));
    expect(valueAt(bytes, 'Sheet 1', 'A3')).toBe((143 * 70) ** 2);
    expect(valueAt(bytes, 'Sheet 1', 'A4')).toBe(2 * (143 * 70) ** 2);
    expect(validateWorkbook(bytes)).toEqual(validateWorkbook(new Uint8Array(before)));
    const [was, now] = [unzipSync(new Uint8Array(before)), unzipSync(bytes)];
    expect(Object.keys(now)).toEqual(Object.keys(was));
    for (const name of Object.keys(was)) if (name !== 'xl/worksheets/sheet1.xml') expect(now[name]).toEqual(was[name]);
    expect(readFileSync(input).equals(before)).toBe(true);
  });
  test('JSON and dry run', async () => {
    const input = await stale();
    const { out } = await joulewright(['recompute', input, '--dry-run', '--json']);
    expect(JSON.parse(out.join('\n'))).toMatchObject({ output: null, formulas: 3, changed: [{ sheet: 'Sheet 1', cell: 'A3', was: 1, now: 100200100 }, {}, { now: { error: '#N/A', message: 'missing: csa_mm2' } }], notComputed: [] });
    expect(readdirSync(folder)).toEqual(['stale.xlsx']);
  });
  test('what cannot be computed keeps its value, is listed, and the status is 1', async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet('S');
    sheet.getCell('A1').value = { formula: 'NOSUCHFUNCTION(1)', result: 5 };
    sheet.getCell('A2').value = { formula: 'A1+1', result: 6 };
    writeFileSync(file('in.xlsx'), new Uint8Array(await workbook.xlsx.writeBuffer()));
    const { status, error } = await joulewright(['recompute', file('in.xlsx'), '-o', file('out.xlsx')]);
    expect(status).toBe(1);
    expect(error.join('\n')).toMatch(/S!A1 keeps its stored value: .*NOSUCHFUNCTION/);
    expect(error.join('\n')).toMatch(/S!A2 keeps its stored value/);
    expect(valueAt(new Uint8Array(readFileSync(file('out.xlsx'))), 'S', 'A2')).toBe(6);
    const { out } = await joulewright(['recompute', file('in.xlsx'), '--dry-run', '--json']);
    expect(JSON.parse(out.join('\n')).notComputed.map(({ formula }: { formula: string }) => formula)).toEqual(['=NOSUCHFUNCTION(1)', '=A1+1']);
  });
});

/** The sample with one part changed or taken away. */
function without(change: (parts: Record<string, Uint8Array>) => void): Uint8Array {
  const parts = unzipSync(new Uint8Array(readFileSync(SAMPLE)));
  change(parts);
  return zipSync(parts);
}

describe('bad files: words, status 2, input untouched, no output', () => {
  const cases: [string, () => Uint8Array, RegExp][] = [
    ['no zip', () => strToU8('cable,size\nC01,70\n'), /not a workbook|no zip|not a zip/i],
    ['empty', () => new Uint8Array(0), /empty|not a zip|no zip/i],
    ['cut off', () => new Uint8Array(readFileSync(SAMPLE)).slice(0, 4000), /damaged|cut|incomplete|not a zip|no zip/i],
    ['a zip that is no workbook', () => zipSync({ 'readme.txt': strToU8('hello') }), /\[Content_Types\]\.xml|not a workbook/i],
    ['an old or encrypted file', () => Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array(600).fill(0)]), /password|\.xls/i],
    ['a sheet part is gone', () => without((parts) => { delete parts['xl/worksheets/sheet2.xml']; }), /sheet2\.xml/],
    ['the workbook part is gone', () => without((parts) => { delete parts['xl/workbook.xml']; }), /workbook\.xml|no workbook/i],
    ['a part is not well-formed', () => without((parts) => { parts['xl/workbook.xml'] = strToU8(strFromU8(parts['xl/workbook.xml']!).replace('</sheets>', '')); }), /damaged|well-formed|workbook\.xml/i],
    ['entities are declared', () => without((parts) => { parts['xl/workbook.xml'] = strToU8(strFromU8(parts['xl/workbook.xml']!).replace('?>', '?><!DOCTYPE x [<!ENTITY a "aaaa">]>')); }), /DOCTYPE|entit/i],
  ];
  test.each(cases)('%s', async (_name, make, words) => {
    const bytes = make();
    writeFileSync(file('in.xlsx'), bytes);
    const { status, out, error } = await joulewright(['recompute', file('in.xlsx'), '-o', file('out.xlsx')]);
    expect({ status, out }).toEqual({ status: 2, out: [] });
    expect(error).toHaveLength(1);
    expect(error[0]).toMatch(words);
    expect(error[0]).not.toMatch(/undefined|\bat .*:\d+:\d+|TypeError|RangeError/);
    expect(new Uint8Array(readFileSync(file('in.xlsx')))).toEqual(bytes);
    expect(readdirSync(folder)).toEqual(['in.xlsx']);
  });
  test('no such file, a folder, no output named, the workbook itself, an output that cannot be written', async () => {
    expect(await joulewright(['recompute', file('none.xlsx'), '-o', file('out.xlsx')])).toMatchObject({ status: 2, error: [expect.stringContaining('there is no such file')] });
    expect(await joulewright(['recompute', folder, '-o', file('out.xlsx')])).toMatchObject({ status: 2, error: [expect.stringContaining('is a folder')] });
    expect(await joulewright(['recompute', SAMPLE])).toMatchObject({ status: 2, error: [expect.stringContaining('-o OUT.xlsx')] });
    const input = await stale();
    expect(await joulewright(['recompute', input, '-o', input])).toMatchObject({ status: 2, error: [expect.stringContaining('never changed in place')] });
    expect(await joulewright(['recompute', input, '-o', file('no/such/folder/out.xlsx')])).toMatchObject({ status: 2, error: [expect.stringContaining('not written')] });
    expect(readdirSync(folder)).toEqual(['stale.xlsx']);
  });
  test('macros and external links are said, kept and not followed', async () => {
    const bytes = without((parts) => {
      parts['xl/vbaProject.bin'] = strToU8('not run');
      parts['[Content_Types].xml'] = strToU8(strFromU8(parts['[Content_Types].xml']!).replace('</Types>', '<Default Extension="bin" ContentType="application/vnd.ms-office.vbaProject"/></Types>'));
      parts['xl/_rels/workbook.xml.rels'] = strToU8(strFromU8(parts['xl/_rels/workbook.xml.rels']!).replace('</Relationships>', '<Relationship Id="rIdVba" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="vbaProject.bin"/></Relationships>'));
    });
    writeFileSync(file('in.xlsm'), bytes);
    const { status, error } = await joulewright(['recompute', file('in.xlsm'), '-o', file('out.xlsm')]);
    expect(status).toBe(0);
    expect(error.join('\n')).toContain('holds macros: they are kept and never run');
    expect(strFromU8(unzipSync(new Uint8Array(readFileSync(file('out.xlsm'))))['xl/vbaProject.bin']!)).toBe('not run');
  });
});

describe('table', () => {
  test('lists tables, prints one, names what is missing', async () => {
    expect((await joulewright(['table', SAMPLE])).out.join('\n')).toContain('Cables (sheet Cables): cable, from, to');
    const { out } = await joulewright(['table', SAMPLE, 'cables', 'Cable', 'withstand']);
    expect(out[0]).toMatch(/^cable\s+withstand$/);
    expect(out).toHaveLength(18);
    expect(out.some((line) => /^C11\s+FAIL$/.test(line))).toBe(true);
    const withUnits = (await joulewright(['table', SAMPLE, 'Cables', 'cable', 'Ik3 max', 'k²S²'])).out;
    expect(withUnits[1]).toMatch(/^\s+kA\s+A²s$/);
    expect(withUnits).toHaveLength(19);
    expect(await joulewright(['table', SAMPLE, 'Nothing'])).toMatchObject({ status: 2, error: [expect.stringContaining('has no table Nothing; its tables: ')] });
    expect(await joulewright(['table', SAMPLE, 'Cables', 'colour'])).toMatchObject({ status: 2, error: [expect.stringContaining('has no column colour')] });
  });
});
