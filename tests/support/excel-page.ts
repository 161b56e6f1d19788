import { existsSync } from 'node:fs';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { type Argument, type Cell, CellError } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { launchChromium, openPage } from './chromium';
import { serveFolder } from './static-server';

/** The built add-in in Chromium with Microsoft's runtime of custom functions, and arguments as Excel hands them over. */

// Benchmarks use it too, where `__dirname` is not known.
export const excelFolder = path.resolve('dist/excel');
/** Makes Microsoft's loader take the page for one inside Excel on Windows. */
const IN_EXCEL = '?_host_Info=Excel$Win32$16.01$en-US$telemetry$isDialog$$0';

export interface ExcelPage {
  readonly page: Page;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** @param script run in the page before anything of ours */
export async function openExcelPage(script?: string): Promise<ExcelPage> {
  if (!existsSync(path.join(excelFolder, 'functions.js'))) throw new Error('dist/excel is missing: run `npm run build` first');
  const server = await serveFolder(excelFolder);
  const browser = await launchChromium();
  const { page } = await openPage(browser);
  if (script !== undefined) await page.addInitScript(script);
  await page.goto(`${server.origin}/taskpane.html${IN_EXCEL}`);
  await page.waitForFunction(() => typeof (window as unknown as { CustomFunctions?: { Error?: unknown } }).CustomFunctions?.Error === 'function');
  return {
    page, browser,
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

const handedCell = (cell: Cell): unknown => (cell instanceof CellError ? { thrown: cell.code } : cell);
const handedMatrix = (argument: Argument): unknown => (Array.isArray(argument) ? argument.map((row) => row.map(handedCell)) : [[handedCell(argument ?? null)]]);

/** Arguments as Excel would hand them over by the metadata: matrices, scalars, repeating ones in one array, null for what is left out. */
export function handedOver(id: string, argv: readonly Argument[]): unknown[] {
  const kinds = Object.values(catalogue.find(id)!.member.parameters);
  return kinds.map((kind, place) => {
    if (kind.shape === 'repeating') return argv.slice(place).map(handedMatrix);
    const argument = argv[place];
    if (argument === undefined || argument === null) return null;
    return kind.shape === 'range' || kind.type === 'impedance' || Array.isArray(argument) ? handedMatrix(argument) : handedCell(argument);
  });
}
