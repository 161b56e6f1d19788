import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { calculated, schedule, schedulePlanted } from '../support/checked';
import { SCHEDULE } from '../support/schedule';
import { typedBook } from '../support/sheet-text';
import { joulewright } from '../support/terminal';

let folder: string;
beforeEach(() => { folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-')); });
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (name: string, bytes: Uint8Array): string => {
  writeFileSync(path.join(folder, name), bytes);
  return path.join(folder, name);
};
const compared = async (now: Uint8Array, ...options: string[]) => joulewright(['compare', write('old.xlsx', schedule()), write('new.xlsx', now), ...options]);
const data = async (now: Uint8Array) => JSON.parse((await compared(now, '--json')).out.join('\n'));

test('the same workbook: no change, status 0', async () => {
  const { status, out } = await compared(schedule());
  expect(status).toBe(0);
  expect(out).toEqual([expect.stringMatching(/: \d+ cells compared; 0 inputs, 0 formulas, 0 results changed$/)]);
});

test('an input, and the results that follow from it', async () => {
  const { status, out } = await compared(schedulePlanted({ 'Cables!F10': 70 }));
  expect(status).toBe(1);
  expect(out[out.indexOf('Inputs changed:') + 1]).toBe('  Cables!F10 C02, size: 50 → 70');
  expect(out).not.toContain('Formulas changed:');
  const results = out.slice(out.indexOf('Results changed:') + 1);
  expect(results).toContainEqual(expect.stringMatching(/^ {2}Cables!N10 C02, Ik1 min: \d\.\d+ → \d\.\d+$/));
  // No other cable and no board changes; the curve drawn of this cable does.
  expect(results.every((line) => /^ {2}(Cables!\w+10 C02|Curves!B\d+)/.test(line))).toBe(true);
});

test('a formula, told with both texts and values', async () => {
  const { formulas, inputs } = await data(schedulePlanted({ 'Cables!I9': '=IF([@insulation]="PVC",70,85)' }));
  expect(inputs).toEqual([]);
  expect(formulas).toEqual([{ sheet: 'Cables', row: 'C01', column: 'hot', old: { cell: 'I9', formula: '=IF(Cables[@insulation]="PVC",70,90)', value: 90 }, new: { cell: 'I9', formula: '=IF(Cables[@insulation]="PVC",70,85)', value: 85 } }]);
});

test('a formula typed over by a figure is a change of the formula', async () => {
  const { formulas, inputs } = await data(schedulePlanted({ 'Boards!N11': 12.3 }));
  expect(inputs).toEqual([]);
  expect(formulas).toEqual([expect.objectContaining({ row: 'HALL 2', column: 'Ik3 max', new: { cell: 'N11', formula: null, value: 12.3 } })]);
});

test('a row put in between, a column more, a name and a sheet: nothing else changes', async () => {
  const tables = SCHEDULE.tables!.map((table) => (table.name !== 'Devices' ? table : {
    ...table, columns: [...table.columns, { name: 'place' }], rows: [...table.rows.slice(0, 2).map((row) => [...row, 'MSB']), ['F9', 'gG range T', 200, 1.75e5, 4.6e5, 20, 'MSB'], ...table.rows.slice(2).map((row) => [...row, 'HALL'])],
  }));
  const now = calculated(typedBook({ ...SCHEDULE, tables, sheets: { ...SCHEDULE.sheets, Notes: { A1: 'new' } }, names: { ...SCHEDULE.names, U0_V: 'Sources!$B$3', spare: 'Sources!$A$1' } }));
  const { structure, inputs, formulas, results } = await data(now);
  expect(structure).toEqual(['table Devices: column place is new', 'table Devices: row F9 is new', 'sheet Notes is new', 'name spare is new: Sources!$A$1']);
  expect([inputs, formulas, results]).toEqual([[], [], []]);
});

describe('rows that moved outside of tables', () => {
  type Line = readonly (string | number)[];
  const LINES: readonly Line[] = [['Loads of the hall'], ['name', 'A', 'share'], ['pump', 10], ['fan', 20], ['crane', 30], ['light', 5], ['Sum'], ['Factor', 0.8], ['Design']];
  /** Loads with their shares, a sum, and cells of this and of another sheet that read them. */
  const book = (lines: readonly Line[], edit: (sheet: Record<string, string | number>) => void = () => {}): Uint8Array => {
    const sheet: Record<string, string | number> = {};
    lines.forEach((line, i) => line.forEach((typed, c) => { sheet[`${'ABC'[c]}${i + 1}`] = typed; }));
    const row = (name: string): number => lines.findIndex(([first]) => first === name) + 1;
    const sum = row('Sum');
    lines.forEach(([, load], i) => { if (typeof load === 'number' && i + 1 < sum) sheet[`C${i + 1}`] = `=B${i + 1}/B$${sum}`; });
    sheet[`B${sum}`] = `=SUM(B3:B${sum - 1})`;
    sheet[`B${row('Design')}`] = `=B${sum}*B${row('Factor')}`;
    edit(sheet);
    return calculated(typedBook({ sheets: { 'The loads': sheet, Use: { A1: `='The loads'!B${row('Design')}*2`, A2: `=Factor*1` } }, names: { Factor: `'The loads'!$B$${row('Factor')}` } }));
  };
  const between = async (now: Uint8Array) => JSON.parse((await joulewright(['compare', write('old.xlsx', book(LINES)), write('new.xlsx', now), '--json'])).out.join('\n'));
  const told = (list: readonly { sheet: string; old: { cell: string } | null; new: { cell: string } | null }[]): string[] => list.map(({ sheet, old, new: now }) => `${sheet} ${old?.cell ?? '–'} ${now?.cell ?? '–'}`);

  test('a row put in: its cells, and what it changes', async () => {
    const { structure, inputs, formulas, results } = await between(book([...LINES.slice(0, 4), ['lift', 15], ...LINES.slice(4)]));
    expect(structure).toEqual(['sheet The loads: row 5 is new']);
    expect(told(inputs)).toEqual(['The loads – A5', 'The loads – B5']);
    expect(told(formulas)).toEqual(['The loads – C5']);
    expect(told(results)).toEqual(['The loads C3 C3', 'The loads C4 C4', 'The loads C5 C6', 'The loads C6 C7', 'The loads B7 B8', 'The loads B9 B10', 'Use A1 A1']);
  });
  test('a row taken out', async () => {
    const { structure, inputs, formulas } = await between(book(LINES.filter(([name]) => name !== 'fan')));
    expect(structure).toEqual(['sheet The loads: row 4 of the older state is gone']);
    expect([told(inputs), told(formulas)]).toEqual([['The loads A4 –', 'The loads B4 –'], ['The loads C4 –']]);
  });
  test('a blank row put in changes nothing; an input below it is found where it is now', async () => {
    const now = [...LINES.slice(0, 1), [], ...LINES.slice(1)];
    const moved = await between(book(now, (sheet) => { sheet['B8'] = '=SUM(B4:B7)'; }));
    expect([moved.inputs, moved.formulas, moved.results]).toEqual([[], [], []]);
    const { inputs } = await between(book(now, (sheet) => { sheet['B8'] = '=SUM(B4:B7)'; sheet['B9'] = 0.7; }));
    expect(told(inputs)).toEqual(['The loads B8 B9']);
  });
  test('another formula is told as one', async () => {
    const { formulas } = await between(book([...LINES.slice(0, 1), [], ...LINES.slice(1)], (sheet) => { sheet['B8'] = '=SUM(B4:B7)'; sheet['B10'] = '=B8*B9*2'; }));
    expect(told(formulas)).toEqual(['The loads B9 B10']);
  });
});

test('tolerance', async () => {
  const now = schedulePlanted({ 'Cables!C12': 30.01 });
  expect((await compared(now)).status).toBe(1);
  expect((await compared(now, '--tolerance', '0.1%')).status).toBe(0);
});

test('one file, a file that is none, and inputs that stay as they are', async () => {
  const file = write('a.xlsx', schedule());
  expect(await joulewright(['compare', file])).toMatchObject({ status: 2, out: [], error: [expect.stringContaining('two workbooks are compared')] });
  const bad = write('bad.xlsx', new Uint8Array([1, 2]));
  expect(await joulewright(['compare', file, bad])).toMatchObject({ status: 2, out: [], error: [expect.stringContaining('bad.xlsx: The file is not an .xlsx workbook')] });
  const before = readFileSync(file);
  await joulewright(['compare', file, file]);
  expect(readFileSync(file).equals(before)).toBe(true);
});
