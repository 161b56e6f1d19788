import type { BrowserContextOptions } from 'playwright-core';
import { faintTexts } from '../support/contrast';
import { type Desk, SAMPLE, type ServedWorkbench, cellOf, openDesk, serveWorkbench } from '../support/desk';
import { handMade } from '../support/hand-made-workbook';
import { validateWorkbook } from '../support/validate-xlsx';

/** The pane beside the workbench's grid, used as a person uses it: from a question to a formula in a cell, and to a caution put right. */

jest.setTimeout(60_000);

let served: ServedWorkbench;

beforeAll(async () => {
  served = await serveWorkbench();
}, 120_000);

afterAll(() => served?.close());

const text = (address: string, value: string): string => `<c r="${address}" t="inlineStr"><is><t>${value}</t></is></c>`;
const number = (address: string, value: number): string => `<c r="${address}"><v>${value}</v></c>`;
const verdict = '_xldudf_JW_LETTHROUGH_TEST(8000000,_xldudf_JW_CABLE_WITHSTAND(B2,C2),10,10)';

/** Invented: two cables in a table, one verdict beside it, a sheet that is hidden, a sheet that is protected. */
const works = handMade({
  sheets: {
    Works: `<row r="1">${text('A1', 'ref')}${text('B1', 'k')}${text('C1', 'size')}${text('D1', 'stands')}</row>`
      + `<row r="2">${text('A2', 'W1')}${number('B2', 115)}${number('C2', 16)}<c r="F2" t="str"><f>${verdict}</f><v>FAIL</v></c></row>`
      + `<row r="3">${text('A3', 'W2')}${number('B3', 143)}${number('C3', 25)}<c r="F3"><f>_xldudf_JW_CABLE_WITHSTAND(B3,C3,2)</f><v>51122500</v></c></row>`,
  },
});

async function desk(options?: BrowserContextOptions, bytes: Uint8Array | 'sample' = works): Promise<Desk> {
  const at = await openDesk(served, options);
  if (bytes === 'sample') await at.page.locator('#sample').selectOption(SAMPLE);
  else await at.openFile('works.xlsx', bytes);
  await at.opened(bytes === 'sample' ? SAMPLE : 'works.xlsx');
  return at;
}

test('find → fill → write → explain, by mouse; undone with one key; saved in the form of files', async () => {
  const at = await desk();
  await at.go('D2');
  await at.button('Find a function').click();
  await at.page.keyboard.type('will the cable stand it');
  await at.page.locator('.jw-found', { hasText: 'JW.CABLE_WITHSTAND' }).first().click();
  expect(await at.page.locator('.jw-target').innerText()).toBe('Works!D2');
  await at.page.getByText('Still needed: k, csa_mm2.').waitFor();

  await at.go('B2');
  await at.button('Take the selected cell into k').click();
  await at.go('C2');
  await at.button('Take the selected cell into csa_mm2').click();
  await at.page.locator('#jw-fill-runs').fill('30');
  await at.page.getByText('30 is outside 1 to 24').first().waitFor();
  expect(await at.page.locator('#jw-fill-runs').getAttribute('aria-invalid')).toBe('true');
  await at.page.locator('#jw-fill-runs').fill('2');
  await at.page.locator('.jw-preview', { hasText: '1.35424E+07' }).waitFor();
  const shown = await at.page.locator('.jw-preview').innerText();
  for (const part of ['=JW.CABLE_WITHSTAND(B2,C2,2)', '(k·S·n)²', 'IEC 60364-4-43:2023', 'even sharing taken']) expect(shown).toContain(part);
  expect(await at.page.locator('.jw-holds').allInnerTexts()).toEqual(['115', '16', '']);

  await at.button('Write formula').click();
  await at.page.getByText('Written into Works!D2. Undo in the sheet takes it back.').waitFor();
  // The focus is still in the pane.
  await at.page.keyboard.press('Control+z');
  await at.page.waitForFunction(() => document.querySelector('.jw-fill > .jw-note')?.textContent === '');
  await at.page.keyboard.press('Control+y');
  await at.page.getByText('D2 holds something already').waitFor();
  await at.button('Explain it').click();
  await at.page.waitForFunction(() => document.querySelector('#pane .jw-cell h2')?.textContent === 'D2');
  expect(await at.page.locator('#pane .jw-value').innerText()).toBe('1.35424E+07 A²s');
  expect(await at.page.locator('#file-state').innerText()).toBe('not saved');

  const { bytes: saved } = await at.save();
  expect(validateWorkbook(saved)).toEqual([]);
  expect(cellOf(saved, 'Works', 'D2')).toMatchObject({ formula: '_xldudf_JW_CABLE_WITHSTAND(B2,C2,2)', value: 13542400 });

  await at.go('E9');
  await at.page.keyboard.press('Control+z');
  expect(await at.explained('D2')).toContain('blank');
  expect(at.troubles).toEqual([]);
});

