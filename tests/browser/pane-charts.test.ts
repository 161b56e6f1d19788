import { readFile } from 'node:fs/promises';
import { inflateSync } from 'node:zlib';
import { faintTexts } from '../support/contrast';
import { type ViewDriver, type ViewPage, type ViewPages, viewPages } from '../support/view-page';

jest.setTimeout(40_000);

declare const driver: ViewDriver;

let pages: ViewPages;
beforeAll(async () => {
  pages = await viewPages();
}, 120_000);
afterAll(() => pages?.close());

/** Invented curves, as a maker's sheet would give them. */
const book = () => ({
  cells: {
    Points: {
      A1: 'A', B1: 's', A2: 846, B2: 1000, A3: 1370, B3: 10, A4: 2680, B4: 1, A5: 4530, B5: 0.1, A6: 7480, B6: 0.01,
      D1: 'kA', E1: 'kA', D2: 11, E2: 21, D3: 20, E3: 25.6, D4: 80, E4: 40.6,
      G1: 'option', H1: 'first', I1: 'yearly', J1: 'one fault', G2: 'fuse-switch', H2: 2650, I2: 20, J2: 950, G3: 'breaker', H3: 2100, I3: 20, J3: 3100,
      L1: 12.5, L2: 'x',
    },
    Boards: { A1: 'MSB', B1: 'source', C1: '0.2+0.4i', A2: 'WORKSHOP', B2: 'MSB', C2: '6.2+2.4i' },
  },
});
const formulas = {
  'Boards!F1': '=JW.TRIP_TIME(9000,800,8,4000,0.2,12000,0.05,"slow")',
  'Boards!F2': '=JW.CABLE_WITHSTAND(143,240)',
  'Boards!F3': '=JW.FAULT_3PH_MAX("1.9+9.4i",415)',
  'Boards!F4': '=JW.NET_PROFILE(A1:C2,"1.9+9.4i","WORKSHOP",415)',
  'Boards!F5': '=JW.ARC_BOUNDARY(28,120,25,"VCBB",415)',
};

const open = (options = {}): Promise<ViewPage> => pages.open('charts', book(), options, formulas);
const marks = (page: ViewPage['page']): Promise<string> => page.locator('.jw-plot').getAttribute('aria-label').then((label) => label ?? '');

async function addRange({ page }: ViewPage, what: string, range: string, name: string): Promise<void> {
  await page.getByLabel('What', { exact: true }).selectOption({ label: what });
  await page.getByLabel('Range', { exact: true }).fill(range);
  await page.getByLabel('Name', { exact: true }).fill(name);
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await page.locator('.jw-parts li', { hasText: name }).waitFor();
}
async function addCell({ page, at }: ViewPage, sheet: string, address: string): Promise<void> {
  await at(sheet, address);
  await page.getByRole('button', { name: 'Draw the selected cell’s formula' }).click();
  await page.locator('.jw-parts li', { hasText: `${sheet}!${address}` }).waitFor();
}
async function timeCurrent(view: ViewPage): Promise<void> {
  await addRange(view, 'curve from points', 'Points!A1:B6', 'F315');
  for (const address of ['F1', 'F2', 'F3']) await addCell(view, 'Boards', address);
}

test('time-current from a range and from cells: bands with both edges, withstand, fault level', async () => {
  const view = await open();
  await timeCurrent(view);
  await expect(marks(view.page)).resolves.toMatch(/F315 ±10 %: 10 points\. TRIP_TIME Boards!F1, Ir 800 A: \d+ points\. 9000 A: 9000\. cable, k²S² 1\.178E\+09 A²s, 0\.1 to 5 s: 2 points\. FAULT_3PH_MAX Boards!F3, [\d.]+ kA/);
  // Two edges of each band and a ground between them.
  expect(await view.page.locator('.jw-plot path.jw-ink-series-0[stroke=currentColor]').count()).toBe(3);
  expect(await view.page.locator('.jw-plot path.jw-ink-series-1[fill-opacity]').count()).toBe(2);
  expect(view.troubles).toEqual([]);
});

test('the chart follows the sheet; a part is taken off again', async () => {
  const view = await open();
  await addRange(view, 'curve from points', 'Points!A1:B6', 'F315');
  await addRange(view, 'fault level', 'Points!L1', 'MSB');
  await expect(marks(view.page)).resolves.toContain('MSB, 12.5 kA');
  await view.page.evaluate(() => (driver.cells('Points')['L1'] = 15));
  await view.at('Points', 'A1');
  await view.page.locator('.jw-plot[aria-label*="MSB, 15 kA"]').waitFor();
  await view.page.getByRole('button', { name: 'Remove' }).nth(1).click();
  await view.page.locator('.jw-plot:not([aria-label*="MSB"])').waitFor();
});

test('cut-off, present cost, path and arc each on their own axes', async () => {
  const view = await open();
  const { page } = view;
  await page.getByLabel('Chart', { exact: true }).selectOption('cut-off');
  await addRange(view, 'curve from points', 'Points!D1:E4', 'F315');
  await page.locator('.jw-plot[aria-label*="cut-off, kA peak"]').waitFor();
  await page.getByLabel('Chart', { exact: true }).selectOption('cost');
  await addRange(view, 'options', 'Points!G1:J3', 'two options');
  await page.locator('.jw-plot[aria-label*="equal at 0.02809 faults a year"]').waitFor();
  await addCell(view, 'Boards', 'F4');
  await page.locator('.jw-plot[aria-label*="Fault level along the path"]').waitFor();
  expect(await page.locator('.jw-plot text').allTextContents()).toEqual(expect.arrayContaining(['source', 'MSB', 'WORKSHOP']));
  await addCell(view, 'Boards', 'F5');
  await page.locator('.jw-plot[aria-label*="28 kA for 120 ms"]').waitFor();
  expect(await page.getByLabel('Chart', { exact: true }).inputValue()).toBe('arc');
});

