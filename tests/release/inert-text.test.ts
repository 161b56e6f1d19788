import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { parseHTML } from 'linkedom';
import { calculated, withStored } from '../support/checked';
import { typedBook } from '../support/sheet-text';
import { joulewright } from '../support/terminal';

/** Texts of a workbook that would act if anything took them for markup, script, address or control signs. */
const HOSTILE = [
  '<img src=x onerror=alert(1)>', '"><script>alert(1)</script>', "'><svg onload=alert(1)>", '</td></tr></table><iframe src=https://tools.example.org>', '<!--', ']]>', '</style><style>*{display:none}',
  '&lt;img src=x onerror=alert(1)&gt;', '${alert(1)}', '{{alert(1)}}', 'javascript:alert(1)', '\u202egnp.exe',
];
const SHEET = "<b onclick=x>'&";
/** As the builder of test workbooks takes it: it writes names of sheets into the file as they are. */
const SHEET_XML = SHEET.replace('&', '&amp;').replace('<', '&lt;');

let folder: string;
beforeEach(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-inert-')); });
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Each text stands in a cell, in a formula, and in a stored value that is not what the formula gives. */
function hostileBook(): Uint8Array {
  const cells: Record<string, string> = {};
  HOSTILE.forEach((text, i) => {
    cells[`A${i + 1}`] = text;
    cells[`B${i + 1}`] = `=A${i + 1}&"${text.replace(/"/g, '""')}"`;
    cells[`C${i + 1}`] = `=JW.CABLE_K(A${i + 1},"XLPE")`;
  });
  return HOSTILE.reduce<Uint8Array>((bytes, text, i) => withStored(bytes, SHEET, `B${i + 1}`, text), calculated(typedBook({ sheets: { [SHEET_XML]: cells } })));
}

/** Signs that the page writes by their number. */
const shown = (text: string): string => text.replace('\u202e', '\\u202e');

test('the record of a check shows them as they are written: no element, no attribute more', async () => {
  const name = "<img src=x onerror=alert(2)>'&.xlsx";
  writeFileSync(path.join(folder, name), hostileBook());
  const { status } = await joulewright(['check', '--html', path.join(folder, 'r.html'), path.join(folder, name)]);
  expect(status).toBe(1);
  const page = readFileSync(path.join(folder, 'r.html'), 'utf8');
  const { document } = parseHTML(page);
  const elements = Array.from(document.querySelectorAll('*'));
  const allowed = ['html', 'head', 'meta', 'title', 'style', 'body', 'h1', 'h2', 'h3', 'p', 'table', 'thead', 'tbody', 'colgroup', 'col', 'tr', 'th', 'td', 'section', 'span', 'code', 'footer', 'wbr'];
  expect(elements.map((each) => each.localName).filter((each) => !allowed.includes(each))).toEqual([]);
  expect(elements.flatMap((each) => Array.from(each.attributes).map((attribute) => attribute.name)).filter((each) => !['lang', 'charset', 'name', 'content', 'http-equiv', 'class', 'colspan'].includes(each))).toEqual([]);
  expect(document.querySelectorAll('style')).toHaveLength(1);
  const text = document.body.textContent!;
  for (const each of HOSTILE) expect(text).toContain(`stored ${shown(each)}`.slice(0, 24));
  expect(text).toContain(name);
  expect(text).toContain(SHEET);
  expect(page).not.toContain('\u202e');
});

test('data and SARIF hold them as strings of JSON', async () => {
  writeFileSync(path.join(folder, 'a.xlsx'), hostileBook());
  const data = JSON.parse((await joulewright(['check', '--json', path.join(folder, 'a.xlsx')])).out.join('\n'));
  const stored = data.files[0].findings.filter(({ kind }: { kind: string }) => kind === 'stored-value').map((each: { stored: string }) => each.stored);
  expect(stored.sort()).toEqual([...HOSTILE].sort());
  const sarif = (await joulewright(['check', '--sarif', path.join(folder, 'a.xlsx')])).out.join('\n');
  expect(JSON.parse(sarif).runs[0].results.length).toBeGreaterThanOrEqual(HOSTILE.length);
});

test('no sign of a cell steers the terminal', async () => {
  const steering = '\u001b[2J\u001b]0;title\u0007\u009b31m\u202e\r\nnew line';
  const book = withStored(calculated(typedBook({ sheets: { Sheet: { A1: 'x', B1: '=A1&"y"' } } })), 'Sheet', 'B1', steering);
  writeFileSync(path.join(folder, 'a.xlsx'), book);
  for (const args of [['check'], ['check', '--list'], ['recompute', '--dry-run', '--list']]) {
    const { out, error } = await joulewright([args[0]!, path.join(folder, 'a.xlsx'), ...args.slice(1)]);
    expect(out.length).toBeGreaterThan(0);
    // eslint-disable-next-line no-control-regex
    for (const line of [...out, ...error]) expect(line).not.toMatch(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
    expect(out.join('\n')).toContain('\\x1b[2J');
    expect(out.join('\n')).toContain('\\u202e\\r\\nnew line');
  }
});
