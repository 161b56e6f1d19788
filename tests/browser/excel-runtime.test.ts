import { existsSync } from 'node:fs';
import { cp, mkdtemp, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Browser, Page } from 'playwright-core';
import type { PaneHost } from '../../src/pane/host';
import { bundle } from '../support/bundle';
import { launchChromium, openPage } from '../support/chromium';
import { type StaticServer, serveFolder } from '../support/static-server';

/**
 * The host in Chromium with Microsoft's own object model: what it asks for has to exist there, and what goes over the wire to
 * Excel is read. The answers are canned.
 */

jest.setTimeout(30_000);

const office = path.resolve(__dirname, '../../node_modules/@microsoft/office-js/dist');
const IN_EXCEL = '?_host_Info=Excel$Win32$16.01$en-US$telemetry$isDialog$$0';

let folder: string;
let server: StaticServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-runtime-'));
  await bundle(path.join(__dirname, 'pages/excel-host.ts'), folder, 'host.js');
  await writeFile(path.join(folder, 'index.html'), '<!doctype html><link rel="icon" href="data:,"><script src="office/office.js"></script><script src="host.js"></script>');
  for (const name of ['office.js', 'o15apptofilemappingtable.js', 'excel-win32-16.01.js', 'en-us/office_strings.js']) {
    if (!existsSync(path.join(office, name))) throw new Error(`Office's script has no ${name}`);
    await cp(path.join(office, name), path.join(folder, 'office', name));
  }
  server = await serveFolder(folder);
  browser = await launchChromium();
  ({ page } = await openPage(browser));
  await page.goto(`${server.origin}/${IN_EXCEL}`);
  await page.waitForFunction(() => typeof (window as unknown as { Excel?: { run?: unknown } }).Excel?.run === 'function' && 'DDA' in (window as unknown as { OSF: object }).OSF);
  await page.evaluate(standIn);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

declare const excelHost: PaneHost;
declare const sent: () => string[];

/** In the page: takes requests in the place of Excel, tells them as paths such as `Worksheets.GetItem("S").GetRange("D2").Formulas = …`. */
function standIn(): void {
  interface Path { Id: number; Name: string; ParentObjectPathId: number; ArgumentInfo?: { Arguments?: unknown[]; ReferencedObjectPathIds?: number[] } }
  interface Action { Id: number; ActionType: number; Name: string; ObjectPathId: number; ArgumentInfo?: { Arguments?: unknown[] } }
  const told: string[] = [];
  const all = new Map<number, Path>();
  const chain = (id: number): string => {
    const found = all.get(id);
    if (!found) return '';
    const before = chain(found.ParentObjectPathId);
    const args = found.ArgumentInfo?.Arguments;
    const references = (found.ArgumentInfo?.ReferencedObjectPathIds ?? []).filter((each) => each > 0).map(chain);
    const shown = args === undefined ? '' : `(${[...args.map((each) => JSON.stringify(each)), ...references.map((each) => `<${each}>`)].join(',')})`;
    return [before, `${found.Name}${shown}`].filter((part) => part !== '').join('.');
  };
  /** Facts of every object that is asked for any. */
  const answer = (at: string): unknown => {
    if (/(?:Worksheets|Tables|Names|Series)$/.test(at)) return { _Items: [] };
    return { Id: `id of ${at}`, _ReferenceId: `kept ${at}`, Name: 'S', Visibility: 'Visible', Protected: at.endsWith('Protection') && !at.includes('Format') ? at.includes('"Locked"') : false, Locked: true };
  };
  const { OSF, Office } = window as unknown as { OSF: { DDA: { RichApi: Record<string, unknown> } }; Office: { context: object } };
  OSF.DDA.RichApi['executeRichApiRequestAsync'] = (message: unknown[], heard: (result: unknown) => void) => {
    const body = JSON.parse(message.find((part): part is string => typeof part === 'string' && part.startsWith('{"'))!) as { ObjectPaths: Record<string, Path>; Actions: Action[] };
    for (const each of Object.values(body.ObjectPaths)) all.set(each.Id, each);
    const results = body.Actions.map((action) => {
      const at = chain(action.ObjectPathId);
      // 3: a method, 4: a property set; the rest makes objects and asks for facts, and underscores are Microsoft's own housekeeping.
      if (action.ActionType === 4) told.push(`${at}.${action.Name} = ${JSON.stringify(action.ArgumentInfo?.Arguments?.[0])}`);
      if (action.ActionType === 3 && !action.Name.startsWith('_')) told.push(`${at}.${action.Name}(${(action.ArgumentInfo?.Arguments ?? []).map((each) => JSON.stringify(each)).join(',')})`);
      return { ActionId: action.Id, Value: answer(at) };
    });
    heard({ status: 'succeeded', value: { data: [200, null, JSON.stringify({ Results: results })] } });
  };
  Object.defineProperty(Office.context, 'requirements', { value: { isSetSupported: () => true }, configurable: true });
  Object.assign(window, { sent: () => told.splice(0).map((line) => line.replace(/kept /g, '').replace(/^\./, '')) });
}

