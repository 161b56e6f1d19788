import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { BrowserContextOptions } from 'playwright-core';
import { sheetCells, sheetNamed } from '../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { SAMPLE, type ServedWorkbench, cellOf, openDesk, serveWorkbench, workbenchFolder as dist } from '../support/desk';
import { handMade } from '../support/hand-made-workbook';
import { validateWorkbook } from '../support/validate-xlsx';

/** The workbench as it is served, used as a person uses it. */

jest.setTimeout(60_000);

const root = path.resolve(__dirname, '../..');
let served: ServedWorkbench;
let sample: Buffer;

beforeAll(async () => {
  sample = await readFile(path.join(dist, 'samples', SAMPLE));
  served = await serveWorkbench();
}, 120_000);

afterAll(() => served?.close());

const desk = (options?: BrowserContextOptions) => openDesk(served, options);

const small = handMade({
  sheets: {
    S: '<row r="1"><c r="A1"><v>10</v></c><c r="B1"><f>A1*2</f><v>20</v></c><c r="C1"><f>_xldudf_JW_CABLE_K("Cu","XLPE")</f><v>143</v></c></row>'
      + '<row r="2"><c r="A2"><f>CUBEVALUE("x")</f><v>7</v></c></row>',
  },
});
/** Where things stand on the schedule of the sample: found, not written down, since the sample grows. */
function schedule() {
  const workbook = openWorkbook(new Uint8Array(sample));
  const cells = sheetCells(workbook, sheetNamed(workbook, 'Cables'));
  const table = workbook.facts.tables.find(({ sheet }) => sheet === 'Cables')!;
  const column = (name: string): string => cells.find(({ value, row }) => row === table.box.top && value === name)!.address.replace(/\d/g, '');
  const first = table.box.top + 2;
  const verdict = cells.find(({ formula, value }) => /_xldudf_JW_LETTHROUGH_TEST/i.test(formula ?? '') && value === 'FAIL')!;
  return {
    heading: `${column('length')}${table.box.top + 1}`, length: `${column('length')}${first}`, name: `A${first}`, verdict: verdict.address,
    fault: cells.find(({ formula, row }) => row === first - 1 && /_xldudf_JW_FAULT_3PH/i.test(formula ?? ''))!.address,
    free: (below: number) => `C${table.box.bottom + 6 + below}`,
  };
}

test('the sample opens with the values that its file stores, and the pane explains them', async () => {
  const at = await desk();
  expect(await at.status()).toMatch(/^\d{3,} formulas, all as stored\.$/);
  expect(await at.page.title()).toContain(SAMPLE);
  await at.sheet('Cables');
  const { length, verdict, fault } = schedule();
  expect(await at.value(length)).toBe(String(cellOf(sample, 'Cables', length)!.value));
  expect(Number.parseFloat(await at.value(fault))).toBeCloseTo(cellOf(sample, 'Cables', fault)!.value as number, 3);
  expect(await at.value(verdict)).toBe('FAIL');
  const pane = await at.page.locator('#pane').innerText();
  expect(pane).toContain('JW.LETTHROUGH_TEST');
  expect(pane).toContain('IEC 60364-4-43');
  expect(await at.page.locator('.wb-standing').innerText()).toBe('A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.');
  expect(at.troubles).toEqual([]);
});

test('a formula of ours is proposed, explained while it is typed, and worked out', async () => {
  const at = await desk();
  await at.sheet('Cables');
  const { free } = schedule();
  await at.go(free(0));
  await at.page.keyboard.type('=JW.CABLE_W', { delay: 15 });
  const proposals = at.page.locator('.o-autocomplete-dropdown');
  await proposals.waitFor();
  expect(await proposals.innerText()).toContain('JW.CABLE_WITHSTAND');
  await at.page.keyboard.type('ITHSTAND(143,', { delay: 15 });
  const help = at.page.locator('.o-formula-assistant').first();
  await help.waitFor();
  const words = await help.innerText();
  expect(words).toContain('csa_mm2');
  expect(words).toMatch(/above 0, up to 3000 mm²/);
  expect(words).toContain('IEC 60364-4-43');
  await at.page.keyboard.press('Escape');
  await at.page.keyboard.press('Escape');
  await at.type(free(0), '=JW.CABLE_K("Cu","XLPE")');
  expect(await at.value(free(0))).toBe('143 A√s/mm²');
  await at.type(free(1), '=JW.CABLE_WITHSTAND(143,"185 kg")');
  expect(await at.value(free(1))).toBe('#VALUE!');
  expect(await at.page.locator('#pane .jw-reason').first().innerText()).toMatch(/kg.*mm²/);
  expect(at.troubles).toEqual([]);
});

