import { explain } from '../../src/sheet/explain/explain';
import type { Selection } from '../../src/pane/host';
import { gridPaneHost } from '../../src/workbench/pane-host';
import { formula, number, opened, row, text } from './support/opened';

const table = '<table id="1" name="T" displayName="T" ref="A1:C2"><tableColumns count="3"><tableColumn id="1" name="k"/><tableColumn id="2" name="size"/><tableColumn id="3" name="holds"/></tableColumns></table>';
const open = () => opened({
  names: '<definedName name="Size">S!$B$2</definedName>',
  tables: [{ sheet: 'S', xml: table }],
  sheets: {
    S: row(1, text('A1', 'k'), text('B1', 'size'), text('C1', 'holds'))
      + row(2, number('A2', 143), number('B2', 25), formula('C2', '_xldudf_JW_CABLE_WITHSTAND(T[[#This Row],[k]],Size)', 12780625)),
  },
});

const settled = () => new Promise((resolve) => setTimeout(resolve, 80));

test('the pane hears of the selected cell, its formula as typed, its value, and every change', async () => {
  const book = open();
  const heard: Selection[] = [];
  const stop = gridPaneHost(book.file).watch((selection) => heard.push(selection));
  book.model.selection.selectCell(2, 1);
  await settled();
  expect(heard.at(-1)).toMatchObject({ kind: 'cell', address: 'C2', sheet: 'S', row: 1, column: 2, formula: '=JW.CABLE_WITHSTAND(T[@k],Size)', value: 12780625 });
  book.type('B2', '-25');
  await settled();
  expect(heard.at(-1)).toMatchObject({ value: { code: '#VALUE!', message: expect.stringContaining('csa_mm2') as string } });
  const count = heard.length;
  book.model.dispatch('RESIZE_COLUMNS_ROWS', { sheetId: 'sheet-1', dimension: 'COL', elements: [5], size: 50 });
  await settled();
  expect(heard).toHaveLength(count);
  stop();
  book.model.selection.selectCell(0, 0);
  await settled();
  expect(heard).toHaveLength(count);
});

test('what the host supplies is enough to explain the cell', async () => {
  const book = open();
  book.model.selection.selectCell(2, 1);
  const host = gridPaneHost(book.file);
  const heard: Selection[] = [];
  host.watch((each) => heard.push(each))();
  const selection = heard[0]!;
  if (selection.kind !== 'cell') throw new Error('no cell is selected');
  const { calls, disagrees } = await explain(selection, host.source, host.traits);
  expect(disagrees).toBe('');
  expect(calls[0]).toMatchObject({ name: 'JW.CABLE_WITHSTAND', state: 'worked', given: [{ name: 'k', text: '143' }, { name: 'csa_mm2', text: '25 mm²' }, { name: 'runs', text: '1' }] });
});

test('cells of a spill name the cell of their formula; a larger selection is named', async () => {
  const book = open();
  book.type('E1', '=SEQUENCE(3)');
  book.model.selection.selectZone({ cell: { col: 4, row: 1 }, zone: { left: 4, right: 5, top: 1, bottom: 2 } });
  const heard: Selection[] = [];
  gridPaneHost(book.file).watch((selection) => heard.push(selection))();
  expect(heard[0]).toMatchObject({ address: 'E2', within: 'E2:F3', spilledFrom: 'E1', row: 0, column: 4, part: [1, 0], value: 2, formula: '=SEQUENCE(3)' });
});
