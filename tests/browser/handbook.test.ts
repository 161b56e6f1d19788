import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { catalogue } from '../../src/sheet/catalogue';
import { launchChromium, openPage } from '../support/chromium';
import { openDesk } from '../support/desk';
import { type StaticServer, serveFolder } from '../support/static-server';

/** The handbook as each host serves it, and as a file without any server. */

jest.setTimeout(30_000);

const dist = path.resolve(__dirname, '../../dist');
const functions = catalogue.entries.length;
let browser: Browser;
const servers: StaticServer[] = [];
const address: Record<string, string> = {};

beforeAll(async () => {
  for (const host of ['excel', 'workbench']) {
    if (!existsSync(path.join(dist, host, 'handbook.html'))) throw new Error(`dist/${host} is missing: run \`npm run build\` first`);
    const server = await serveFolder(path.join(dist, host));
    servers.push(server);
    address[host] = `${server.origin}/handbook.html`;
  }
  address['a file'] = pathToFileURL(path.join(dist, 'workbench/handbook.html')).href;
  browser = await launchChromium();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  for (const server of servers) await server.close();
});

interface Handbook {
  page: Page;
  troubles: string[];
  /** Names that stand. */
  names(): Promise<string[]>;
  listed(): Promise<string[]>;
  find(words: string): Promise<string>;
}

async function handbook(options: BrowserContextOptions = {}, from = address['workbench']!): Promise<Handbook> {
  const { page, troubles } = await openPage(browser, { viewport: { width: 1280, height: 800 }, ...options });
  await page.goto(from);
  const visible = (selector: string) => (): Promise<string[]> =>
    page.locator(selector).evaluateAll((found) => found.filter((each) => each.getClientRects().length > 0).map((each) => each.textContent!.trim()));
  return {
    page, troubles,
    names: visible('h3'),
    listed: visible('nav li'),
    find: async (words) => {
      await page.getByRole('searchbox', { name: 'Find a function' }).fill(words);
      return page.getByRole('status').innerText();
    },
  };
}

test.each(['excel', 'workbench', 'a file'])('%s: whole, searchable, nothing amiss under its own content policy', async (host) => {
  const { page, troubles, names, find } = await handbook({}, address[host]);
  expect(await names()).toHaveLength(functions);
  expect(await find('=JW.unit_con')).toBe(`1 of ${functions} functions`);
  expect(await names()).toEqual(['UNIT_CONVERT']);
  expect(await page.locator('h1').evaluate((heading) => getComputedStyle(heading).fontSize)).toBe('22px');
  expect(troubles).toEqual([]);
});

test('what is searched: name, summary, arguments, source, words of the trade; the contents follow', async () => {
  const { page, names, listed, find } = await handbook();
  await find('breakeven');
  expect(await names()).toEqual(['BREAKEVEN_RATE', 'BREAKEVEN_WORDS']);
  expect(await listed()).toEqual(await names());
  expect(await page.locator('h2:visible').allInnerTexts()).toEqual(['After the fault, and cost']);
  await find('withstands conductor final');
  expect(await names()).toContain('CABLE_WITHSTAND');
  await find('electrodes');
  expect(await names()).toEqual(['ARC_CURRENT', 'ARC_BOX_FACTOR', 'ARC_ENERGY', 'ARC_BOUNDARY']);
  await find('1584-2018');
  expect(await names()).toContain('ARC_CURRENT');
  await find('ampacity');
  expect(await names()).toContain('CABLE_RATING');
});

test('what is not there is said in words, and Escape brings everything back', async () => {
  const { page, names, listed, find } = await handbook();
  expect(await find('zebra')).toMatch(/^No function has all these words\. Try fewer/);
  expect(await names()).toEqual([]);
  expect(await listed()).toEqual([]);
  await page.keyboard.press('Escape');
  expect(await page.getByRole('status').textContent()).toBe('');
  expect(await names()).toHaveLength(functions);
  expect(await listed()).toHaveLength(functions);
});

