import { faintTexts } from '../support/contrast';
import { type ViewDriver, type ViewPages, viewPages } from '../support/view-page';

jest.setTimeout(30_000);

declare const driver: ViewDriver;

let pages: ViewPages;
beforeAll(async () => {
  pages = await viewPages();
}, 120_000);
afterAll(() => pages?.close());

const inserted = (page: Awaited<ReturnType<ViewPages['open']>>['page']): Promise<string[]> => page.evaluate(() => driver.inserted().map(({ name }) => name));

test('a chosen sheet comes with what it reads; the host gets the plans', async () => {
  const { page, troubles } = await pages.open('sheets');
  await page.getByLabel('Boards', { exact: false }).check();
  await page.getByText('Come along, for the chosen ones read them: Job, Devices, Points, Lists.').waitFor();
  await page.getByRole('button', { name: 'Insert 5 sheets' }).click();
  await page.getByText('Inserted: Job, Boards, Devices, Points, Lists.').waitFor();
  expect(await inserted(page)).toEqual(['Job', 'Boards', 'Devices', 'Points', 'Lists']);
  expect(troubles).toEqual([]);
});

test('the whole starter by keyboard only', async () => {
  const { page } = await pages.open('sheets');
  await page.getByRole('button', { name: 'Choose the whole starter' }).focus();
  await page.getByLabel('Cables', { exact: false }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Insert 10 sheets' }).focus();
  await page.keyboard.press('Enter');
  await page.getByText('Inserted: Job, Boards, Cables').waitFor();
  expect((await inserted(page)).length).toBe(10);
});

test('a host that cannot says so, and a sheet of that name bars it', async () => {
  const { page } = await pages.open('sheets', { cells: { Sheet1: {}, Lists: {} } });
  await page.evaluate(() => driver.refuse('New sheets are not written into an open file here.'));
  await page.getByLabel('Lists', { exact: false }).check();
  await page.getByText('A sheet named Lists is there already.').waitFor();
  expect(await page.getByRole('button', { name: 'Insert 1 sheet' }).isDisabled()).toBe(true);
  await page.getByLabel('Lists', { exact: false }).uncheck();
  await page.getByLabel('Job', { exact: false }).check();
  await page.getByRole('button', { name: /^Insert/ }).click();
  await page.getByText('New sheets are not written into an open file here.').waitFor();
});

test('the columns of a sheet unfold', async () => {
  const { page } = await pages.open('sheets');
  await page.locator('.jw-sheet', { hasText: 'Boards' }).locator('summary').first().click();
  expect(await page.locator('.jw-sheet li').allInnerTexts()).toEqual(expect.arrayContaining(['length m, typed', 'Ik3 max kA']));
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: nothing sticks out sideways and text stands out from its ground', async (colorScheme) => {
    const { page } = await pages.open('sheets', { cells: { Sheet1: {}, Lists: {} } }, { viewport: { width, height: 900 }, colorScheme });
    await page.getByLabel('Cables', { exact: false }).check();
    await page.locator('.jw-sheet summary').first().click();
    await page.locator('.jw-sheet li').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await faintTexts(page)).toEqual([]);
    if (process.env['LOOK']) await page.screenshot({ path: `${process.env['LOOK']}/sheets-${width}-${colorScheme}.png`, fullPage: true });
  });
});
