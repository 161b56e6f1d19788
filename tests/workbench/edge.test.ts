import { cellsOf, formula, number, opened, row } from './support/opened';

const book = opened({
  sheets: {
    'My sheet': row(1, number('A1', 3)) + row(2, number('A2', 4)),
    S2: row(1, number('A1', 1)),
  },
});

it.each<[string, unknown]>([
  ["='My sheet'!A1+1", 4], ["='my SHEET'!a1+1", 4], ['=s2!A1', 1], ['=SUM(A:A)', 7], ['=SUM(1:1)', 3], ['=SUM($A$1:A2)', 7], ["=SUM('My sheet'!A1:A2)", 7],
  ['=ROWS(A:A)', 1048576], ['=Sheet9!A1', '#REF!'], ['="a\\"', 'a\\'], ['="say ""x"""', 'say "x"'], ['= 1 + 2 ', 3], ['=XFD1048576', 0], ['=A1:A2 A2:A9', 4],
  ["=SUM('My sheet:S2'!A1)", '#UNSUPPORTED!'], ['=[1]Other!A1', '#UNSUPPORTED!'], ['=1e308*10', '#NUM!'], ['=""', ''], ['=TRUE', true],
])('%s', (typed, value) => {
  book.type('D5', typed);
  expect(book.value('D5')).toBe(value);
  expect(book.text('D5')).not.toBe('');
  if (typeof value === 'string' && value.startsWith('#')) expect(book.message('D5')).toMatch(/\w/);
});

it('a very long chain of cells is worked out', () => {
  const rows = Array.from({ length: 6000 }, (_, i) => row(i + 1, i === 5999 ? number('A6000', 1) : formula(`A${i + 1}`, `A${i + 2}+1`, 6000 - i))).join('');
  const long = opened({ sheets: { S: rows } });
  const { formulas, differing, notWorked } = long.agreement();
  expect(formulas).toBe(5999);
  expect(differing).toEqual([]);
  expect(notWorked).toEqual([]);
});

it('a text that reads like a link is that text to formulas, and is saved as it was typed', () => {
  book.type('E5', '[5](http://y.example)');
  book.type('F5', '=LEN(E5)');
  expect(book.value('F5')).toBe(21);
  expect(cellsOf(book.save().bytes, 'My sheet')['E5']!.value).toBe('[5](http://y.example)');
});

it('a long chain is worked through again when its end changes', () => {
  const rows = Array.from({ length: 3000 }, (_, i) => row(i + 1, i === 2999 ? number('A3000', 1) : formula(`A${i + 1}`, `A${i + 2}+1`, 3000 - i))).join('');
  const long = opened({ sheets: { S: rows } });
  long.type('A3000', '11');
  expect([long.value('A1'), long.value('A1500')]).toEqual([3010, 1511]);
});

it.each([
  '=SUM(A1:INDEX(C:C,2))', '=SUM(OFFSET(A1,0,1,2,1))', '=LET(a,A1,b,C2,SUM(a:b))', '=SUM(INDIRECT("B1:B"&2))', '=SUM(A1:A1:C2)', '=SUM(CHOOSE(2,A1,B1:B2))', '=SUMIF(A1:A2,">0",B1)',
])('%s is worked out again when a cell changes that it reads only while running', (typed) => {
  const cells = opened({ sheets: { S: row(1, number('A1', 1), number('B1', 2), number('C1', 3)) + row(2, number('A2', 1), number('B2', 2), number('C2', 3)) } });
  cells.type('E1', typed);
  const before = cells.value('E1') as number;
  cells.type('B2', '102');
  expect(cells.value('E1')).toBe(before + 100);
});

it('sheets whose names need quotes, and files that prefix their elements', () => {
  const prefixed = (xml: string): string => xml.replace(/<(\/?)([a-z])/gi, '<$1x:$2').replace(/xmlns="/g, 'xmlns:x="').replace(/<x:\?/g, '<?');
  const odd = opened({
    sheets: {
      "It's 1": `<?xml version="1.0"?>${prefixed('<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cols><col min="1" max="1" width="20.7109375"/></cols><sheetData><row r="1" ht="30"><c r="A1"><v>5</v></c></row></sheetData></worksheet>')}`,
      B: row(1, formula('A1', "'It''s 1'!A1*2", 10)),
    },
  });
  expect(odd.agreement()).toMatchObject({ differing: [], notWorked: [] });
  const { getters } = odd.model;
  expect([getters.getColSize('sheet-1', 0), getters.getRowSize('sheet-1', 0)]).toEqual([145, 40]);
  odd.type('A1', '6');
  expect(odd.value('A1', 'B')).toBe(12);
  odd.model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: 'sheet-1', sheetIdTo: 'sheet-2' });
  odd.model.selection.selectCell(0, 0);
  odd.model.dispatch('COPY');
  odd.model.dispatch('PASTE', { target: [{ top: 1, bottom: 1, left: 0, right: 0 }] });
  expect(odd.text('A2', 'B')).toBe("='It''s 1'!A2*2");
  expect(cellsOf(odd.save().bytes, "It's 1")['A1']!.value).toBe(6);
});
