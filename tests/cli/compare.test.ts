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