test('an edited input is worked through, saved into the bytes of the file, and reads back', async () => {
  const at = await desk();
  await at.sheet('Cables');
  const { free, length, fault } = schedule();
  const before = await at.value(fault);
  await at.type(length, '2000');
  expect(await at.page.locator('#file-state').innerText()).toBe('not saved');
  const after = await at.value(fault);
  expect(Number.parseFloat(after)).toBeLessThan(Number.parseFloat(before));
  await at.type(free(0), '=JW.CABLE_K("Cu","XLPE")*2');
  const { name, bytes } = await at.save();
  expect(name).toBe(SAMPLE);
  await at.said(/2 cells edited, \d+ formulas recalculated/);
  expect(await at.page.locator('#file-state').innerText()).toBe('');
  expect(validateWorkbook(bytes)).toEqual([]);
  expect(cellOf(bytes, 'Cables', length)!.value).toBe(2000);
  expect(cellOf(bytes, 'Cables', free(0))).toMatchObject({ value: 286, formula: '_xldudf_JW_CABLE_K("Cu","XLPE")*2' });
  expect(cellOf(bytes, 'Cables', fault)!.value as number).toBeCloseTo(Number.parseFloat(after), 3);
  expect(cellOf(bytes, 'Devices', 'A9')!.value).toEqual(cellOf(sample, 'Devices', 'A9')!.value);

  await at.openFile('again.xlsx', bytes);
  await at.said(/formulas, all as stored/);
  expect(await at.page.locator('#file-name').innerText()).toBe('again.xlsx');
  expect(at.troubles).toEqual([]);
});

test('saved without an edit the file is the very same bytes', async () => {
  const at = await desk();
  const { name, bytes } = await at.save();
  expect(name).toBe(SAMPLE);
  expect(Buffer.compare(Buffer.from(bytes), sample)).toBe(0);
  await at.said(/nothing is changed/);
});

test('a file that is no workbook gives words, and the open one stays', async () => {
  const at = await desk();
  await at.openFile('letter.xlsx', new TextEncoder().encode('Dear Sir or Madam'));
  await at.said(/letter\.xlsx was not opened\. /);
  expect(await at.page.locator('#file-name').innerText()).toBe(SAMPLE);
  await at.sheet('Cables');
  const { name } = schedule();
  expect(await at.value(name)).toBe(cellOf(sample, 'Cables', name)!.value);
  expect(at.troubles).toEqual([]);
});

test('what is not worked out here is told and not shown as a value; it is not saved either', async () => {
  const at = await desk();
  await at.openFile('small.xlsx', small);
  await at.said(/3 formulas, 2 as stored/);
  await at.page.locator('#notices-title').click();
  expect(await at.page.locator('#notice-list').innerText()).toMatch(/S!A2 is not worked out here, its stored value stays in the file: .*CUBEVALUE/);
  await at.type('D1', '=CUBEVALUE(1)');
  expect(await at.value('D1')).toMatch(/^#/);
  await at.page.locator('#save').click();
  await at.said(/Not saved\. S!D1: =CUBEVALUE\(1\)/);
  await at.type('D1', '=LET(x,A1,x^2)+1');
  expect(await at.value('D1')).toBe('101');
  const { bytes } = await at.save();
  expect(cellOf(bytes, 'S', 'D1')).toMatchObject({ value: 101, formula: '_xlfn.LET(_xlpm.x,A1,_xlpm.x^2)+1' });
  expect(cellOf(bytes, 'S', 'A2')!.value).toBe(7);
  expect(at.troubles).toEqual([]);
});

test('an unsaved change is asked about before another file is opened, and before the page is left', async () => {
  const at = await desk();
  await at.sheet('Cables');
  await at.type(schedule().free(0), '1');
  const asked: string[] = [];
  at.page.once('dialog', (dialog) => {
    asked.push(dialog.message());
    void dialog.dismiss();
  });
  await at.openFile('small.xlsx', small);
  await at.page.waitForTimeout(200);
  expect(asked[0]).toMatch(/cable-schedule\.xlsx has changes that are not saved/);
  expect(await at.page.locator('#file-name').innerText()).toBe(SAMPLE);
  at.page.once('dialog', (dialog) => void dialog.dismiss());
  await at.page.locator('#sample').selectOption('checker.xlsx');
  await at.page.waitForFunction((open) => document.querySelector<HTMLSelectElement>('#sample')!.value === open, SAMPLE);
  const [leaving] = await Promise.all([at.page.waitForEvent('dialog'), at.page.close({ runBeforeUnload: true })]);
  expect(leaving.type()).toBe('beforeunload');
  await leaving.accept();
});

test('what Save would lose is not offered, and refused in words where a key asks for it', async () => {
  const at = await desk();
  expect(await at.page.locator('.o-topbar-menu').allInnerTexts()).toEqual(['Edit', 'View']);
  await at.page.locator('.o-topbar-menu', { hasText: 'Edit' }).click();
  expect(await at.page.locator('.o-menu').innerText()).not.toMatch(/cut|row|column|table/i);
  await at.page.keyboard.press('Escape');
  expect(await at.page.locator('.o-add-sheet').isVisible()).toBe(false);
  await at.sheet('Cables');
  await at.go(schedule().length);
  await at.page.keyboard.press('Control+b');
  await at.said(/Formats stay as they are/);
  await at.page.keyboard.press('Control+x');
  await at.said(/Cut and paste would move references/);
  await at.type(schedule().heading, 'reach');
  await at.said(/heading of the table/);
  const { bytes } = await at.save();
  expect(Buffer.compare(Buffer.from(bytes), sample)).toBe(0);
  expect(at.troubles).toEqual([]);
});

test('a workbook can be dropped on the page', async () => {
  const at = await desk();
  const data = await at.page.evaluateHandle((content) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([new Uint8Array(content)], 'dropped.xlsx'));
    return transfer;
  }, [...small]);
  await at.page.dispatchEvent('body', 'dragenter', { dataTransfer: data });
  expect(await at.page.locator('#drop').isVisible()).toBe(true);
  await at.page.dispatchEvent('body', 'drop', { dataTransfer: data });
  await at.said(/3 formulas/);
  expect(await at.page.locator('#drop').isVisible()).toBe(false);
  expect(await at.page.locator('#file-name').innerText()).toBe('dropped.xlsx');
});

