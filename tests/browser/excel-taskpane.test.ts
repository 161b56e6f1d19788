import { existsSync } from 'node:fs';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { catalogue } from '../../src/sheet/catalogue';
import { bundle } from '../support/bundle';
import { launchChromium, openPage } from '../support/chromium';
import { type StaticServer, serveFolder } from '../support/static-server';

/** The task pane as it is served, on a page whose Office script is a strict stand-in with a workbook of a few cells. */

jest.setTimeout(30_000);

const dist = path.resolve(__dirname, '../../dist/excel');
let server: StaticServer;
let browser: Browser;
let folder: string;
let office: string;

beforeAll(async () => {
  if (!existsSync(path.join(dist, 'taskpane.js'))) throw new Error('dist/excel is missing: run `npm run build` first');
  folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-office-'));
  await bundle(path.join(__dirname, 'pages/fake-office.ts'), folder, 'office.js');
  office = await readFile(path.join(folder, 'office.js'), 'utf8');
  server = await serveFolder(dist);
  browser = await launchChromium();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

declare const fake: {
  open(workbook: unknown): void;
  select(sheet: string, ...areas: string[]): void;
  change(sheet: string, address: string, cell: unknown): void;
  fail(code: string | undefined): void;
  selection(): string;
  cell(sheet: string, address: string): { value: unknown; formula?: string } | undefined;
  wrote(): { options: unknown; addresses: string[] }[];
  facts(): { associated: number; syncs: number; listening: number };
};

const SHEET = "Cable's list, B";
const works = {
  sheets: {
    [SHEET]: {
      A1: { value: 'ref' }, B1: { value: 'k' }, C1: { value: 'csa_mm2' }, D1: { value: 'withstand' },
      A2: { value: 'W1' }, B2: { value: 115 }, C2: { value: 25 }, D2: { value: 8265625, formula: '=JW.CABLE_WITHSTAND([@k],[@[csa_mm2]])' },
      A3: { value: 'W2' }, B3: { value: 94 }, C3: { value: 24000 }, D3: { value: { error: '#NUM!' }, formula: '=JW.CABLE_WITHSTAND([@k],[@[csa_mm2]])' },
      F2: { value: 8265625, formula: "=JW.CABLE_WITHSTAND(k_site,C2)" },
      F3: { value: { error: '#VALUE!' }, formula: '=JW.CABLE_WITHSTAND(B2,Z9)' },
      F4: { value: { error: '#BUSY!' }, formula: '=JW.CABLE_WITHSTAND(B2,C2)' },
      H2: { value: 'step', formula: '=JW.SHOW_STEPS("CABLE_WITHSTAND",B2,C2)', spills: 'H2:I7' }, I2: { value: 'value' },
      H3: { value: 'k' }, I3: { value: '115' },
    },
    Data: { B2: { value: 115 }, B3: { value: 100 } },
  },
  names: [{ name: 'k_site', formula: '=Data!$B$2' }, { name: 'k_site', formula: '=Data!$B$3', sheet: 'Data' }],
  tables: [{ name: 'cables', sheet: SHEET, at: 'A1:D3', columns: ['ref', 'k', 'csa_mm2', 'withstand'] }],
};

interface Pane {
  page: Page;
  troubles: string[];
  select(sheet: string, ...areas: string[]): Promise<void>;
  heading(name: string): Promise<void>;
}

async function pane(before?: string): Promise<Pane> {
  const { page, troubles } = await openPage(browser, { viewport: { width: 320, height: 800 } });
  await page.route('**/office/office.js', (route) => route.fulfill({ contentType: 'text/javascript', body: `${office}\nfake.open(${JSON.stringify(works)});${before ?? ''}` }));
  await page.goto(`${server.origin}/taskpane.html`);
  return {
    page,
    troubles,
    select: (sheet, ...areas) => page.evaluate(([name, list]) => fake.select(name as string, ...(list as string[])), [sheet, areas]),
    heading: (name) => page.getByRole('heading', { name, exact: true }).waitFor(),
  };
}

test('the page loads functions and pane under its own content policy, and shows the cell that is selected', async () => {
  const { page, troubles, heading } = await pane(`fake.select(${JSON.stringify(SHEET)}, 'D2');`);
  await heading('D2');
  expect(await page.locator('.jw-value').innerText()).toBe('8.26563E+06 A²s');
  expect(await page.evaluate(() => fake.facts().associated)).toBe(catalogue.entries.length);
  expect(await page.locator('meta[http-equiv=Content-Security-Policy]').getAttribute('content')).not.toMatch(/unsafe|https?:/);
  expect(troubles).toEqual([]);
});

test('a row of a table, on a sheet with quote and comma in its name: a bare #NUM! gets its reason', async () => {
  const { page, select, heading } = await pane();
  await select(SHEET, 'D3');
  await heading('D3');
  expect(await page.locator('.jw-body > .jw-reason').innerText()).toBe('csa_mm2: 24000 is outside above 0, up to 3000 mm²');
});

test('a name of the workbook, while a sheet has its own of the same name', async () => {
  const { page, select, heading } = await pane();
  await select(SHEET, 'F2');
  await heading('F2');
  expect(await page.locator('.jw-working tbody').first().innerText()).toMatch(/k\s+115/);
  expect(await page.locator('.jw-disagrees').count()).toBe(0);
});

test('a blank cell that reached the function as 0', async () => {
  const { page, select, heading } = await pane();
  await select(SHEET, 'F3');
  await heading('F3');
  expect(await page.locator('.jw-body > .jw-reason').innerText()).toBe('csa_mm2: is blank or zero, takes above 0, up to 3000 mm²');
  expect(await page.locator('.jw-body').innerText()).toContain('A blank cell reached the function as 0.');
});

test('an error that only Excel knows is shown as it is, with what the sheet gives', async () => {
  const { page, select, heading } = await pane();
  await select(SHEET, 'F4');
  await heading('F4');
  expect(await page.locator('.jw-value').innerText()).toBe('#BUSY!');
  expect(await page.locator('.jw-disagrees').innerText()).toBe('Worked again from the sheet it gives 8265625; the cell shows #BUSY!. Recalculate it.');
});

test('several areas: the active cell is explained and the selection named', async () => {
  const { select, heading } = await pane();
  await select(SHEET, 'D2:D3', 'F2', 'A1', 'B1', 'C1');
  await heading('D2 in D2:D3, F2, A1 and 2 more');
});

test('a cell inside a spill shows the formula that fills it', async () => {
  const { page, select, heading } = await pane();
  await select(SHEET, 'I3');
  await heading('I3');
  expect(await page.locator('.jw-body').innerText()).toMatch(/Filled by the formula in H2\.[\s\S]*=JW\.SHOW_STEPS/);
  expect(await page.locator('.jw-disagrees').count()).toBe(0);
});

test('follows the selection and every recalculation', async () => {
  const { page, select, heading } = await pane();
  await select('Data', 'B2');
  await heading('B2');
  expect(await page.locator('.jw-body').innerText()).toContain('No formula in this cell.');
  await page.evaluate(() => fake.change('Data', 'B2', { value: 13225, formula: '=JW.CABLE_WITHSTAND(115,1)' }));
  await page.locator('.jw-call').waitFor();
  expect(await page.locator('.jw-value').innerText()).toBe('13225 A²s');
});

test('no access to the workbook: words, and the pane comes back with the next selection', async () => {
  const { page, select, heading, troubles } = await pane("fake.fail('AccessDenied');");
  expect(await page.locator('.jw-trouble').innerText()).toBe('Excel does not let the pane read this selection (AccessDenied). Select a cell of a sheet.');
  await page.evaluate(() => fake.fail('InvalidOperationInCellEditMode'));
  await select(SHEET, 'D2');
  await page.locator('.jw-trouble', { hasText: 'A cell is being edited.' }).waitFor();
  await page.evaluate(() => fake.fail(undefined));
  await select(SHEET, 'D2');
  await heading('D2');
  expect(troubles).toEqual([]);
});

/** From a question to the form of a function, for the cell that is selected. */
async function fill({ page }: Pane, name: string): Promise<void> {
  await page.getByRole('tab', { name: 'Find' }).click();
  await page.locator('[type=search]').fill(name);
  await page.keyboard.press('Enter');
  await page.locator('.jw-fill').waitFor();
}

test('a formula is filled in with the column of this row and written as one step of undo', async () => {
  const at = await pane();
  await at.select(SHEET, 'D3');
  await at.heading('D3');
  await fill(at, 'CABLE_WITHSTAND');
  await at.select(SHEET, 'B3');
  await at.page.getByText('Use the selected cell').waitFor();
  await at.page.getByRole('button', { name: 'Take the selected cell into k' }).click();
  expect(await at.page.locator('#jw-fill-k').inputValue()).toBe('=[@k]');
  await at.page.locator('#jw-fill-csa_mm2').fill('240');
  await at.page.locator('.jw-preview', { hasText: '5.08954E+08' }).waitFor();
  await at.page.getByRole('button', { name: 'Write formula' }).click();
  await at.page.getByText('Undo in the sheet takes it back.').waitFor();
  expect(await at.page.evaluate((sheet) => [fake.cell(sheet, 'D3')?.formula, fake.selection()], SHEET)).toEqual(['=JW.CABLE_WITHSTAND([@k],240)', `${SHEET}!D3`]);
  expect(await at.page.evaluate(() => fake.wrote())).toEqual([{ options: { delayForCellEdit: true, mergeUndoGroup: true }, addresses: [`${SHEET}!D3`] }]);
  expect(at.troubles).toEqual([]);
});

test('a locked cell of a protected sheet, and a cell in edit, are refused in words', async () => {
  const at = await pane(`fake.open({ ...${JSON.stringify(works)}, unlocked: { Data: ['C3'] } });`);
  await at.select('Data', 'C2');
  await at.heading('C2');
  await fill(at, 'CORE_VERSION');
  const write = at.page.getByRole('button', { name: 'Write formula' });
  await write.click();
  await at.page.locator('.jw-outcome', { hasText: 'C2 is locked: the sheet Data is protected. Unprotect it in Excel first.' }).waitFor();
  await at.select('Data', 'C3');
  await at.page.getByRole('button', { name: 'Use the selected cell' }).click();
  await write.click();
  await at.page.getByText('Written into Data!C3.').waitFor();
  await at.page.evaluate(() => fake.fail('InvalidOperationInCellEditMode'));
  await write.click();
  await at.page.locator('.jw-outcome', { hasText: 'A cell is being edited.' }).waitFor();
  expect(await at.page.evaluate(() => fake.wrote().flatMap(({ addresses }) => addresses))).toEqual(['Data!C3']);
  expect(at.troubles).toEqual([]);
});

test('cautions are read off the sheets, a spill once; a jump shows the cell, and a hidden sheet is named', async () => {
  const at = await pane(`fake.open({ ...${JSON.stringify(works)}, hidden: ['Data'] }); fake.change('Data', 'D1', { value: 'FAIL' }); fake.select(${JSON.stringify(SHEET)}, 'A1');`);
  await at.page.getByRole('tab', { name: 'Cautions' }).click();
  const view = at.page.getByRole('tabpanel', { name: 'Cautions' });
  await view.getByText('formulas with JW functions in').waitFor();
  expect(await view.locator('.jw-note').first().innerText()).toBe(`6 formulas with JW functions in ${SHEET}: 3 errors, 1 not up to date.`);
  await view.getByRole('button', { name: 'D3', exact: true }).click();
  await at.page.waitForFunction((wanted) => fake.selection() === wanted, `${SHEET}!D3`);
  await view.getByLabel('Where to look').selectOption('book');
  await view.getByRole('button', { name: 'Data!D1' }).click();
  await view.getByText('The sheet Data is hidden. Show it first.').waitFor();
  expect(at.troubles).toEqual([]);
});

test('the check runs on the file that Excel hands over', async () => {
  const file = [...await readFile(path.resolve(__dirname, '../../sample-workbooks/cable-schedule.xlsx'))];
  const at = await pane();
  await at.page.getByRole('tab', { name: 'Cautions' }).click();
  await at.page.getByRole('button', { name: 'Check', exact: true }).click();
  await at.page.locator('.jw-check .jw-trouble', { hasText: 'Excel did not hand the workbook over.' }).waitFor();
  await at.page.evaluate(([bytes, book]) => fake.open({ ...(book as object), file: bytes }), [file, works] as const);
  await at.page.getByRole('button', { name: 'Check', exact: true }).click();
  await at.page.getByText(/^\d{3,} of \d{3,} formulas worked again from what the sheets hold/).waitFor({ timeout: 20_000 });
  expect(at.troubles).toEqual([]);
});

test('outside Excel the page says where it belongs', async () => {
  const { page } = await openPage(browser);
  await page.goto(`${server.origin}/taskpane.html`);
  await page.getByText('This page belongs to Excel').waitFor();
});