const asked = async <T>(work: () => Promise<T>): Promise<{ answer: T; told: string[] }> => {
  const answer = await page.evaluate(work);
  return { answer, told: await page.evaluate(() => sent()) };
};

test('cells are written as formulas and as texts that stay texts', async () => {
  const { answer, told } = await asked(() => excelHost.write([
    { sheet: 'S', address: 'D2', formula: '=JW.CABLE_K("Cu","XLPE")' }, { sheet: 'S', address: 'D3', value: '5' }, { sheet: 'S', address: 'D4', value: null }, { sheet: 'S', address: 'D5', value: 2.5 },
  ]));
  expect(answer).toEqual({ done: true });
  expect(told).toEqual([
    'Worksheets.("S").GetRange("D2").Formulas = [["=JW.CABLE_K(\\"Cu\\",\\"XLPE\\")"]]',
    'Worksheets.("S").GetRange("D3").Values = [["\'5"]]',
    'Worksheets.("S").GetRange("D4").Values = [[""]]',
    'Worksheets.("S").GetRange("D5").Values = [[2.5]]',
  ]);
});

test('nothing is written where one of the cells is locked', async () => {
  const { answer, told } = await asked(() => excelHost.write([{ sheet: 'S', address: 'D2', value: 1 }, { sheet: 'Locked', address: 'D2', formula: '=1' }]));
  expect(answer).toEqual({ done: false, words: 'D2 is locked: the sheet Locked is protected. Unprotect it in Excel first.' });
  expect(told).toEqual([]);
});

test('a cell is shown and selected', async () => {
  const { answer, told } = await asked(() => excelHost.select('S', 'B2:C3'));
  expect(answer).toEqual({ done: true });
  expect(told).toEqual(['Worksheets.GetItemOrNullObject("S").Activate()', 'Worksheets.GetItemOrNullObject("S").GetRange("B2:C3").Select()']);
});

test('a chart asks for what the object model has', async () => {
  const { answer, told } = await asked(() => excelHost.chart({
    title: 'Curves', sheet: 'S', at: 'A1:F9', x: { title: 'A', logarithmic: true, least: 1 }, y: { title: 's', logarithmic: false, greatest: 9 },
    series: [{ name: 'a', sheet: 'S', x: 'A1:A9', y: 'B1:B9', colour: '#112233', drawn: 'dashed' }, { name: 'b', sheet: 'S', x: 'A1:A9', y: 'C1:C9', colour: '#445566', drawn: 'points' }],
  }));
  expect(answer).toEqual({ done: true });
  const set = told.map((line) => line.replace(/^.*\)\.(?=Series|Title|Axes|Legend|SetPosition)/, ''));
  for (const part of [
    'Series.Add("a",null).Format.Line.LineStyle = "Dash"', 'Series.Add("b",null).MarkerBackgroundColor = "#445566"', 'Title.Text = "Curves"',
    'Axes.CategoryAxis.ScaleType = "Logarithmic"', 'Axes.CategoryAxis.Minimum = 1', 'Axes.ValueAxis.ScaleType = "Linear"', 'Axes.ValueAxis.Maximum = 9', 'SetPosition("A1","F9")',
  ]) expect(set).toContain(part);
});

test('a sheet asks for what the object model has, and formulas come after the tables that they name', async () => {
  const { answer, told } = await asked(() => excelHost.insertSheets([{
    name: 'New', widths: [10, 8], heights: { 1: 26 }, merges: ['A1:B1'],
    cells: [{ range: 'A1', value: 'Title', look: 'title' }, { range: 'A3', value: 'ref', look: 'heading' }, { range: 'B4:B6', formula: '=JW.CABLE_K([@ref],"XLPE")', look: 'worked', format: '0.0' }],
    tables: [{ name: 'cables', range: 'A3:B6' }], names: [{ name: 'k_site', range: 'B4' }], verdicts: ['B4:B6'], freeze: { rows: 3, columns: 1 },
    validations: [{ range: 'A4:A6', allows: { list: ['a', 'b'] }, message: 'one of the list' }, { range: 'B4', allows: { between: [1, 9], whole: true }, message: '1 to 9' }],
    print: { paper: 'A3', orientation: 'landscape', area: 'A1:B6', titleRows: [1, 3], header: { left: 'Works' } },
  }]));
  expect(answer).toEqual({ done: true });
  const place = (part: RegExp): number => told.findIndex((line) => part.test(line));
  const parts = [/\.Name = "cables"$/, /\.Formulas = \[\["=JW\.CABLE_K\(\[@ref\],/, /\.DataValidation\.Rule = /, /\.PageLayout\.SetPrintTitleRows\("\$1:\$3"\)$/, /\.PageLayout\.HeadersFooters\.DefaultForAllPages\.LeftHeader = "Works"$/];
  const places = parts.map(place);
  expect(places.every((each) => each >= 0)).toBe(true);
  expect([...places].sort((a, b) => a - b)).toEqual(places);
  expect(place(/GetRange\("A3"\)\.Format\.Borders\.\("Inside/)).toBe(-1);
});
