import type { SheetPlan } from '../../src/pane/sheet-plan';
import { neededSheets } from '../../src/pane/sheets/needed';
import { columnsOf, starterPlans, titleOf } from '../../src/pane/sheets/starter';
import { starterPlans as builtPlans } from '../../src/samples/starter';
import { openBook } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';
import { typedFormula } from '../../src/sheet/explain/calls-in-formula';
import { parseBox, addressOf } from '../../src/sheet/xlsx/address';
import { starter } from '../../src/samples/starter';

const nothing = { sheets: ['Sheet1'], tables: [], names: [] };
const names = (plans: readonly SheetPlan[]): string[] => plans.map(({ name }) => name);

test('the plans are those that the builder of the starter workbook makes', async () => {
  expect(await starterPlans()).toEqual(builtPlans());
});

test('every formula, value, table and name of the starter workbook stands in the plans', async () => {
  const book = openBook(await starter(), customFunctions);
  const plans = await starterPlans();
  const planned = new Map<string, string>();
  for (const plan of plans) {
    for (const { range, formula, value } of plan.cells) {
      const box = parseBox(range)!;
      if (formula !== undefined) {
        for (let row = box.top; row <= box.bottom; row += 1) planned.set(`${plan.name}!${addressOf(row, box.left)}`, formula);
      } else if (value !== undefined) expect(book.value(plan.name, range)).toBe(value);
    }
  }
  const inFile = book.formulaCells.map(({ sheet, row, column, formula }) => [`${sheet.name}!${addressOf(row, column)}`, `=${typedFormula(formula)}`]);
  expect(Object.fromEntries(planned)).toEqual(Object.fromEntries(inFile));
  expect(planned.size).toBeGreaterThan(1000);
  expect(names(plans)).toEqual(['Job', 'Boards', 'Cables', 'Devices', 'Points', 'Options', 'Cost', 'Compare', 'Check', 'Lists']);
});

test('columns come with their units, typed ones told from worked ones', async () => {
  const plans = await starterPlans();
  const boards = columnsOf(plans.find(({ name }) => name === 'Boards')!);
  expect(boards.slice(0, 3)).toEqual([{ name: 'board', unit: '', worked: false }, { name: 'fed from', unit: '', worked: false }, { name: 'length', unit: 'm', worked: false }]);
  expect(boards).toContainEqual({ name: 'Ik3 max', unit: 'kA', worked: true });
  for (const plan of plans) {
    expect(titleOf(plan)).not.toBe('');
    for (const { name } of columnsOf(plan)) expect(name).not.toBe('');
    expect(plan.print).toMatchObject({ paper: 'A3', orientation: 'landscape' });
  }
});

test('what a chosen sheet reads comes along, also through another sheet', async () => {
  const plans = await starterPlans();
  expect(names(neededSheets(plans, ['Lists'], nothing).alongside)).toEqual([]);
  const { chosen, alongside, troubles } = neededSheets(plans, ['Cables'], nothing);
  expect(names(chosen)).toEqual(['Cables']);
  expect(names(alongside)).toEqual(['Job', 'Boards', 'Devices', 'Points', 'Lists']);
  expect(troubles).toEqual([]);
});

test('what the workbook has is not brought again; what stands in the way is told', async () => {
  const plans = await starterPlans();
  const brought = (wanted: string[]) => plans.filter(({ name }) => wanted.includes(name));
  const of = (wanted: string[]) => ({
    sheets: wanted, tables: brought(wanted).flatMap(({ tables = [] }) => tables.map(({ name }) => name)), names: brought(wanted).flatMap((plan) => (plan.names ?? []).map(({ name }) => name)),
  });
  const present = of(['Job', 'Boards', 'Devices', 'Points', 'Lists']);
  expect(neededSheets(plans, ['Cables'], present)).toMatchObject({ alongside: [], troubles: [] });
  expect(neededSheets(plans, ['Boards'], present).troubles).toEqual(['A sheet named Boards is there already. Rename it first, or use it as it is.']);
  expect(neededSheets(plans, ['Boards'], { ...nothing, sheets: ['JOB'] }).troubles).toEqual(['A sheet named Job is there already, without what the others read of it. Rename it first, or use it as it is.']);
  expect(neededSheets(plans, ['Lists'], { ...nothing, names: ['LIST_SIZE'] }).troubles).toEqual(['list_size, which the sheet Lists brings, is defined in this workbook already.']);
});

test('words in texts and column names do not count as tables or names', () => {
  const plan = (name: string, formula: string, table?: string): SheetPlan => ({ name, widths: [], cells: [{ range: 'A1', formula }], ...(table === undefined ? {} : { tables: [{ name: table, range: 'A1:A2' }] }) });
  const starterOf = [plan('One', '="Two"&Three[Two]'), plan('B', '=1', 'Two'), plan('C', '=1', 'Three')];
  expect(names(neededSheets(starterOf, ['One'], nothing).alongside)).toEqual(['C']);
});