test('a formula that could not be saved is not written', async () => {
  const at = await desk({}, 'sample');
  await at.sheet('Cables');
  await at.go('AD30');
  await at.tab('Find').click();
  await at.page.locator('[type=search]').fill('CABLE_WITHSTAND');
  await at.page.keyboard.press('Enter');
  await at.page.locator('#jw-fill-k').fill('=[@k]');
  await at.page.locator('#jw-fill-csa_mm2').fill('70');
  await at.button('Write formula').click();
  await at.page.getByText('Not written: [@k] stands in no table. Take the cells anew for Cables!AD30.').waitFor();
  expect(await at.page.locator('#file-state').innerText()).toBe('');
});

test('a caution is found, its cell shown, its argument put right', async () => {
  const at = await desk();
  await at.tab('Cautions').click();
  const view = at.page.getByRole('tabpanel', { name: 'Cautions' });
  await view.getByText('2 formulas with JW functions in Works: 1 FAIL, 2 cautions.').waitFor();
  expect(await view.locator('.jw-notice').allInnerTexts()).toEqual([
    expect.stringMatching(/^JW\.LETTHROUGH_TEST: .*let_A2s 8000000 A²s.*FAIL\s+F2$/s),
    expect.stringMatching(/^let_A2s is half a cycle or more of 10 kA: .*\s+F2$/),
    expect.stringMatching(/^even sharing taken: a fault inside one run loads that run alone\s+F3$/),
  ]);
  await view.getByRole('button', { name: 'F2', exact: true }).first().click();
  await at.tab('Explain').click();
  await at.page.waitForFunction(() => document.querySelector('#pane .jw-cell h2')?.textContent === 'F2');
  expect(await at.page.locator('.jw-precedents').innerText()).toMatch(/B2\s*115\s*C2\s*16/);
  expect(await at.page.locator('.jw-call.jw-inner .jw-name').allInnerTexts()).toEqual(['JW.CABLE_WITHSTAND']);

  await at.button('Change its arguments').click();
  expect(await at.page.locator('#jw-fill-withstand_A2s').inputValue()).toBe('=JW.CABLE_WITHSTAND(B2,C2)');
  await at.page.locator('#jw-fill-withstand_A2s').fill('=JW.CABLE_WITHSTAND(B2,25)');
  await at.page.locator('.jw-preview .jw-result', { hasText: 'pass' }).waitFor();
  await at.page.keyboard.press('Enter');
  await at.page.getByText('Written into Works!F2.').waitFor();

  await at.tab('Cautions').click();
  await view.getByText('2 formulas with JW functions in Works: 2 cautions.').waitFor();
  expect(at.troubles).toEqual([]);
});

test('the whole way by keyboard', async () => {
  const at = await desk();
  const { keyboard } = at.page;
  await at.go('D3');
  const focused = (): Promise<string> => at.page.evaluate(() => document.activeElement?.textContent ?? '');
  await keyboard.press('F6');
  expect(await focused()).toBe('Explain');
  await keyboard.press('F6');
  expect(await focused()).toBe('Licences');
  await keyboard.press('F6');
  expect(await at.page.evaluate(() => document.activeElement?.id)).toBe('sample');
  await keyboard.press('Shift+F6');
  await keyboard.press('Shift+F6');
  await keyboard.press('Home');
  await keyboard.press('Tab');
  await keyboard.type('k factor of a cable');
  await keyboard.press('ArrowDown');
  expect(await at.page.evaluate(() => document.activeElement?.textContent)).toContain('JW.CABLE_K');
  await keyboard.press('Enter');
  await keyboard.type('cu');
  await keyboard.press('Tab');
  await keyboard.press('Tab');
  await keyboard.type('XLPE');
  await keyboard.press('Enter');
  await at.page.getByText('Written into Works!D3.').waitFor();
  expect(await at.explained('D3')).toMatch(/143 A√s\/mm²[\s\S]*=JW\.CABLE_K\("cu","XLPE"\)/);
  await at.tab('Find').click();
  expect(await at.page.locator('.jw-chip').allInnerTexts()).toEqual(['JW.CABLE_K']);
  expect(at.troubles).toEqual([]);
});

