import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { strToU8, zipSync } from 'fflate';
import { type HandMade, handMade, handMadeParts, zipped } from '../support/hand-made-workbook';
import { joulewright } from '../support/terminal';

/** Files that damage, malice or other programs make, each through the command line. */
let folder: string;
beforeEach(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-')); });
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const rows = (text: string, more: Partial<HandMade> = {}): Uint8Array => handMade({ sheets: { S: text }, ...more });
const sheet = (text: string): Uint8Array => handMade({ sheets: { S: `<?xml version="1.0"?>${text}` } });
const parts = (): Record<string, string | Uint8Array> => handMadeParts({ sheets: { S: '<row r="1"><c r="A1"><v>1</v></c></row>' } });

/** check and recompute of one file; its bytes must be what they were, and nothing may lie beside it that was not asked for. */
async function tried(bytes: Uint8Array) {
  const file = path.join(folder, 'book.xlsx');
  const out = path.join(folder, 'out.xlsx');
  writeFileSync(file, bytes);
  const check = await joulewright(['check', '--json', file]);
  const recompute = await joulewright(['recompute', file, '-o', out]);
  expect(Buffer.from(bytes).equals(readFileSync(file))).toBe(true);
  expect(readdirSync(folder).sort()).toEqual(recompute.status === 2 ? ['book.xlsx'] : ['book.xlsx', 'out.xlsx']);
  for (const line of [...check.out, ...check.error, ...recompute.out, ...recompute.error]) expect(line).not.toMatch(/\bat .*:\d+:\d+|NaN|undefined|\[object/);
  return { check: JSON.parse(check.out.join('\n')).files[0], status: check.status, recompute };
}

describe('not opened: words, status 2, no output', () => {
  const bomb = (): Uint8Array => zipped({ ...parts(), 'xl/worksheets/sheet1.xml': new Uint8Array(64 * 1024 * 1024).fill(32) }, { level: 9 });
  const lying = (): Uint8Array => {
    const bytes = zipped(parts());
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    for (let at = 0; at < bytes.length - 4; at++) if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 400 * 1024 * 1024, true);
    return bytes;
  };
  test.each<[string, () => Uint8Array, RegExp]>([
    ['no zip', () => strToU8('this is no workbook'), /no zip package/],
    ['some other zip', () => zipSync({ 'a.txt': strToU8('a') }), /no workbook/],
    ['a zip cut off', () => zipped(parts()).slice(0, 700), /cut off or damaged/],
    ['a part that is packed a thousand times', bomb, /times its size, as no worksheet does/],
    ['a part said to be larger than is read', lying, /would unpack to 400 MB/],
    ['entities that multiply', () => sheet(`<!DOCTYPE w [<!ENTITY a "${'x'.repeat(50)}">${Array.from({ length: 9 }, (_, i) => `<!ENTITY ${String.fromCharCode(98 + i)} "${`&${String.fromCharCode(97 + i)};`.repeat(10)}">`).join('')}]><worksheet xmlns="${MAIN}"><sheetData><row r="1"><c r="A1" t="str"><v>&j;</v></c></row></sheetData></worksheet>`), /DOCTYPE or entity/],
    ['a relationship to nowhere', () => zipped({ ...parts(), 'xl/_rels/workbook.xml.rels': '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"/>' }), /nothing tells where the sheet "S" stands/],
    ['a relationship out of the file', () => handMade({ sheets: { S: '' }, target: () => '../../../../etc/passwd' }), /leads out of the file/],
    ['a cell twice', () => rows('<row r="1"><c r="A1"><v>1</v></c><c r="A1"><v>2</v></c></row>'), /holds the cell A1 twice/],
    ['a number that is none', () => rows('<row r="1"><c r="A1"><v>1,5</v></c></row>'), /no number/],
    ['arrays over all of the sheet', () => rows('<row r="1"><c r="A1"><f t="array" ref="A1:XFD1048576">1</f><v>1</v></c></row>'), /fill more than|array/],
  ])('%s', async (_, make, words) => {
    const { check, status, recompute } = await tried(make());
    expect([status, recompute.status]).toEqual([2, 2]);
    expect(check).toMatchObject({ error: expect.stringMatching(words), formulas: 0, checked: 0, findings: [] });
    expect(recompute.error.join('\n')).toMatch(words);
  });
});

describe('opened, and told apart from what was checked', () => {
  const kinds = (check: { findings: { class: string; kind: string; cell: string; reason: string }[] }): string[] => check.findings.map(({ class: of, kind, cell }) => `${of} ${kind} ${cell}`);

  test('a circle: each of its cells is not checked, with the circle in words', async () => {
    const { check, status, recompute } = await tried(rows('<row r="1"><c r="A1"><f>B1+1</f></c><c r="B1"><f>A1+1</f></c><c r="C1"><f>C1</f><v>3</v></c></row>'));
    expect([status, recompute.status]).toEqual([1, 1]);
    expect(check).toMatchObject({ formulas: 3, checked: 0, notChecked: 3 });
    expect(kinds(check)).toEqual(['B not-checked A1', 'B not-checked B1', 'B not-checked C1']);
    expect(check.findings[2].reason).toContain('circular reference: S!C1 reads itself');
    expect(recompute.error.join('\n')).toContain('circular reference: S!A1 → S!B1 → S!A1');
  });
  test('a circle whose stored values agree with one another does not pass for checked', async () => {
    const { check, recompute } = await tried(rows('<row r="1"><c r="A1"><f>B1+1</f><v>5</v></c><c r="B1"><f>A1-1</f><v>4</v></c><c r="C1"><f>B1*2</f><v>8</v></c></row>'));
    expect(check).toMatchObject({ checked: 2, notChecked: 1 });
    expect(kinds(check)).toEqual(['B not-checked B1']);
    expect(check.findings[0].reason).toContain('circular reference: S!A1 → S!B1 → S!A1');
    expect(recompute.status).toBe(1);
  });
  test('a circle that the workbook iterates ends near its values: neither agreement nor difference is told', async () => {
    const book = handMadeParts({ sheets: { S: '<row r="1"><c r="A1"><f>B1/2+1</f><v>1.9995</v></c><c r="B1"><f>A1</f><v>1.9995</v></c><c r="C1"><f>B1*2</f><v>3.999</v></c></row>' } });
    const { check } = await tried(zipped({ ...book, 'xl/workbook.xml': String(book['xl/workbook.xml']).replace('</workbook>', '<calcPr iterate="1"/></workbook>') }));
    expect(kinds(check)).toEqual(['B not-checked A1', 'B not-checked B1']);
    expect(check.findings[0].reason).toContain('which the workbook goes round several times');
  });
  test('a path to another workbook', async () => {
    const { check } = await tried(rows('<row r="1"><c r="A1"><f>\'C:\\x\\[Other.xlsx]Data\'!B2</f><v>1</v></c></row>'));
    expect(kinds(check)).toEqual(['B external-link A1']);
  });
  test('unknown functions, of ours and of others', async () => {
    const { check } = await tried(rows('<row r="1"><c r="A1"><f>_xldudf_JW_NO_SUCH(1)</f><v>1</v></c><c r="B1"><f>MADEUP(1)</f><v>1</v></c><c r="C1"><f>A1*2</f><v>2</v></c></row>'));
    expect(kinds(check)).toEqual(['B not-checked A1', 'B not-checked B1']);
    expect(check).toMatchObject({ checked: 1, notChecked: 2 });
  });
  test('formulas that are none', async () => {
    const deep = `${'('.repeat(400)}1${')'.repeat(400)}`;
    const { check } = await tried(rows(`<row r="1"><c r="A1"><f>1+</f><v>1</v></c><c r="B1"><f>${deep}</f><v>1</v></c><c r="C1"><f>${'1+'.repeat(4000)}1</f><v>4001</v></c><c r="D1"><f>REPT("x",1E9)</f><v>1</v></c></row>`));
    expect(check.findings.filter(({ kind }: { kind: string }) => kind === 'not-checked').map(({ cell }: { cell: string }) => cell)).toEqual(['A1', 'B1']);
    expect(check.checked).toBe(2);
  });
  test('shared and array formulas: each cell by its own', async () => {
    const { check } = await tried(rows('<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f t="shared" ref="B1:B3" si="0">A1*2</f><v>2</v></c><c r="C1"><f t="array" ref="C1:C3">A1:A3*3</f><v>3</v></c></row>'
      + '<row r="2"><c r="A2"><v>2</v></c><c r="B2"><f t="shared" si="0"/><v>4</v></c><c r="C2"><v>6</v></c></row><row r="3"><c r="A3"><v>3</v></c><c r="B3"><f t="shared" si="0"/><v>7</v></c><c r="C3"><v>10</v></c></row>'));
    expect(kinds(check)).toEqual(['B stored-value B3', 'B stored-value C3']);
    expect(check).toMatchObject({ formulas: 4, checked: 4 });
  });
  test('days from 1904: figures are checked, dates are not', async () => {
    const { check } = await tried(rows('<row r="1"><c r="A1"><v>10</v></c><c r="B1"><f>YEAR(A1)</f><v>1904</v></c><c r="C1"><f>A1+1</f><v>11</v></c></row>', { workbookPr: '<workbookPr date1904="1"/>' }));
    expect(kinds(check)).toEqual(['B not-checked B1']);
    expect(check.findings[0].reason).toContain('1904');
  });
  test('the strict dialect and other prefixes', async () => {
    const strict = Object.fromEntries(Object.entries(handMadeParts({ sheets: { S: '<row r="1"><c r="A1"><v>1</v></c><c r="B1"><f>A1+1</f><v>3</v></c></row>' } })).map(([name, text]) => [name, String(text)
      .replaceAll(MAIN, 'http://purl.oclc.org/ooxml/spreadsheetml/main').replaceAll('http://schemas.openxmlformats.org/officeDocument/2006/relationships', 'http://purl.oclc.org/ooxml/officeDocument/relationships')]));
    expect(kinds((await tried(zipped(strict))).check)).toEqual(['B stored-value B1']);
    const prefixed = sheet(`<x:worksheet xmlns:x="${MAIN}"><x:sheetData><x:row r="1" hidden="1"><x:c r="A1"><x:v>1</x:v></x:c><x:c r="B1"><x:f>A1+1</x:f><x:v>3</x:v></x:c></x:row></x:sheetData></x:worksheet>`);
    expect(kinds((await tried(prefixed)).check)).toEqual(['B stored-value B1', 'C hidden ']);
  });
  test('other workbooks are not opened', async () => {
    const { check } = await tried(rows('<row r="1"><c r="A1"><f>[1]Data!$B$2*2</f><v>8</v></c><c r="B1"><f>A1+1</f><v>9</v></c></row>'));
    expect(kinds(check)).toEqual(['B external-link A1']);
    expect(check).toMatchObject({ checked: 1, notChecked: 1 });
  });
  test('hidden sheets, rows and columns', async () => {
    const made = handMadeParts({ sheets: { S: `<?xml version="1.0"?><worksheet xmlns="${MAIN}"><cols><col min="2" max="4" width="9" hidden="1"/></cols><sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="2" hidden="true"><c r="A2"><v>1</v></c></row><row r="3" hidden="1"/></sheetData></worksheet>`, T: '' } });
    const bytes = zipped({ ...made, 'xl/workbook.xml': (made['xl/workbook.xml'] as string).replace('sheetId="2"', 'sheetId="2" state="veryHidden"') });
    const { check, status } = await tried(bytes);
    expect(status).toBe(0);
    expect(check.findings.map(({ sheet: of, reason }: { sheet: string; reason: string }) => `${of}: ${reason}`)).toEqual(['S: rows out of sight: 2 to 3', 'S: columns out of sight: B to D', 'T: the sheet is hidden so that no menu shows it']);
  });
  test('macros, a signature, manual calculation and protection are said', async () => {
    const made = handMadeParts({ sheets: { S: '<row r="1"><c r="A1"><v>1</v></c></row>' } });
    const bytes = zipped({ ...made, '_xmlsignatures/sig1.xml': '<Signature/>', 'xl/workbook.xml': (made['xl/workbook.xml'] as string).replace('</workbook>', '<calcPr calcMode="manual"/></workbook>').replace('<sheets>', '<workbookProtection lockStructure="1"/><sheets>') });
    const { check } = await tried(bytes);
    expect(check.notices.join('; ')).toMatch(/digitally signed.*structure is protected.*calculated by hand/);
  });
  test('no formula at all: nothing was checked, and nothing is claimed', async () => {
    const file = path.join(folder, 'plain.xlsx');
    writeFileSync(file, rows('<row r="1"><c r="A1"><v>1</v></c></row>'));
    await joulewright(['check', '--html', path.join(folder, 'r.html'), file]);
    expect(readFileSync(path.join(folder, 'r.html'), 'utf8')).toContain('there was nothing to compute');
  });
});

const PROGRAM = path.resolve(__dirname, '../../dist/cli/joulewright.cjs');
(existsSync(PROGRAM) ? describe : describe.skip)('large files, in the built program', () => {
  const run = promisify(execFile);
  const checked = async (file: string) => {
    const ran = await run(process.execPath, [path.resolve(__dirname, '../../bin/joulewright.mjs'), 'check', '--json', file], { maxBuffer: 1e9, timeout: 150_000 }).catch((error: { stdout: string; code: number }) => {
      expect(error.code).toBe(1);
      return error;
    });
    return JSON.parse(ran.stdout).files[0];
  };
  test('a million rows', async () => {
    const file = path.join(folder, 'rows.xlsx');
    let text = '';
    for (let row = 1; row <= 1_048_576; row++) text += `<row r="${row}"><c r="A${row}"><v>${(row * 7919) % 100003}</v></c></row>`;
    writeFileSync(file, rows(text.replace('<v>7919</v></c>', '<v>7919</v></c><c r="B1"><f>SUM(A:A)</f><v>1</v></c>')));
    expect(await checked(file)).toMatchObject({ formulas: 1, checked: 1, findings: [{ kind: 'stored-value', cell: 'B1' }] });
  }, 180_000);
  test('cells at the last column of many rows', async () => {
    const file = path.join(folder, 'wide.xlsx');
    let text = '';
    for (let row = 1; row <= 20_000; row++) text += `<row r="${row}"><c r="A${row}"><v>${row}</v></c><c r="XFD${row}"><f>A${row}*2</f><v>${2 * row}</v></c></row>`;
    writeFileSync(file, rows(text));
    expect(await checked(file)).toMatchObject({ formulas: 20_000, checked: 20_000, findings: [] });
  }, 180_000);
});
