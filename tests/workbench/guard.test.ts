import { formula, number, opened, row, text } from './support/opened';

const HEAD = '<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">';
const BORDERED = '<?xml version="1.0"?><styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="1"><font/></fonts><fills count="1"><fill/></fills>'
  + '<borders count="2"><border/><border><top style="thin"><color rgb="FF000000"/></top></border></borders><cellXfs count="2"><xf/><xf borderId="1"/></cellXfs></styleSheet>';
const table = '<table id="1" name="T" displayName="T" ref="A1:A3"><tableColumns count="1"><tableColumn id="1" name="In"/></tableColumns></table>';

const plain = () => opened({
  tables: [{ sheet: 'S', xml: table }],
  sheets: { S: row(1, text('A1', 'In'), number('C1', 5, ' s="1"')) + row(2, number('A2', 16), number('C2', 6)) + row(3, number('A3', 25), formula('D3', 'A2:A3*2', 32, ' t="array" ref="D3:D4"')) + row(4, '<c r="D4"><v>50</v></c>') },
});

describe('what Save could not write is turned away in words', () => {
  const sheetId = 'sheet-1';
  const zone = { top: 0, left: 0, bottom: 1, right: 1 };
  const CASES: [string, object, RegExp][] = [
    ['ADD_COLUMNS_ROWS', { sheetId, sheetName: 'S', dimension: 'ROW', base: 1, quantity: 1, position: 'before' }, /Rows and columns/],
    ['REMOVE_COLUMNS_ROWS', { sheetId, sheetName: 'S', dimension: 'ROW', elements: [1] }, /Rows and columns/],
    ['CREATE_SHEET', { sheetId: 'x', position: 1, name: 'New' }, /Sheets/],
    ['RENAME_SHEET', { sheetId, oldName: 'S', newName: 'Other' }, /Sheets/],
    ['SET_FORMATTING', { sheetId, target: [zone], style: { bold: true } }, /Formats/],
    ['ADD_MERGE', { sheetId, target: [zone] }, /Merged/],
    ['CREATE_NAMED_RANGE', { name: 'x', ranges: [{ _sheetId: sheetId, _zone: zone }] }, /names/],
    ['CUT', {}, /Cut and paste/],
    ['SORT_CELLS', { sheetId, col: 2, row: 0, zone: { top: 0, left: 2, bottom: 1, right: 2 }, sortDirection: 'asc' }, /Sorting/],
    ['INSERT_CELL', { zone, shiftDimension: 'ROW' }, /not shifted/],
    ['CREATE_FIGURE', { sheetId, figureId: 'f', tag: 'chart', col: 0, row: 0, offset: { x: 0, y: 0 }, size: { width: 10, height: 10 } }, /Charts/],
  ];

  it.each(CASES)('%s', (type, payload, words) => {
    const book = plain();
    const dispatch = book.model.dispatch as (type: string, payload: object) => { isSuccessful: boolean };
    expect(dispatch(type, payload).isSuccessful).toBe(false);
    expect(book.refusals.join(' ')).toMatch(words);
    expect(book.save().bytes).toBe(book.bytes);
  });

  it('headings of tables and parts of arrays', () => {
    const book = plain();
    expect([book.type('A1', 'other'), book.type('D4', '1'), book.type('D3', '2')]).toEqual([false, false, true]);
    expect(book.refusals[0]).toMatch(/heading of the table T/);
    expect(book.refusals[1]).toMatch(/array D3:D4/);
  });
});

it('typing a date and pasting bring contents along, no formats', () => {
  const book = plain();
  book.model.dispatch('UPDATE_CELL', { ...book.position('C2'), content: '2', format: '0%', style: { bold: true } });
  expect(book.model.getters.getCell(book.position('C2'))).toMatchObject({ content: '2', format: undefined });
  book.model.selection.selectCell(2, 0);
  book.model.dispatch('COPY');
  book.model.selection.selectCell(5, 5);
  book.model.dispatch('PASTE', { target: [{ top: 5, bottom: 5, left: 5, right: 5 }] });
  expect(book.model.getters.getCell(book.position('F6'))).toMatchObject({ content: '5', format: undefined });
  expect(book.refusals).toEqual([]);
});