test('what cannot be written is said and not written', async () => {
  const at = await desk();
  await at.go('D2');
  await at.button('Find a function').click();
  await at.page.keyboard.type('CABLE_WITHSTAND');
  await at.page.keyboard.press('Enter');
  await at.button('Write formula').click();
  await at.page.getByText('Still needed: k, csa_mm2.').last().waitFor();
  expect(await at.page.evaluate(() => document.activeElement?.id)).toBe('jw-fill-k');
  await at.page.locator('#jw-fill-k').fill('=SUM(');
  await at.page.locator('#jw-fill-csa_mm2').fill('=D2');
  await at.page.locator('.jw-wrong', { hasText: 'cannot be read as a formula' }).waitFor();
  await at.button('Write formula').click();
  await at.page.getByText('k cannot be read.').waitFor();
  await at.page.locator('#jw-fill-k').fill('115');
  await at.button('Write formula').click();
  await at.page.getByText('Not written: the formula would read the cell that it is to stand in.').waitFor();
  expect(await at.explained('D2')).toContain('blank');
  expect(at.troubles).toEqual([]);
});

test('in the sample: a column of this row by its name; the heading of a table is refused in words', async () => {
  const at = await desk({}, 'sample');
  await at.page.locator('.o-sheet-list .o-sheet-name', { hasText: /^Cables$/ }).click();
  await at.go('Q9');
  await at.tab('Find').click();
  await at.page.locator('[type=search]').fill('CABLE_WITHSTAND');
  await at.page.keyboard.press('Enter');
  await at.go('D9');
  await at.button('Take the selected cell into csa_mm2').click();
  expect(await at.page.locator('#jw-fill-csa_mm2').inputValue()).toMatch(/^=\[@\w+\]$/);
  await at.page.locator('#jw-fill-k').fill('115');
  await at.go('D8');
  await at.button('Use the selected cell').click();
  await at.page.locator('#jw-fill-csa_mm2').fill('25');
  await at.button('Write formula').click();
  await at.page.locator('.jw-outcome .jw-trouble', { hasText: 'heading of the table' }).waitFor();
  expect(at.troubles).toEqual([]);
});

test('every notice of the whole sample workbook leads to its cell; the check runs on the workbook as it stands', async () => {
  const at = await desk({}, 'sample');
  await at.tab('Cautions').click();
  await at.page.getByLabel('Where to look').selectOption('book');
  const view = at.page.getByRole('tabpanel', { name: 'Cautions' });
  await view.getByText(/^\d+ formulas with JW functions in the workbook: \d+ FAIL/).waitFor({ timeout: 30_000 });
  const counts = (await view.locator('.jw-notices > h2 .jw-count').allInnerTexts()).map(Number);
  expect(await view.locator('.jw-notices .jw-jump').count()).toBe(counts.reduce((sum, count) => sum + count, 0));
  const last = view.locator('.jw-notices .jw-jump').last();
  const [sheet, address] = (await last.innerText()).split('!') as [string, string];
  await last.click();
  await at.page.waitForFunction((name) => document.querySelector('.o-sheet.active .o-sheet-name')?.textContent === name, sheet);
  await view.getByRole('button', { name: 'Check', exact: true }).click();
  await view.getByText(/^\d+ of \d+ formulas worked again from what the sheets hold/).waitFor({ timeout: 30_000 });
  expect(await at.explained(address)).not.toBe('');
  expect(at.troubles).toEqual([]);
});

describe.each([320, 480])('at %i px', (width) => {
  test.each(['light', 'dark'] as const)('%s: every view of a function fits and stands out from its ground', async (colorScheme) => {
    const at = await desk({ colorScheme });
    await at.page.addStyleTag({ content: `#pane { width: ${width}px !important; }` });
    const fits = async (): Promise<void> => {
      expect(await at.page.locator('#pane').evaluate((pane) => [...pane.querySelectorAll('*')].filter((each) => each.getClientRects().length > 0 && !each.matches('.jw-unseen') && each.getBoundingClientRect().right > pane.getBoundingClientRect().right + 0.5).map((each) => each.outerHTML.slice(0, 80)))).toEqual([]);
      expect(await faintTexts(at.page)).toEqual([]);
    };
    await fits();
    await at.tab('Find').click();
    await fits();
    await at.page.locator('[type=search]').fill('earth loop');
    await fits();
    await at.page.locator('[type=search]').fill('LETTHROUGH_TEST');
    await at.page.keyboard.press('Enter');
    await at.page.locator('#jw-fill-let_A2s').fill('=JW.CABLE_WITHSTAND(JW.CABLE_K("aluminium","mineral covered"),"25000 mm²",SUM(B2:B3))');
    await at.page.locator('.jw-wrong:not(:empty)').first().waitFor();
    await fits();
    await at.explained('F2');
    await fits();
    await at.tab('Cautions').click();
    await at.page.locator('.jw-notice').first().waitFor();
    await fits();
  });
});
