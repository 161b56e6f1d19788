import { appendFile, cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { launchChromium, openPage } from '../support/chromium';
import { openDesk, workbenchFolder } from '../support/desk';
import { type StaticServer, serveFolder } from '../support/static-server';

/** The grid's files are under the LGPL: whoever gets the workbench may put another build of the grid in their place. */

jest.setTimeout(60_000);

const GRID = 'vendor/o_spreadsheet.iife.js';
let folder: string;
let server: StaticServer;
let browser: Browser;

beforeAll(async () => {
  browser = await launchChromium();
}, 120_000);
afterAll(() => browser?.close());

beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-grid-'));
  await cp(workbenchFolder, folder, { recursive: true });
  server = await serveFolder(folder);
});
afterEach(async () => {
  await server.close();
  await rm(folder, { recursive: true, force: true });
});

test('another build of the grid is loaded in its place, and works', async () => {
  await appendFile(path.join(folder, GRID), '\nwindow.builtByTheUser = true;\n');
  const desk = await openDesk({ browser, origin: server.origin });
  expect(await desk.page.evaluate(() => 'builtByTheUser' in window)).toBe(true);
  expect(await desk.status()).toMatch(/formulas, all as stored/);
  expect(desk.troubles).toEqual([]);
});

test('where the grid is no grid, the page says that it could not start', async () => {
  await writeFile(path.join(folder, GRID), 'var o_spreadsheet = {};');
  const { page } = await openPage(browser);
  await page.goto(`${server.origin}/`);
  await page.getByText('The workbench could not start.').waitFor();
});

test('where the grid is missing, the page does not say for ever that it loads', async () => {
  await rm(path.join(folder, GRID));
  const { page } = await openPage(browser);
  await page.goto(`${server.origin}/`);
  const late = page.getByText('a file of the workbench may be missing');
  expect(await late.isVisible()).toBe(false);
  await late.waitFor({ timeout: 20_000 });
});
