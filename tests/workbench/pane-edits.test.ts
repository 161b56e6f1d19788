import { gridPaneHost } from '../../src/workbench/pane-host';
import { cellsOf, formula, number, opened, row, text } from './support/opened';

const table = '<table id="1" name="T" displayName="T" ref="A1:B2"><tableColumns count="2"><tableColumn id="1" name="k"/><tableColumn id="2" name="size"/></tableColumns></table>';
const open = () => {
  const book = opened({
    tables: [{ sheet: 'S', xml: table }],
    sheets: { S: row(1, text('A1', 'k'), text('B1', 'size')) + row(2, number('A2', 143), number('B2', 25), formula('C2', 'A2*B2', 3575)), Other: row(1, formula('A1', 'S!C2+1', 3576)) },
  });
  return { book, host: gridPaneHost(book.file) };
};

test('several cells are one step of undo; texts stay texts', async () => {
  const { book, host } = open();
  expect(await host.write([
    { sheet: 'S', address: 'D2', formula: '=JW.CABLE_WITHSTAND(A2,B2)' }, { sheet: 'S', address: 'D5', value: '5' }, { sheet: 's', address: 'D6', value: '=x' },
    { sheet: 'Other', address: 'B1', value: true }, { sheet: 'S', address: 'A2', value: 115 }, { sheet: 'S', address: 'B2', value: null },
  ])).toEqual({ done: true });
  expect([book.value('D5'), book.value('D6'), book.value('B1', 'Other'), book.value('A2'), book.value('B2')]).toEqual(['5', '=x', true, 115, null]);
  const { bytes } = book.save();
  expect(cellsOf(bytes)).toMatchObject({ D5: { value: '5' }, D6: { value: '=x', formula: null }, A2: { value: 115 } });
  book.model.dispatch('REQUEST_UNDO');
  expect([book.value('D5'), book.value('A2'), book.value('B2'), book.value('B1', 'Other')]).toEqual([null, 143, 25, null]);
  book.model.dispatch('REQUEST_REDO');
  expect(book.value('A2')).toBe(115);
});

test.each([
  [{ sheet: 'S', address: 'A1', value: 'reach' }, /heading of the table/],
  [{ sheet: 'Nowhere', address: 'A1', value: 1 }, /^There is no sheet Nowhere\.$/],
  [{ sheet: 'S', address: 'A', value: 1 }, /^A is no cell\.$/],
  [{ sheet: 'S', address: 'XFD1048576', value: 1 }, /beyond the rows and columns/],
])('all or none: %j', async (edit, words) => {
  const { book, host } = open();
  const done = await host.write([{ sheet: 'S', address: 'D2', value: 1 }, edit]);
  expect(done).toMatchObject({ done: false, words: expect.stringMatching(words) as string });
  expect(book.value('D2')).toBeNull();
  expect(book.save().edited).toBe(0);
});

test('formulas are listed as typed, with their values, of one sheet or of all', async () => {
  const { host } = open();
  const listed = (await host.formulaCells()).map(({ sheet, address, formula: own, value }) => [sheet, address, own, value]);
  expect(listed).toEqual([['S', 'C2', '=A2*B2', 3575], ['Other', 'A1', '=S!C2+1', 3576]]);
  expect((await host.formulaCells('other')).map(({ sheet }) => sheet)).toEqual(['Other']);
});

test('ranges are read, sheets named, cells selected; what is not there is words', async () => {
  const { book, host } = open();
  expect(await host.sheets()).toEqual(['S', 'Other']);
  expect(await host.read('S', 'A1:C2')).toEqual([['k', 'size', null], [143, 25, 3575]]);
  await expect(host.read('S', 'A')).rejects.toThrow(RangeError);
  await expect(host.read('Nowhere', 'A1')).rejects.toThrow(RangeError);
  expect(await host.select('Other', 'A1:B3')).toEqual({ done: true });
  expect(book.model.getters.getSheetName(book.model.getters.getActiveSheetId())).toBe('Other');
  expect(book.model.getters.getSelectedZone()).toEqual({ top: 0, left: 0, bottom: 2, right: 1 });
  expect(await host.select('Nowhere', 'A1')).toEqual({ done: false, words: 'There is no sheet Nowhere.' });
  expect(await host.select('S', 'A')).toEqual({ done: false, words: 'A is no range.' });
});

test('the file as it stands; where it cannot be written, the words of Save', async () => {
  const { book, host } = open();
  expect(await host.file()).toBe(book.bytes);
  await host.write([{ sheet: 'S', address: 'D2', value: 7 }]);
  expect(cellsOf((await host.file()) as Uint8Array)['D2']!.value).toBe(7);
  await host.write([{ sheet: 'S', address: 'D3', formula: '=CUBEVALUE(1)' }]);
  expect(await host.file()).toMatchObject({ done: false, words: expect.stringContaining('S!D3') as string });
});

test('new sheets and charts are left to a spreadsheet program, with a sample in their place', async () => {
  const { host } = open();
  for (const done of [await host.insertSheets([]), await host.chart({} as never)]) expect(done).toMatchObject({ done: false, instead: { label: 'Choose a sample workbook' } });
});
