import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { bundle } from '../support/bundle';
import { launchChromium, openPage } from '../support/chromium';
import { faintTexts } from '../support/contrast';
import { paneLooks } from '../support/pane-looks';
import { type StaticServer, serveFolder } from '../support/static-server';

jest.setTimeout(30_000);

const root = path.resolve(__dirname, '../..');
let folder: string;
let server: StaticServer;
let browser: Browser;

beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-pane-'));
  await bundle(path.join(__dirname, 'pages/pane.ts'), folder, 'pane.js');
  await cp(path.join(__dirname, 'pages/pane.html'), path.join(folder, 'index.html'));
  await writeFile(path.join(folder, 'pane.css'), paneLooks());
  await cp(path.join(root, 'src/excel/static/assets/icon-16.png'), path.join(folder, 'icon.png'));
  server = await serveFolder(folder);
  browser = await launchChromium();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

const works = {
  cells: {
    Schedule: { B2: 115, C2: 25, D2: null, B3: 94, C3: 240, D3: 2, F2: '<img src=x onerror="window.hacked=1">' },
  },
};

type Driver = { start(sheets: unknown): void; select(selection: unknown): void; stop(): void; hold(): void; release(): void };
declare const driver: Driver;

const cell = (address: string, formula: string, value: unknown, more: object = {}) => ({ kind: 'cell', sheet: 'Schedule', row: 1, column: 6, address, formula, value, ...more });

async function pane(options: BrowserContextOptions = {}): Promise<{ page: Page; troubles: string[]; select: (selection: unknown) => Promise<void>; text: () => Promise<string> }> {
  const { page, troubles } = await openPage(browser, { viewport: { width: 320, height: 700 }, ...options });
  await page.goto(`${server.origin}/`);
  await page.evaluate((sheets) => driver.start(sheets), works);
  return {
    page,
    troubles,
    select: (selection) => page.evaluate((given) => driver.select(given), selection),
    text: () => page.locator('#pane').innerText(),
  };
}

test('says what to do while nothing is selected in one sentence and one button, and what it is not', async () => {
  const { page, text, troubles } = await pane();
  expect(await page.getByRole('tab').allInnerTexts()).toEqual(expect.arrayContaining(['Find', 'Fill', 'Explain', 'Cautions']));
  const first = page.getByRole('tabpanel', { name: 'Explain' });
  expect((await first.innerText()).split('\n').filter((line) => line.trim() !== '')).toEqual([
    'Select a cell with a JW formula to see its working, source and cautions, or find the function for what you want to know.',
    'Find a function',
  ]);
  expect(await text()).toContain('A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.');
  await first.getByRole('button').click();
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('What do you want to know?');
  expect(troubles).toEqual([]);
});

test('the tabs are one stop of the Tab key and are walked with the arrow keys', async () => {
  const { page } = await pane();
  await page.keyboard.press('Tab');
  const reached = () => page.evaluate(() => [document.activeElement?.textContent, document.querySelector('[role=tab][aria-selected=true]')?.textContent]);
  expect(await reached()).toEqual(['Explain', 'Explain']);
  await page.keyboard.press('ArrowRight');
  expect(await reached()).toEqual(['Cautions', 'Cautions']);
  await page.keyboard.press('Home');
  expect(await reached()).toEqual(['Find', 'Find']);
  await page.keyboard.press('ArrowLeft');
  expect((await reached())[0]).toBe(await page.getByRole('tab').last().innerText());
  expect(await page.getByRole('tabpanel').count()).toBe(1);
});

test('shows address, formula, value with unit, working, source, defaults and caution', async () => {
  const { page, select, text, troubles } = await pane();
  await select(cell('G2', '=JW.CABLE_WITHSTAND(B2,C2,D2)', 8265625));
  await page.getByRole('heading', { name: 'G2' }).waitFor();
  const shown = await text();
  for (const part of ['=JW.CABLE_WITHSTAND(B2,C2,D2)', '8.26563E+06 A²s', '(k·S·n)²; k 115, csa_mm2 25 mm², runs 1', 'runs=1', 'IEC 60364-4-43:2023, 434.5.2', 'Adiabatic']) expect(shown).toContain(part);
  const rows = await page.locator('.jw-working tbody').first().locator('tr').allInnerTexts();
  expect(rows.map((row) => row.split('\t'))).toEqual([['k', '115'], ['csa_mm2', '25 mm²'], ['runs', '1']]);
  expect(await page.locator('[role=status]').textContent()).toBe('G2: 8.26563E+06 A²s');
  expect(troubles).toEqual([]);
});

test('gives a bare #NUM! its reason', async () => {
  const { page, select } = await pane();
  await select(cell('G2', '=JW.CABLE_WITHSTAND(B2,25000)', { error: '#NUM!' }));
  expect(await page.locator('.jw-body > .jw-reason').innerText()).toBe('csa_mm2: 25000 is outside above 0, up to 3000 mm²');
  expect(await page.locator('.jw-value').innerText()).toBe('#NUM!');
});

