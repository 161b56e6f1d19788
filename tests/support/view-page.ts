import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { bundle } from './bundle';
import { launchChromium, openPage } from './chromium';
import { paneLooks } from './pane-looks';
import { serveFolder } from './static-server';

/** What the page of a view offers to its test. */
export interface ViewDriver {
  start(view: string, sheets: unknown, formulas?: Record<string, string>): Promise<void>;
  at(sheet: string, range: string): void;
  cells(sheet: string): Record<string, unknown>;
  formulas(): Record<string, string>;
  shown(): string;
  refuse(words: string): void;
  inserted(): { name: string }[];
  charts(): { title: string; series: { name: string }[] }[];
}
declare const driver: ViewDriver;

export interface ViewPage {
  page: Page;
  troubles: string[];
  at(sheet: string, range: string): Promise<void>;
  cells(sheet: string): Promise<Record<string, unknown>>;
}

export interface ViewPages {
  open(view: string, sheets?: unknown, options?: BrowserContextOptions, formulas?: Record<string, string>): Promise<ViewPage>;
  close(): Promise<void>;
}

/** A page for one view of the pane, under the content policy of the add-in's own page. */
export async function viewPages(): Promise<ViewPages> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-view-'));
  const pages = path.resolve(__dirname, '../browser/pages');
  await bundle(path.join(pages, 'pane-view.ts'), folder, 'pane-view.js');
  await cp(path.join(pages, 'pane-view.html'), path.join(folder, 'index.html'));
  await writeFile(path.join(folder, 'pane.css'), paneLooks());
  await cp(path.resolve(__dirname, '../../src/excel/static/assets/icon-16.png'), path.join(folder, 'icon.png'));
  const server = await serveFolder(folder);
  const browser: Browser = await launchChromium();
  return {
    open: async (view, sheets = { cells: { Sheet1: {} } }, options = {}, formulas = {}) => {
      const { page, troubles } = await openPage(browser, { viewport: { width: 320, height: 800 }, ...options });
      await page.goto(`${server.origin}/`);
      await page.evaluate(([id, book, typed]) => driver.start(id as string, book, typed as Record<string, string>), [view, sheets, formulas] as const);
      return {
        page, troubles,
        at: (sheet, range) => page.evaluate(([name, place]) => driver.at(name, place), [sheet, range] as const),
        cells: (sheet) => page.evaluate((name) => driver.cells(name), sheet),
      };
    },
    close: async () => {
      await browser.close();
      await server.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