it('a copied formula moves its references, tables and strings untouched', () => {
  const book = plain();
  book.type('E1', '=SUM(T[In])&"C1"&C1&$C$2');
  book.model.selection.selectCell(4, 0);
  book.model.dispatch('COPY');
  book.model.dispatch('PASTE', { target: [{ top: 1, bottom: 1, left: 4, right: 4 }] });
  expect(book.text('E2')).toBe('=SUM(T[In])&"C1"&C2&$C$2');
  expect(book.value('E2')).toBe('41C166');
});

describe('a protected sheet', () => {
  const book = opened({
    sheets: { S: `${HEAD}<cols><col min="5" max="5" width="9" style="2"/></cols><sheetData>${row(1, number('A1', 1), number('B1', 2, ' s="2"'), formula('C1', 'A1+B1', 3))}</sheetData><sheetProtection sheet="1"/></worksheet>` },
  });

  it.each([['A1', false], ['C1', false], ['D9', false], ['B1', true], ['E5', true]])('%s may be changed: %s', (address, may) => {
    expect(book.type(address, '7')).toBe(may);
    if (!may) expect(book.refusals.at(-1)).toMatch(/locked/);
  });

  it('locked cells are not cleared or pasted over either', () => {
    book.model.selection.selectZone({ cell: { col: 0, row: 0 }, zone: { top: 0, bottom: 0, left: 0, right: 2 } });
    book.model.dispatch('DELETE_CONTENT', { sheetId: book.position('A1').sheetId, target: [{ top: 0, bottom: 0, left: 0, right: 2 }] });
    book.model.selection.selectCell(1, 0);
    book.model.dispatch('COPY');
    book.model.dispatch('PASTE', { target: [{ top: 0, bottom: 0, left: 0, right: 0 }] });
    expect([book.value('A1'), book.text('C1')]).toEqual([1, '=A1+B1']);
  });
});

it('dragging the corner fills contents on, without a word about formats', () => {
  const book = opened({ parts: { 'xl/styles.xml': BORDERED }, sheets: { S: row(1, number('A1', 1, ' s="1"'), formula('B1', 'A1*2', 2)) + row(2, number('A2', 2, ' s="1"')) } });
  book.model.selection.selectZone({ cell: { col: 0, row: 0 }, zone: { left: 0, right: 1, top: 0, bottom: 1 } });
  book.model.dispatch('AUTOFILL_SELECT', { col: 0, row: 4 });
  book.model.dispatch('AUTOFILL');
  expect(['A3', 'A4', 'A5'].map((address) => book.value(address))).toEqual([3, 4, 5]);
  expect(book.text('B3')).toBe('=A3*2');
  expect(book.model.getters.getCellBorder(book.position('A4')) ?? {}).toEqual({});
  expect(book.refusals).toEqual([]);
});

it('a block of formulas is pasted, taken back and done again', () => {
  const rows = Array.from({ length: 6 }, (_, i) => row(i + 1, number(`A${i + 1}`, i + 1), formula(`B${i + 1}`, `A${i + 1}*2+LOG10(10)`, 2 * (i + 1) + 1), formula(`C${i + 1}`, `IF(B${i + 1}&gt;5,"a""b",-A${i + 1}^2)`, 0))).join('');
  const book = opened({ sheets: { S: rows } });
  book.model.selection.selectZone({ cell: { col: 1, row: 0 }, zone: { left: 1, right: 2, top: 0, bottom: 5 } });
  book.model.dispatch('COPY');
  book.model.dispatch('PASTE', { target: [{ left: 1, right: 2, top: 10, bottom: 10 }] });
  const block = () => ['B11', 'C11', 'B16', 'C16'].map((address) => book.text(address));
  const pasted = ['=A11*2+LOG10(10)', '=IF(B11>5,"a""b",-A11^2)', '=A16*2+LOG10(10)', '=IF(B16>5,"a""b",-A16^2)'];
  expect(block()).toEqual(pasted);
  book.model.dispatch('REQUEST_UNDO');
  expect(block()).toEqual(['', '', '', '']);
  book.model.dispatch('REQUEST_REDO');
  expect(block()).toEqual(pasted);
  expect(['B11', 'C11'].map((address) => book.value(address))).toEqual([1, 0]);
});
