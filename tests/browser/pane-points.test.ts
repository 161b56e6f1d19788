import { type ViewPages, viewPages } from '../support/view-page';
import { faintTexts } from '../support/contrast';

jest.setTimeout(30_000);

let pages: ViewPages;
beforeAll(async () => {
  pages = await viewPages();
}, 120_000);
afterAll(() => pages?.close());

const PASTE = 'I (kA)\tt (s)\n0.9\t10\n1.1\t5\n1.6\t1\n2.4\t0.2\n3.6\t0.04';
const book = () => ({ cells: { Points: { D1: 'taken' } } });

const fill = async (view: Awaited<ReturnType<ViewPages['open']>>, facts: Record<string, string> = {}) => {
  const { page } = view;
  await page.locator('textarea').fill(PASTE);
  for (const [label, value] of Object.entries({ 'Voltage, V': '415', Source: 'invented sheet, page 3', 'Issue date': '2024-05', Device: 'F1', 'First cell': 'Points!A2', ...facts })) {
    await page.getByLabel(label, { exact: true }).fill(value);
  }
};

test('paste, findings, write, read back: the sheet holds points, facts and the check', async () => {
  const view = await pages.open('points', book());
  const { page, troubles } = view;
  await fill(view);
  expect(await page.locator('.jw-told').innerText()).toContain('5 of 5 rows are points; tabs between the cells; headings I (kA) and t (s). First column: kA converted to A.');
  expect(await page.locator('.jw-told').innerText()).toContain('no findings');
  expect(await page.getByRole('img').getAttribute('aria-label')).toContain('F1: time-current curve. Across: current, A. Up: time, s.');
  await page.getByRole('button', { name: 'Write to the sheet' }).click();
  await page.getByText('Written to Points!A2:B13; the points are Points!A8:B13.').waitFor();
  expect(await page.locator('.jw-answer').innerText()).toContain('CURVE_CHECK in the sheet says: no findings');
  expect(await page.locator('.jw-answer').innerText()).toContain('=JW.CURVE_TIME(Points!A8:B13, current_A, tolerance_pct, "slow")');
  const cells = await view.cells('Points');
  expect(cells).toMatchObject({
    A2: 'device', B2: 'F1', A3: 'source', B3: 'invented sheet, page 3', A4: 'issued', B4: '2024-05', A5: 'sheet V', B5: 415, A6: 'kind', B6: 'time', A7: 'check', B7: 'no findings',
    A8: 'A', B8: 's', A9: 900, B9: 10, A13: 3600, B13: 0.04,
  });
  expect(await page.evaluate(() => (window as unknown as { driver: { formulas(): object; shown(): string } }).driver.formulas())).toEqual({ 'Points!B7': '=JW.CURVE_CHECK($A$8:$B$13,"time")' });
  expect(await page.evaluate(() => (window as unknown as { driver: { shown(): string } }).driver.shown())).toBe('Points!A8:B13');
  expect(troubles).toEqual([]);
});

test('findings by row, in the words of the check; the rows stand out in the chart', async () => {
  const { page } = await pages.open('points');
  await page.locator('textarea').fill('A\ts\n100\t10\n150\t1\n140\t0.5\n900\t0.01');
  expect(await page.locator('.jw-findings li').allInnerTexts()).toEqual(['row 4: first column does not rise', 'row 5: gap of more than half a decade']);
  expect(await page.locator('.jw-plot path.jw-ink-bad').count()).toBe(2);
});

test('a decimal comma is refused in words and bars writing', async () => {
  const { page } = await pages.open('points');
  await page.locator('textarea').fill('100;1,5\n200;0,5');
  expect(await page.locator('.jw-findings li').first().innerText()).toBe('row 1: not numbers (1,5 holds a comma: write a decimal point, and no thousands marks)');
  expect(await page.getByRole('button', { name: 'Write to the sheet' }).isDisabled()).toBe(true);
});

test('source, issue date, voltage and place are asked for; nothing is written without them', async () => {
  const view = await pages.open('points', book());
  await fill(view, { Source: ' ', 'Issue date': '', 'Voltage, V': '0.4 A', 'First cell': 'Nowhere!A1' });
  await view.page.getByRole('button', { name: 'Write to the sheet' }).click();
  await view.page.locator('.jw-answer p').first().waitFor();
  expect(await view.page.locator('.jw-answer p').allInnerTexts()).toEqual([
    'Source is missing: the maker’s document that the points are from.',
    'Issue date is missing: the one on the document.',
    'Voltage: got "0.4 A": A is current, takes V.',
    'First cell is missing: a cell of a sheet of this workbook, such as Points!A1.',
  ]);
  expect(await view.page.locator('[aria-invalid]').count()).toBe(4);
  expect(await view.page.evaluate(() => (document.activeElement as HTMLInputElement).placeholder)).toBe('document, page');
  expect(await view.cells('Points')).toEqual({ D1: 'taken' });
});

test('cells that hold something are never overwritten; a refusal of the host is told', async () => {
  const view = await pages.open('points', book());
  await fill(view, { 'First cell': 'Points!C1' });
  const write = view.page.getByRole('button', { name: 'Write to the sheet' });
  await write.click();
  await view.page.getByText('Points!C1:D12 is not free: D1 holds something. Choose a first cell with 12 free rows and two free columns.').waitFor();
  await view.page.evaluate(() => (window as unknown as { driver: { refuse(words: string): void } }).driver.refuse('The sheet is protected.'));
  await view.page.getByLabel('First cell').fill('Points!F1');
  await write.click();
  await view.page.getByText('The sheet is protected.').waitFor();
  expect(await view.cells('Points')).toEqual({ D1: 'taken' });
});

test('by keyboard only: the selected cell, then the write', async () => {
  const view = await pages.open('points', book());
  await fill(view, { 'First cell': '' });
  await view.at('Points', 'G3:H9');
  await view.page.getByLabel('First cell').focus();
  await view.page.keyboard.press('Tab');
  await view.page.keyboard.press('Enter');
  expect(await view.page.getByLabel('First cell').inputValue()).toBe('Points!G3');
  await view.page.keyboard.press('Tab');
  await view.page.keyboard.press('Enter');
  await view.page.getByText('Written to Points!G3:H14').waitFor();
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: nothing sticks out sideways and text stands out from its ground', async (colorScheme) => {
    const view = await pages.open('points', book(), { viewport: { width, height: 900 }, colorScheme });
    await fill(view, { Source: '' });
    await view.page.locator('textarea').fill('A\ts\n100\t10\n150\t1\n140\t0.5\n900\t0.01');
    await view.page.getByRole('button', { name: 'Write to the sheet' }).click();
    await view.page.locator('.jw-answer p').first().waitFor();
    expect(await view.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await faintTexts(view.page)).toEqual([]);
    if (process.env['LOOK']) await view.page.screenshot({ path: `${process.env['LOOK']}/points-${width}-${colorScheme}.png`, fullPage: true });
  });
});