test.each<[string, BrowserContextOptions]>([
  ['1280 × 800', { viewport: { width: 1280, height: 800 } }],
  ['1024 × 768', { viewport: { width: 1024, height: 768 } }],
  ['dark', { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' }],
  ['narrow', { viewport: { width: 600, height: 800 } }],
])('the page holds together: %s', async (_, options) => {
  const at = await desk(options);
  const { width, height } = options.viewport!;
  const box = async (selector: string) => (await at.page.locator(selector).boundingBox())!;
  expect(await at.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  expect((await box('#grid canvas')).width).toBeGreaterThan(450);
  const foot = await box('#foot');
  expect(foot.y + foot.height).toBeLessThanOrEqual(height);
  const folded = await at.page.locator('#pane').isHidden();
  await at.page.locator('#fold').click();
  expect(await at.page.locator('#pane').isHidden()).toBe(!folded);
  expect(await at.page.locator('#fold').getAttribute('aria-expanded')).toBe(String(folded));
  expect(at.troubles).toEqual([]);
});

test("the grid's files stay separate and unchanged, with their licences", async () => {
  const given = (file: string) => readFile(path.join(dist, 'vendor', file));
  const original = (file: string) => readFile(path.join(root, 'node_modules', file));
  for (const file of ['o_spreadsheet.iife.js', 'o_spreadsheet.xml', 'o_spreadsheet.css']) {
    expect(Buffer.compare(await given(file), await original(`@odoo/o-spreadsheet/dist/${file}`))).toBe(0);
  }
  expect(Buffer.compare(await given('owl.iife.js'), await original('@odoo/owl/dist/owl.iife.js'))).toBe(0);
  expect(await readFile(path.join(dist, 'app.js'), 'utf8')).not.toContain('o-spreadsheet-Composer');
  const notice = await readFile(path.join(dist, 'vendor/NOTICE.txt'), 'utf8');
  for (const licence of ['LICENSE.o-spreadsheet.txt', 'LICENSE.owl.txt', 'LICENSE.bootstrap.txt']) {
    expect(notice).toContain(licence);
    expect((await given(licence)).length).toBeGreaterThan(500);
  }
  const versions = async (name: string) => (JSON.parse(await readFile(path.join(root, 'node_modules', name, 'package.json'), 'utf8')) as { version: string }).version;
  expect(notice).toContain(`o-spreadsheet ${await versions('@odoo/o-spreadsheet')}`);
  expect(notice).toContain(`Owl ${await versions('@odoo/owl')}`);
});

test('the bar is reached with the keyboard', async () => {
  const at = await desk();
  await at.page.locator('#sample').focus();
  const reached: string[] = [];
  for (let step = 0; step < 3; step++) {
    await at.page.keyboard.press('Tab');
    reached.push(await at.page.evaluate(() => document.activeElement?.id ?? ''));
  }
  expect(reached).toEqual(['open', 'save', 'fold']);
  await at.page.keyboard.press('Enter');
  expect(await at.page.locator('#pane').isHidden()).toBe(true);
});
