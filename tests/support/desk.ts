import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { sheetCells, sheetNamed } from '../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';
import { launchChromium, openPage } from './chromium';
import { serveFolder } from './static-server';

/** The built workbench in real Chromium, and the hands of the person at it. */

export const SAMPLE = 'cable-schedule.xlsx';
export const workbenchFolder = path.resolve(__dirname, '../../dist/workbench');

interface Place {
  readonly browser: Browser;
  readonly origin: string;
}

export interface ServedWorkbench extends Place {
  close(): Promise<void>;
}

export async function serveWorkbench(): Promise<ServedWorkbench> {
  if (!existsSync(path.join(workbenchFolder, 'app.js'))) throw new Error('dist/workbench is missing: run `npm run build` first');
  const server = await serveFolder(workbenchFolder);
  const browser = await launchChromium();
  return {
    browser,
    origin: server.origin,
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

export const cellOf = (bytes: Uint8Array, sheet: string, address: string) => {
  const workbook = openWorkbook(bytes);
  return sheetCells(workbook, sheetNamed(workbook, sheet)).find((cell) => cell.address === address);
};

/** A key that comes while the grid redraws its cell can be lost, as a person would see and put right. */
const TRIES = 3;

export class Desk {
  constructor(readonly page: Page, readonly troubles: string[]) {}

  tab = (name: string) => this.page.getByRole('tab', { name, exact: true });
  button = (name: string | RegExp) => this.page.locator('#pane').getByRole('button', { name });
  status = (): Promise<string> => this.page.locator('#status').innerText();

  async said(words: RegExp): Promise<void> {
    await this.page.waitForFunction((source) => new RegExp(source, 'i').test(document.getElementById('status')!.textContent ?? ''), words.source);
  }

  async sheet(name: string): Promise<void> {
    await this.page.locator('.o-sheet-list .o-sheet-name', { hasText: new RegExp(`^${name}$`) }).click();
    await this.page.locator('.o-sheet.active .o-sheet-name', { hasText: new RegExp(`^${name}$`) }).waitFor();
  }

  /** Goes to a cell by the name box, as one types it there; the box tells the grid's own selection. */
  async go(address: string): Promise<void> {
    const box = this.page.locator('.o-named-range-selector-container input');
    await box.click();
    await box.fill(address);
    await this.page.keyboard.press('Enter');
    await this.page.waitForFunction((wanted) => {
      const name = document.querySelector<HTMLInputElement>('.o-named-range-selector-container input');
      return name?.value === wanted && document.activeElement?.classList.contains('o-composer');
    }, address);
  }

  /** Types into a cell and sees that it stands there as meant before Enter takes it. */
  async type(address: string, content: string): Promise<void> {
    await this.go(address);
    for (let tries = 1; ; tries++) {
      await this.page.keyboard.type(content, { delay: 5 });
      const asMeant = this.page.waitForFunction((meant) => document.activeElement?.textContent === meant, content, { timeout: 3000 });
      if (await asMeant.then(() => true, () => false)) break;
      const got = await this.page.evaluate(() => document.activeElement?.textContent);
      if (tries === TRIES) throw new Error(`${address} took ${JSON.stringify(got)} for ${JSON.stringify(content)}`);
      await this.page.keyboard.press('Escape');
      await this.page.keyboard.press('Escape');
    }
    await this.page.keyboard.press('Enter');
    // The pane follows a moment later; until then it shows this cell as it was. A refused edit may leave the selection where it is.
    await this.page.waitForFunction((left) => {
      const shown = document.querySelector<HTMLElement>('#pane .jw-cell h2');
      return !shown?.offsetParent || shown.firstChild?.textContent !== left;
    }, address, { timeout: 2000 }).catch(() => undefined);
  }

  private async shows(address: string): Promise<void> {
    await this.go(address);
    await this.page.waitForFunction((wanted) => document.querySelector('#pane .jw-cell h2')?.firstChild?.textContent === wanted, address);
  }

  /** What the pane says the cell shows. */
  async value(address: string): Promise<string> {
    await this.shows(address);
    return this.page.locator('#pane .jw-value').innerText();
  }

  /** All that the pane explains of a cell. */
  async explained(address: string): Promise<string> {
    await this.tab('Explain').click();
    await this.shows(address);
    return this.page.locator('#pane .jw-body').innerText();
  }

  async save(): Promise<{ name: string; bytes: Uint8Array }> {
    const [download] = await Promise.all([this.page.waitForEvent('download'), this.page.locator('#save').click()]);
    return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) };
  }

  async openFile(name: string, bytes: Uint8Array): Promise<void> {
    await this.page.locator('#picker').setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
  }

  async opened(name: string): Promise<void> {
    await this.page.waitForFunction((wanted) => document.getElementById('file-name')!.textContent === wanted, name);
    await this.said(/formulas?, /);
  }
}

/** The workbench as it starts: with its first sample. */
export async function openDesk({ browser, origin }: Place, options: BrowserContextOptions = {}): Promise<Desk> {
  const { page, troubles } = await openPage(browser, { viewport: { width: 1440, height: 900 }, ...options });
  const desk = new Desk(page, troubles);
  await page.goto(`${origin}/`);
  await page.waitForSelector('#grid canvas');
  await desk.said(/formulas?, /);
  return desk;
}