test('a range that cannot be drawn is told in the words of the functions', async () => {
  const view = await open();
  await addRange(view, 'curve from points', 'Points!A1:A6', 'F1');
  expect(await view.page.locator('.jw-told').innerText()).toBe('Points!A1:A6: F1: got 1 columns, takes two: A and s.');
  await view.page.getByLabel('Range', { exact: true }).fill('Nowhere!A1');
  await view.page.getByRole('button', { name: 'Add', exact: true }).click();
  await view.page.getByText('Range is missing').waitFor();
  await view.at('Points', 'A1');
  await view.page.getByRole('button', { name: 'Draw the selected cell’s formula' }).click();
  await view.page.getByText('Select a cell with a JW formula first.').waitFor();
});

test('PNG and SVG: the bytes are a picture and a drawing of the chart', async () => {
  const view = await open();
  await timeCurrent(view);
  const saved = async (button: string): Promise<{ name: string; bytes: Buffer }> => {
    const [download] = await Promise.all([view.page.waitForEvent('download'), view.page.getByRole('button', { name: button }).click()]);
    return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
  };
  const png = await saved('Save PNG');
  expect(png.name).toBe('time-current.png');
  expect([...png.bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  expect(png.bytes.readUInt32BE(16)).toBe(1920);
  expect(coloursOf(png.bytes)).toBeGreaterThan(20);
  const svg = await saved('Save SVG');
  expect(svg.name).toBe('time-current.svg');
  const text = svg.bytes.toString('utf8');
  expect(text).toMatch(/^<\?xml[^>]*>\s*<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(text).toContain('current, A');
  expect(text).toContain('F315 ±10 %');
  expect((text.match(/<path/g) ?? []).length).toBeGreaterThan(40);
  expect(text).not.toContain('<image');
  expect(view.troubles).toEqual([]);
  if (process.env['LOOK']) {
    const { writeFile } = await import('node:fs/promises');
    await writeFile(`${process.env['LOOK']}/chart.png`, png.bytes);
    await writeFile(`${process.env['LOOK']}/chart.svg`, svg.bytes);
  }
});

/** How many distinct bytes the picture's data has: a blank picture has a handful. */
function coloursOf(png: Buffer): number {
  const data: Buffer[] = [];
  for (let at = 8; at < png.length; at += 12 + png.readUInt32BE(at)) {
    if (png.toString('latin1', at + 4, at + 8) === 'IDAT') data.push(png.subarray(at + 8, at + 8 + png.readUInt32BE(at)));
  }
  return new Set(inflateSync(Buffer.concat(data))).size;
}

test('a chart in the sheet: a new sheet with the figures, and the chart; a host that cannot says so', async () => {
  const view = await open();
  await timeCurrent(view);
  const button = view.page.getByRole('button', { name: 'Chart in the sheet' });
  await button.click();
  await view.page.getByText('Drawn on the new sheet Chart 1, with its figures.').waitFor();
  expect(await view.page.evaluate(() => [driver.inserted().map(({ name }) => name), driver.charts().map(({ title, series }) => [title, series.length])])).toEqual([['Chart 1'], [['Time-current', 7]]]);
  await view.page.evaluate(() => driver.refuse('New sheets are not written into an open file here.'));
  await button.click();
  await view.page.getByText('New sheets are not written into an open file here.').waitFor();
});

test('by keyboard only, and the figures stand in a table', async () => {
  const view = await open();
  await view.at('Boards', 'F2');
  const { keyboard } = view.page;
  await view.page.getByLabel('Chart', { exact: true }).focus();
  await keyboard.press('Tab');
  await keyboard.press('Enter');
  await view.page.locator('.jw-plot').waitFor();
  await view.page.locator('summary', { hasText: 'Figures' }).focus();
  await keyboard.press('Enter');
  expect(await view.page.locator('.jw-figures-of-chart tbody tr').allInnerTexts()).toEqual(['15348\t5', '108530\t0.1']);
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: nothing sticks out sideways and text stands out from its ground', async (colorScheme) => {
    const view = await open({ viewport: { width, height: 900 }, colorScheme });
    await timeCurrent(view);
    await view.page.locator('.jw-plot').waitFor();
    expect(await view.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await faintTexts(view.page)).toEqual([]);
    if (process.env['LOOK']) await view.page.screenshot({ path: `${process.env['LOOK']}/charts-${width}-${colorScheme}.png`, fullPage: true });
  });
});

test('in forced colours lines are told apart by their dashes', async () => {
  const view = await open({ forcedColors: 'active' });
  await timeCurrent(view);
  const lines = await view.page.locator('.jw-plot path[class*=series][stroke=currentColor]').evaluateAll((all) => all.map((each) => [getComputedStyle(each).color, each.getAttribute('class'), each.getAttribute('stroke-dasharray')]));
  expect(new Set(lines.map(([colour]) => colour)).size).toBe(1);
  expect(new Set(lines.map(([, ink]) => ink)).size).toBe(new Set(lines.map(([, , dash]) => dash)).size);
  if (process.env['LOOK']) await view.page.screenshot({ path: `${process.env['LOOK']}/charts-forced.png`, fullPage: true });
});
