import { execFile } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import Ajv from 'ajv';
import { main } from '../../src/cli/main';
import type { Terminal } from '../../src/cli/terminal';
import { allRules } from '../../src/sheet/check';
import { type Edits, edited, schedule, schedulePlanted, withStored } from '../support/checked';
import { joulewright } from '../support/terminal';

let folder: string;
beforeEach(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-')); });
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const at = (name: string): string => path.join(folder, name);
const write = (name: string, bytes: Uint8Array): string => {
  mkdirSync(path.dirname(at(name)), { recursive: true });
  writeFileSync(at(name), bytes);
  return at(name);
};
const planted = (name: string, edits: Edits): string => write(name, schedulePlanted(edits));
const dataOf = async (...args: string[]) => JSON.parse((await joulewright(['check', '--json', ...args])).out.join('\n'));
const schema = JSON.parse(readFileSync(path.resolve(__dirname, '../../docs/check-findings.schema.json'), 'utf8'));

describe('one file', () => {
  test('nothing to find: one line, status 0', async () => {
    const file = write('good.xlsx', schedule());
    const { status, out, error } = await joulewright(['check', file]);
    expect(status).toBe(0);
    expect(out).toEqual([expect.stringMatching(/good\.xlsx: (\d+) formulas, \1 checked, 0 not checked; findings: 0 A, 0 B, 0 C$/)]);
    expect(error).toEqual([]);
  });
  test('a finding tells cell, formula, both values, difference, reason and clause; status 1', async () => {
    const file = write('old.xlsx', withStored(schedule(), 'Boards', 'Q12', 5));
    const { status, out } = await joulewright(['check', file]);
    expect(status).toBe(1);
    expect(out[1]).toMatch(/^ {2}A Boards!Q12 \[stored-value\] the stored value is not what the formula gives/);
    expect(out[2]!.trim()).toBe('=JW.FAULT_3PH_MIN(Boards[@[Z min]],Un_V,c_min)');
    expect(out[3]).toMatch(/stored 5, computed \d+\.\d+ \(-\d+(\.\d+)? %\)/);
    expect(out[4]).toContain('IEC 60909-0');
    expect(out[5]).toMatch(/1 stored value changes \(--list names them\)$/);
    expect((await joulewright(['check', '--list', file])).out.at(-1)).toMatch(/Boards!Q12: 5 → \d/);
  });
  test('the same finding in cells one under the other is told once', async () => {
    const { out } = await joulewright(['check', planted('km.xlsx', { 'Cables!C7': 'km' })]);
    expect(out.filter((line) => line.includes('[unit]')).map((line) => line.trim().split(' ')[1])).toEqual(['Cables!J9:J14', 'Cables!K9:K14', 'Cables!L9:L14']);
  });
  test('a remark alone leaves the status 0, what was not checked does not', async () => {
    expect((await joulewright(['check', planted('today.xlsx', { 'Curves!H9': '=TODAY()' })])).status).toBe(0);
    const { status, out } = await joulewright(['check', planted('web.xlsx', { 'Curves!H9': '=WEBSERVICE("x")' })]);
    expect(status).toBe(1);
    expect(out[0]).toContain('1 not checked');
    expect(out.join('\n')).toContain('not checked: WEBSERVICE');
  });
  test('the workbook stays as it is', async () => {
    const file = planted('good.xlsx', { 'Cables!S11': 'pass' });
    const before = readFileSync(file);
    await joulewright(['check', '--html', at('r.html'), file]);
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

describe('options', () => {
  test.each([['0.1%', 0], ['0.1 %', 0], ['0.001', 0], ['0.0001', 1]])('--tolerance %s', async (tolerance, status) => {
    const computed = (await dataOf(write('x.xlsx', withStored(schedule(), 'Boards', 'Q12', 5)))).files[0].findings[0].computed;
    const file = write('near.xlsx', withStored(schedule(), 'Boards', 'Q12', computed * 1.0005));
    expect((await joulewright(['check', '--tolerance', tolerance, file])).status).toBe(status);
  });
  test.each([[['--tolerance', 'much'], '--tolerance: got much'], [['--tolerance', '100%'], '--tolerance'], [['--json', '--sarif'], 'one form at a time'], [['--html', 'b.xlsx'], 'is the name of a workbook'], [['--jsn'], '--jsn'], [['--tolerance', '-1'], "argument is ambiguous"]])('%p is refused in words, and nothing is checked', async (args, words) => {
    const { status, out, error } = await joulewright(['check', ...args, write('good.xlsx', schedule())]);
    expect([status, out]).toEqual([2, []]);
    expect(error.join('\n')).toContain(words);
    expect(error.join('')).not.toMatch(/\\n|\n/);
  });
  test('no file at all', async () => {
    expect(await joulewright(['check'])).toMatchObject({ status: 2, out: [], error: [expect.stringContaining('no workbook to check')] });
  });
});

describe('data', () => {
  test('fits the published schema: findings, changes, a file that is none', async () => {
    const validate = new Ajv({ strict: false }).compile(schema);
    write('none.xlsx', new Uint8Array([1, 2, 3]));
    const data = await dataOf(planted('a.xlsx', { 'Cables!S11': 'pass', 'Cables!C12': '85', 'Curves!H9': '=WEBSERVICE("x")' }), write('b.xlsx', withStored(schedule(), 'Boards', 'Q12', 5)), at('none.xlsx'));
    expect(validate(data) ? [] : validate.errors).toEqual([]);
    expect(data.files.map(({ error }: { error?: string }) => error !== undefined)).toEqual([false, false, true]);
    expect(data.files[1]).toMatchObject({ notChecked: 0, changes: [{ sheet: 'Boards', cell: 'Q12', stored: 5 }], findings: [{ class: 'A', kind: 'stored-value', sheet: 'Boards', cell: 'Q12', stored: 5 }] });
    expect(data.files[2]).toMatchObject({ checked: 0, notChecked: 0, findings: [] });
  });
  test('the schema names every kind of finding that there is', () => {
    expect([...schema.definitions.finding.properties.kind.enum].sort()).toEqual(allRules.map(({ kind }) => kind).sort());
  });
  test('SARIF 2.1.0: a rule and a level for every result, cells as logical places, relative addresses', async () => {
    const file = planted('a b.xlsx', { 'Cables!S11': 'pass', 'Cables!C12': '85' });
    const ran = await joulewright(['check', '--sarif', path.relative('.', file), at('nothing.xlsx')]);
    const log = JSON.parse(ran.out.join('\n'));
    expect(log.version).toBe('2.1.0');
    const [run] = log.runs;
    expect(run.invocations[0]).toMatchObject({ executionSuccessful: false, toolExecutionNotifications: [{ level: 'error', message: { text: expect.stringContaining('there is no such file') } }] });
    expect(run.results).toHaveLength(2);
    for (const result of run.results) expect(run.tool.driver.rules[result.ruleIndex].id).toBe(result.ruleId);
    expect(run.results[0]).toMatchObject({ ruleId: 'verdict-by-hand', level: 'error', locations: [{ logicalLocations: [{ fullyQualifiedName: 'Cables!S11', kind: 'cell' }] }] });
    expect(run.results[1]).toMatchObject({ ruleId: 'number-as-text', level: 'warning' });
    expect(run.results[0].locations[0].physicalLocation.artifactLocation.uri).toMatch(/a%20b\.xlsx$/);
  });
});

describe('many files', () => {
  test('folders, patterns and files, each once; what is open elsewhere is passed over', async () => {
    for (const name of ['x/one.xlsx', 'x/deep/er/two.xlsm', 'x/~$one.xlsx', 'x/.hidden.xlsx', 'x/notes.txt', 'y/three.XLSX']) write(name, schedule());
    symlinkSync(at('x'), at('x/deep/round'));
    const names = async (...asked: string[]) => ((await dataOf(...asked)).files as { file: string }[]).map(({ file }) => path.relative(folder, file).split(path.sep).join('/'));
    expect(await names(at('x'))).toEqual(['x/one.xlsx', 'x/deep/er/two.xlsm']);
    expect(await names(at('*/*.xlsx'))).toEqual(['x/one.xlsx']);
    expect(await names(at('**/*.xls?'))).toEqual(['x/one.xlsx', 'x/deep/er/two.xlsm']);
    expect(await names(at('x/one.xlsx'), at('x'), at('y/three.XLSX'))).toEqual(['x/one.xlsx', 'x/deep/er/two.xlsm', 'y/three.XLSX']);
  });
  test('one that cannot be read does not stop the rest; the status says so', async () => {
    write('a.xlsx', schedule());
    write('b.xlsx', new Uint8Array([80, 75, 3, 4]));
    planted('c.xlsx', { 'Cables!S11': 'pass' });
    const { status, out } = await joulewright(['check', folder, at('*.xlsm')]);
    expect(status).toBe(2);
    expect(out.filter((line) => !line.startsWith(' ')).map((line) => line.replace(`${folder}${path.sep}`, ''))).toEqual([
      expect.stringMatching(/^a\.xlsx: .* 0 A, 0 B, 0 C$/), expect.stringMatching(/^b\.xlsx: NOT CHECKED, /), expect.stringMatching(/^c\.xlsx: .* 1 A, 0 B, 0 C$/),
      expect.stringMatching(/\*\.xlsm: NOT CHECKED, no workbook fits this pattern$/), expect.stringMatching(/^2 files checked, 2 could not be read: /),
    ]);
  });
  test('with data on standard output, one line a file goes to standard error', async () => {
    const files = [write('a.xlsx', schedule()), write('b.xlsx', schedule())];
    expect((await joulewright(['check', '--json', ...files])).error).toEqual([expect.stringContaining('a.xlsx'), expect.stringContaining('b.xlsx')]);
  });
});

describe('on a terminal', () => {
  test('a bar grows with each file and is taken away at the end', async () => {
    const files = [write('a.xlsx', schedule()), write('b.xlsx', schedule())];
    const bars: string[] = [];
    const lines: string[] = [];
    const terminal: Terminal = { out: (line) => void lines.push(line), error: (line) => void lines.push(line), input: async () => '', status: (line) => void bars.push(line) };
    expect(await main(['check', ...files], terminal)).toBe(0);
    expect(bars).toEqual([expect.stringMatching(/^█{15}░{15} 1\/2 a\.xlsx$/), expect.stringMatching(/^█{30} 2\/2 b\.xlsx$/), '']);
    expect(lines).toHaveLength(3);
  });
  test.each(['check', 'compare'])('%s --help', async (command) => {
    const { out, status } = await joulewright([command, '--help']);
    expect(status).toBe(0);
    expect(out[0]).toContain(`joulewright ${command}`);
  });
});

describe('the record as a page', () => {
  const HOSTILE = '<img src=x onerror=alert(1)>&"\'</td><script>alert(2)</script>\u202e\u0007';
  test('holds what was checked, by what and with which version, and escapes all that comes from the file', async () => {
    const file = write('a.xlsx', edited(schedulePlanted({ 'Cables!S11': 'pass' }), { 'Curves!H9': `=WEBSERVICE("${HOSTILE.replace(/"/g, '""').replace('\u0007', '')}")` }));
    await joulewright(['check', '--html', at('r.html'), file, at('none.xlsx')]);
    const page = readFileSync(at('r.html'), 'utf8');
    expect(page).toContain('Joulewright 0.');
    expect(page).toContain('SHA-256');
    expect(page).toMatch(/Cables!<wbr><span class="address">[A-Z]+\d+/);
    for (const { kind } of allRules) expect(page).toContain(`>${kind}</td>`);
    expect(page).toContain('1 of 163 formulas could not be checked');
    expect(page).toContain('there is no such file');
    expect(page).not.toMatch(/<img|<script|onerror=alert\(1\)>[^&]/);
    expect(page).toContain('&lt;img src=x onerror=alert(1)&gt;');
    expect(page).toContain('⟨202E⟩');
    expect(page).not.toMatch(/<[^>]*\s(?:src|href)=|url\(|@import/);
  });
  test('no change is told of formulas that could not be computed anew', async () => {
    const file = planted('day.xlsx', { 'Curves!H9': '=TODAY()', 'Curves!H10': '=H9+1' });
    const { out } = await joulewright(['check', '--html', at('r.html'), file]);
    expect(out).toContain('  Computed anew as a whole, 2 formulas could not be worked out or hang on one that could not');
    const page = readFileSync(at('r.html'), 'utf8');
    expect(page).toMatch(/2 of \d+ formulas could not be computed anew, or hang on one that could not/);
    expect(page).toContain('No stored value of the others changes.');
    expect(page).not.toContain('No stored value changes.');
  });
  test('stands before the first line is told, for whoever reads only that', async () => {
    const seen: boolean[] = [];
    const terminal: Terminal = { out: () => void seen.push(existsSync(at('r.html'))), error: () => {}, input: async () => '' };
    expect(await main(['check', '--html', at('r.html'), write('a.xlsx', schedule())], terminal)).toBe(0);
    expect(seen).toEqual([true]);
  });
  test('is written whole or not at all', async () => {
    const { status, out, error } = await joulewright(['check', '--html', at('no/such/r.html'), write('a.xlsx', schedule())]);
    expect(status).toBe(2);
    expect(out[0]).toMatch(/a\.xlsx: .* 0 not checked/);
    expect(error.join('\n')).toContain(`not written, there is no folder ${at('no/such')}`);
    expect(existsSync(at('no'))).toBe(false);
  });
});

const PROGRAM = path.resolve(__dirname, '../../dist/cli/joulewright.cjs');
(existsSync(PROGRAM) ? describe : describe.skip)('the built program, where threads do the work', () => {
  const run = promisify(execFile);
  const BIN = path.resolve(__dirname, '../../bin/joulewright.mjs');
  test('more files than threads, one of them damaged: all are answered, in order', async () => {
    const files = Array.from({ length: 12 }, (_, i) => (i === 5 ? write(`${i}.xlsx`, new Uint8Array(99)) : write(`${String(i).padStart(2, '0')}.xlsx`, schedule())));
    const { stdout } = await run(process.execPath, [BIN, 'check', '--json', ...files]).catch((error: { stdout: string; code: number }) => {
      expect(error.code).toBe(2);
      return error;
    });
    const data = JSON.parse(stdout);
    expect(data.files.map(({ file }: { file: string }) => file)).toEqual(files);
    expect(data.files.filter(({ error }: { error?: string }) => error !== undefined)).toHaveLength(1);
    expect(new Set(data.files.map(({ checked }: { checked: number }) => checked)).size).toBe(2);
  }, 60_000);
});