test('opens the call that an error comes from, and says its reason once', async () => {
  const { page, select } = await pane();
  await select(cell('G2', '=JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","paper"),C2)', { error: '#VALUE!' }));
  await page.locator('.jw-call').nth(1).waitFor();
  expect(await page.locator('.jw-call').evaluateAll((all) => all.map((each) => (each as HTMLDetailsElement).open))).toEqual([true, true]);
  expect((await page.locator('.jw-reason').allInnerTexts()).map((each) => each.split(' (')[0])).toEqual(['insulation: got "paper", takes PVC', 'Hands on the error of JW.CABLE_K.']);
});

test('lists nested calls outermost first; the inner ones open by keyboard', async () => {
  const { page, select } = await pane();
  await select(cell('G3', '=JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","XLPE"),C3,D3)', 4711));
  await page.locator('.jw-call').nth(1).waitFor();
  expect(await page.locator('.jw-name').allInnerTexts()).toEqual(['JW.CABLE_WITHSTAND', 'JW.CABLE_K']);
  expect(await page.locator('.jw-call').evaluateAll((all) => all.map((each) => (each as HTMLDetailsElement).open))).toEqual([true, false]);
  expect(await page.locator('.jw-disagrees').innerText()).toMatch(/the cell shows 4711\. Recalculate it\./);
  // The tabs are one stop, then the two cells that it reads, the outer call with its way to the handbook, the inner call.
  for (let stop = 0; stop < 6; stop += 1) await page.keyboard.press('Tab');
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
  expect(outline).toBe('solid');
  await page.keyboard.press('Enter');
  expect(await page.locator('.jw-call').nth(1).evaluate((each) => (each as HTMLDetailsElement).open)).toBe(true);
});

test('a recalculation keeps open what the reader opened; another cell starts afresh', async () => {
  const { page, select } = await pane();
  const opened = () => page.locator('.jw-call').evaluateAll((all) => all.map((each) => (each as HTMLDetailsElement).open));
  const nested = (address: string, value: unknown) => select(cell(address, '=JW.CABLE_WITHSTAND(JW.CABLE_K("Cu","XLPE"),C3,D3)', value));
  await nested('G3', 4711);
  await page.locator('.jw-call').nth(1).locator('summary').click();
  await nested('G3', 4712);
  await page.getByText('the cell shows 4712').waitFor();
  expect(await opened()).toEqual([true, true]);
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('JW.CABLE_K');
  await nested('G4', 4712);
  await page.getByRole('heading', { name: 'G4' }).waitFor();
  expect(await opened()).toEqual([true, false]);
});

test('tells of a spill, a larger selection, a cell without formula and a trouble of the host', async () => {
  const { page, select, text } = await pane();
  await select(cell('G4', '=JW.SHOW_STEPS("CABLE_WITHSTAND",B2,C2)', 'k', { spilledFrom: 'G3', part: [1, 0], within: 'G4:H5' }));
  await page.getByRole('heading', { name: 'G4 in G4:H5' }).waitFor();
  expect(await text()).toContain('Filled by the formula in G3.');
  await select(cell('B2', '', 115));
  await page.getByRole('heading', { name: 'B2' }).waitFor();
  expect(await text()).toContain('No formula in this cell.');
  await select(cell('B9', '', ' '));
  await page.getByRole('heading', { name: 'B9' }).waitFor();
  expect(await page.locator('.jw-value').innerText()).toBe('a space');
  await select({ kind: 'trouble', words: 'The workbook cannot be read while a cell is being edited.' });
  expect(await page.locator('.jw-trouble').innerText()).toBe('The workbook cannot be read while a cell is being edited.');
});

test('shows text of the sheet as text, never as markup', async () => {
  const { page, select, text } = await pane();
  await select(cell('G2', '=JW.CABLE_WITHSTAND(F2,"<b>x</b>")', { error: '#VALUE!' }));
  await page.locator('.jw-body > .jw-reason').waitFor();
  expect(await text()).toContain('got "<img src=x onerror=');
  expect(await page.locator('#pane img, #pane b').count()).toBe(0);
  expect(await page.evaluate(() => 'hacked' in window)).toBe(false);
});

test('an answer that comes after another cell was selected is not shown', async () => {
  const { page, select } = await pane();
  await page.evaluate(() => driver.hold());
  await select(cell('G2', '=JW.CABLE_WITHSTAND(B2,C2)', 8265625));
  await select(cell('B2', '', 115));
  await page.getByRole('heading', { name: 'B2' }).waitFor();
  await page.evaluate(() => driver.release());
  await page.waitForTimeout(100);
  expect(await page.locator('h2').innerText()).toBe('B2');
});

test('taken down, it leaves nothing behind and hears nothing more', async () => {
  const { page } = await pane();
  await page.evaluate(() => driver.stop());
  expect(await page.locator('#pane').innerHTML()).toBe('');
  expect(await page.evaluate(() => (window as unknown as { watched(): boolean }).watched())).toBe(false);
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: nothing sticks out sideways and text stands out from its ground', async (colorScheme) => {
    const { page, select } = await pane({ viewport: { width, height: 900 }, colorScheme });
    await select(cell('G3', '=JW.CABLE_WITHSTAND(JW.CABLE_K("aluminium","mineral covered"),"25000 mm²",D3)', { error: '#NUM!' }));
    await page.locator('.jw-call').nth(1).waitFor();
    await page.locator('.jw-call').nth(1).locator('summary').click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await faintTexts(page)).toEqual([]);
  });
});
