import { published } from '../../src/sheet/published';
import { isAgreement } from '../../src/sheet/published/entry';
import { faintTexts } from '../support/contrast';
import { type ViewPages, viewPages } from '../support/view-page';

jest.setTimeout(30_000);

let pages: ViewPages;
beforeAll(async () => {
  pages = await viewPages();
}, 120_000);
afterAll(() => pages?.close());

const entries = Object.values(published).flat();
const strong = entries.filter(isAgreement);

test('says how many agree, keeps weaker ones and memory apart, and lists each with source and difference', async () => {
  const { page, troubles } = await pages.open('self-test');
  await page.getByRole('button', { name: 'Run the self-test' }).click();
  await page.getByText(`${strong.length} of ${strong.length} agree`).first().waitFor();
  const read = strong.filter(({ seen }) => seen === 'read').length;
  const told = await page.locator('.jw-told').innerText();
  expect(told).toContain(`${read} of ${read} read in the publication, ${strong.length - read} of ${strong.length - read} from memory of it.`);
  expect(told).toContain(`Beside them ${entries.length - strong.length} of ${entries.length - strong.length} weaker checks hold`);
  expect(await page.locator('[role=status]').first().textContent()).toBe(`${strong.length} of ${strong.length} agree`);
  await page.locator('summary', { hasText: 'Conductors' }).focus();
  await page.keyboard.press('Enter');
  await page.locator('.jw-compared').first().waitFor();
  expect(await page.locator('.jw-compared').count()).toBe(published['cable']!.length);
  const first = await page.locator('.jw-compared').first().innerText();
  for (const part of ['JW.CABLE_K', '115 A√s/mm²', 'ours', 'difference', 'BS 7671 table 43.1']) expect(first).toContain(part);
  expect(troubles).toEqual([]);
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: nothing sticks out sideways and text stands out from its ground', async (colorScheme) => {
    const { page } = await pages.open('self-test', undefined, { viewport: { width, height: 900 }, colorScheme });
    await page.getByRole('button', { name: 'Run the self-test' }).click();
    await page.locator('summary', { hasText: 'Impedances' }).click();
    await page.locator('.jw-compared').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(await faintTexts(page)).toEqual([]);
    if (process.env['LOOK']) await page.screenshot({ path: `${process.env['LOOK']}/self-test-${width}-${colorScheme}.png`, clip: { x: 0, y: 0, width, height: 900 } });
  });
});