test('by keyboard alone: / to the search, Enter to the first that has the words in its name', async () => {
  const { page } = await handbook();
  await page.keyboard.press('/');
  await page.keyboard.type('earth k');
  await page.keyboard.press('Enter');
  expect(new URL(page.url()).hash).toBe('#EARTH_K');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('EARTH_K');
  await page.keyboard.press('/');
  await page.keyboard.type('loop_min');
  await page.keyboard.press('Enter');
  expect(new URL(page.url()).hash).toBe('#FAULT_LOOP_MIN');
});

test('an address with a name shows that function, also when something else was searched for', async () => {
  const { page, find, names } = await handbook({}, `${address['excel']}#ARC_ENERGY`);
  const inSight = (name: string): Promise<boolean> => page.locator(`#${name}`).evaluate((heading) => heading.getBoundingClientRect().top >= 0 && heading.getBoundingClientRect().bottom < innerHeight);
  expect(await inSight('ARC_ENERGY')).toBe(true);
  await find('cable');
  expect(await page.evaluate(() => scrollY)).toBe(0);
  await page.evaluate(() => { location.hash = 'BUSBAR_FORCE'; });
  await page.waitForFunction(() => (document.getElementById('query') as HTMLInputElement).value === '');
  expect(await names()).toHaveLength(functions);
  expect(await inSight('BUSBAR_FORCE')).toBe(true);
});

test.each([320, 420, 900, 1280])('nothing is cut off at %i px', async (width) => {
  const { page } = await handbook({ viewport: { width, height: 800 } });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  const outside = await page.evaluate(() => [...document.querySelectorAll('main *')].filter((each) => !each.closest('.wide, thead, caption') && each.getBoundingClientRect().right > innerWidth + 0.5).map((each) => each.textContent));
  expect(outside).toEqual([]);
});

test('in a narrow window the contents are folded, the search stays and hides no heading it leads to', async () => {
  const { page } = await handbook({ viewport: { width: 320, height: 700 } });
  expect(await page.locator('#contents').getAttribute('open')).toBeNull();
  await page.locator('#query').fill('trip band');
  await page.keyboard.press('Enter');
  const [box, heading] = await Promise.all(['#search', '#TRIP_BAND'].map((each) => page.locator(each).boundingBox()));
  expect(box!.y).toBe(0);
  expect(heading!.y).toBeGreaterThanOrEqual(box!.y + box!.height);
});

test('dark where the system is, light on paper', async () => {
  const { page } = await handbook({ colorScheme: 'dark' });
  const ground = (): Promise<string> => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(await ground()).toBe('rgb(27, 33, 36)');
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await ground()).toBe('rgb(255, 255, 255)');
  expect(await page.locator('#search').isVisible()).toBe(false);
});

test('without its script it reads whole, and offers no search', async () => {
  const { page, names, listed } = await handbook({ javaScriptEnabled: false });
  expect(await page.locator('#search').isVisible()).toBe(false);
  expect((await names()).length + (await listed()).length).toBe(2 * functions);
});

test('the workbench leads to it from its bar', async () => {
  const { page } = await openPage(browser, { viewport: { width: 1280, height: 800 } });
  await page.goto(new URL('.', address['workbench']).href);
  const [opened] = await Promise.all([page.context().waitForEvent('page'), page.getByRole('link', { name: 'Handbook', exact: true }).first().click()]);
  await opened.waitForLoadState();
  expect(opened.url()).toBe(address['workbench']);
  expect(await opened.title()).toBe('Joulewright: handbook of worksheet functions');
});

test('the pane leads from an explained function to its place', async () => {
  const at = await openDesk({ browser, origin: new URL(address['workbench']!).origin });
  const { page } = at;
  await at.type('J40', '=JW.CABLE_K("Cu","PVC")');
  await at.go('J40');
  const [opened] = await Promise.all([page.context().waitForEvent('page'), page.getByRole('link', { name: 'Handbook: JW.CABLE_K' }).click()]);
  await opened.waitForLoadState();
  expect(opened.url()).toBe(`${address['workbench']}#CABLE_K`);
});
