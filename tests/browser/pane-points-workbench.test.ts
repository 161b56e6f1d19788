import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { sheetCells, sheetNamed } from '../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { type ServedWorkbench, openDesk, serveWorkbench, workbenchFolder as dist } from '../support/desk';
import { validateWorkbook } from '../support/validate-xlsx';

/** Points, charts, sheets and self-test beside the workbench's grid, on a sample. */

jest.setTimeout(60_000);

let served: ServedWorkbench;

beforeAll(async () => {
  served = await serveWorkbench();
}, 120_000);
afterAll(() => served?.close());

test('pasted points are written into the sample, checked by its own formula, saved, and drawn from the cells', async () => {
  const at = await openDesk(served);
  const { page, troubles } = at;
  await at.sheet('Boards');
  await at.tab('Points').click();
  await page.locator('#pane textarea').fill('I (kA)\tt (s)\n0.9\t10\n1.1\t5\n1.6\t1\n2.4\t0.2\n3.6\t0.04');
  for (const [label, value] of Object.entries({ 'Voltage, V': '415', Source: 'invented', 'Issue date': '2024-05', 'First cell': 'Boards!B30' })) await page.locator('#pane').getByLabel(label, { exact: true }).fill(value);
  await page.locator('#pane').getByRole('button', { name: 'Write to the sheet' }).click();
  await page.getByText('Written to Boards!B30:C41; the points are Boards!B36:C41.').waitFor();
  await page.getByText('CURVE_CHECK in the sheet says: no findings').waitFor();

  await at.tab('Charts').click();
  await page.locator('#pane').getByLabel('Range', { exact: true }).fill('Boards!B36:C41');
  await page.locator('#pane').getByRole('button', { name: 'Add', exact: true }).click();
  await page.locator('.jw-plot[aria-label*="curve from points ±10 %: 10 points"]').waitFor();
  await page.locator('#pane').getByRole('button', { name: 'Chart in the sheet' }).click();
  await page.getByText('New sheets are not written into an open file here, nor charts').waitFor();

  const { bytes } = await at.save();
  expect(validateWorkbook(bytes)).toEqual([]);
  const workbook = openWorkbook(bytes);
  const cells = new Map(sheetCells(workbook, sheetNamed(workbook, 'Boards')).map((cell) => [cell.address, cell]));
  expect([cells.get('C33')?.value, cells.get('B37')?.value, cells.get('C41')?.value, cells.get('C35')?.value]).toEqual([415, 900, 0.04, 'no findings']);
  // A date of issue stays the text that was typed.
  expect(cells.get('C32')?.value).toBe('2024-05');
  expect(cells.get('C35')?.formula).toMatch(/^_xldudf_JW_CURVE_CHECK\(\$?B\$?36:/);
  expect(troubles).toEqual([]);
});

test('a cell of the sample draws its call; sheets offer a sample instead; the self-test runs', async () => {
  const at = await openDesk(served);
  const { page, troubles } = at;
  const cables = new Uint8Array(await readFile(path.join(dist, 'samples/cable-schedule.xlsx')));
  const workbook = openWorkbook(cables);
  const withstand = sheetCells(workbook, sheetNamed(workbook, 'Cables')).find(({ formula }) => /_xldudf_JW_CABLE_WITHSTAND/i.test(formula ?? ''))!;
  await at.sheet('Cables');
  await at.go(withstand.address);
  await at.tab('Charts').click();
  await page.locator('#pane').getByRole('button', { name: 'Draw the selected cell’s formula' }).click();
  await page.locator('.jw-plot[aria-label*="cable, k²S²"]').waitFor();

  await at.tab('Sheets').click();
  await page.locator('#pane').getByLabel(/^Check/).check();
  await page.locator('.jw-view-sheets .jw-disagrees').first().waitFor();

  await at.tab('Self-test').click();
  await page.locator('#pane').getByRole('button', { name: 'Run the self-test' }).click();
  await page.locator('.jw-headline').waitFor();
  const [, agree, of] = /^(\d+) of (\d+) agree$/.exec(await page.locator('.jw-headline').innerText())!;
  expect(agree).toBe(of);
  expect(Number(of)).toBeGreaterThan(100);
  expect(troubles).toEqual([]);
});
