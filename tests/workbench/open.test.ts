import { strFromU8, unzipSync } from 'fflate';
import { WorkbookRefusal } from '../../src/sheet/xlsx/refusal';
import { formula, number, opened, row, text } from './support/opened';

describe('contents of a file in the grid', () => {
  const book = opened({
    sheets: {
      S: row(1, number('A1', 1e-7), text('B1', '0012'), text('C1', '=1+1'), text('D1', '1/2'), text('E1', 'TRUE'), text('F1', "'quoted"), text('G1', ''))
        + row(2, '<c r="A2" t="b"><v>1</v></c>', '<c r="B2" t="e"><v>#N/A</v></c>', number('C2', 45000, ' s="1"'), text('D2', '#VALUE!')),
    },
  });

  it.each([
    ['A1', 1e-7], ['B1', '0012'], ['C1', '=1+1'], ['D1', '1/2'], ['E1', 'TRUE'], ['F1', "'quoted"], ['G1', ''], ['A2', true], ['B2', '#N/A'], ['C2', 45000],
  ])('%s holds what the file holds', (address, value) => expect(book.value(address)).toBe(value));

  it('a text that looks like an error is a text to formulas', () => {
    book.type('F5', '=LEN(D2)&ISERROR(D2)&ISERROR(B2)');
    expect(book.value('F5')).toBe('7FALSETRUE');
  });
});

describe('formulas of a file', () => {
  const table = '<table id="1" name="Cables" displayName="Cables" ref="A1:C3"><tableColumns count="3"><tableColumn id="1" name="metal"/><tableColumn id="2" name="ins"/><tableColumn id="3" name="k"/></tableColumns></table>';
  const book = opened({
    names: '<definedName name="Vn">S!$F$1</definedName><definedName name="Twice">2*S!$F$1</definedName>',
    tables: [{ sheet: 'S', xml: table }],
    sheets: {
      S: row(1, text('A1', 'metal'), text('B1', 'ins'), text('C1', 'k'), number('F1', 415))
        + row(2, text('A2', 'Cu'), text('B2', 'XLPE'), formula('C2', '_xldudf_JW_CABLE_K(Cables[[#This Row],[metal]],Cables[[#This Row],[ins]])', 143), formula('F2', 'Vn*2', 830), formula('G2', 'Twice', 830))
        + row(3, text('A3', 'Al'), text('B3', 'PVC'), formula('C3', '_XLDUDF_jw_CABLE_K(Cables[[#This Row],[metal]],Cables[[#This Row],[ins]])', 76), formula('F3', 'SUM(Cables[k])', 219), formula('G3', '_xlfn.LET(_xlpm.x,F1,_xlpm.x+1)', 416))
        + row(4, formula('F4', 'F1:F3', 0), formula('G4', 'F1:F3*2', 1, ' t="array" ref="G4:G5"'), formula('H4', '_xlfn._xlws.SORT(F1:F3)', 219, ' t="array" ref="H4:H6"').replace('<c ', '<c cm="1" '))
        + row(5, '<c r="G5"><v>1</v></c>', '<c r="H5"><v>415</v></c>') + row(6, '<c r="H6"><v>830</v></c>')
        + row(7, formula('F7', 'CUBEVALUE("a")', 12), formula('G7', 'F7+1', 13), formula('H7', '[1]Other!A1', 5), formula('I7', '-2^2', 4)),
    },
  });

  it.each([
    ['C2', 'Cables[@metal]'], ['G3', '=LET(x,F1,x+1)'], ['F2', '=Vn*2'],
  ])('%s is shown as it is typed', (address, shown) => expect(book.text(address)).toContain(shown));

  it.each<[string, unknown]>([
    ['C2', 143], ['C3', 76], ['F2', 830], ['G2', 830], ['F3', 219], ['G3', 416], ['I7', 4], ['G5', 1660], ['H5', 415], ['H6', 830],
  ])('%s is worked out', (address, value) => expect(book.value(address)).toBe(value));

  it('a range where one value is taken means the cell in line, for a formula that is no array', () => {
    expect(book.value('F4')).toBe('#VALUE!');
    book.type('F4', '=F1:F2');
    expect([book.value('F4'), book.value('F5')]).toEqual([415, 830]);
  });

  it.each([['F7', /CUBEVALUE.*not supported here/], ['G7', /CUBEVALUE.*not supported here/], ['H7', /another workbook/]])('%s is refused in words, never shown as a value', (address, words) => {
    expect(book.value(address)).toMatch(/^#/);
    expect(book.message(address)).toMatch(words);
  });

  it('nothing of it hides behind IFERROR', () => {
    book.type('I9', '=IFERROR(F7,0)');
    expect(book.value('I9')).toMatch(/^#/);
  });
});

it('what comes in by names, tables, INDIRECT and spills is worked out again when it changes', () => {
  const book = opened({
    names: '<definedName name="Vn">S!$A$1</definedName><definedName name="Sum">SUM(S!$A$1:$A$2)</definedName>',
    tables: [{ sheet: 'S', xml: '<table id="1" name="T" displayName="T" ref="C1:C3"><tableColumns count="1"><tableColumn id="1" name="x"/></tableColumns></table>' }],
    sheets: {
      S: row(1, number('A1', 1), text('C1', 'x'), formula('E1', 'Vn+1', 2), formula('F1', 'Sum', 3), formula('G1', 'SUM(T[x])', 7), formula('H1', 'INDIRECT("A1")', 1))
        + row(2, number('A2', 2), number('C2', 3), formula('E2', 'E1*10', 20)) + row(3, number('C3', 4)),
    },
  });
  book.type('A1', '10');
  book.type('C3', '40');
  expect(['E1', 'E2', 'F1', 'G1', 'H1'].map((address) => book.value(address))).toEqual([11, 110, 12, 43, 10]);
  book.type('J1', '=_xlfn.SEQUENCE(A2)');
  book.type('K1', '=SUM(J1#)');
  expect(book.value('K1')).toBe(3);
  book.type('A2', '3');
  expect(book.value('K1')).toBe(6);
});

describe('agreement with the stored values', () => {
  it('counts formulas, those that differ and those not worked out', () => {
    const book = opened({ sheets: { S: row(1, number('A1', 2), formula('B1', 'A1*2', 4), formula('C1', 'A1*3', 7), formula('D1', 'CUBEVALUE(1)', 9)) } });
    const { formulas, differing, notWorked } = book.agreement();
    expect({ formulas, differing, notWorked: notWorked.map(({ where }) => where) }).toEqual({ formulas: 3, differing: ['S!C1'], notWorked: ['S!D1'] });
  });

  it('a circle is told, not shown as a value', () => {
    const book = opened({ sheets: { S: row(1, formula('A1', 'B1+1', 1), formula('B1', 'A1+1', 2)) } });
    expect(book.value('A1')).toBe('#CYCLE!');
    expect(book.agreement().notWorked).toHaveLength(2);
  });
});

describe('what the reader of a file is told', () => {
  const told = (parts: Parameters<typeof opened>[0]): string => opened(parts).file.notices.join(' ');
  const sheets = { S: row(1, number('A1', 1)) };

  it.each([
    ['<workbookPr date1904="1"/>', /1904/],
    ['<workbookPr/><calcPr fullPrecision="0"/>', /digits that its cells show/],
  ])('%s', (workbookPr, words) => expect(told({ sheets, workbookPr })).toMatch(words));

  it('macros and links to other workbooks are told, never run, and kept by Save', () => {
    const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
    const links = `<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId90" Type="${office}/styles" Target="styles.xml"/>`
      + `<Relationship Id="rId2" Type="http://schemas.microsoft.com/office/2006/relationships/vbaProject" Target="vbaProject.bin"/><Relationship Id="rId3" Type="${office}/externalLink" Target="externalLinks/externalLink1.xml"/></Relationships>`;
    const macro = new Uint8Array([1, 2, 3, 250]);
    const book = opened({
      sheets: { S: row(1, number('A1', 1), formula('B1', '[1]Other!A1+A1', 6)) },
      parts: { 'xl/_rels/workbook.xml.rels': links, 'xl/vbaProject.bin': macro, 'xl/externalLinks/externalLink1.xml': '<externalLink/>' },
    });
    expect(book.file.notices.join(' ')).toMatch(/macros.*never run.*1 other workbook/);
    book.type('A1', '2');
    const parts = unzipSync(book.save().bytes);
    expect([...parts['xl/vbaProject.bin']!]).toEqual([...macro]);
    expect(strFromU8(parts['xl/externalLinks/externalLink1.xml']!)).toBe('<externalLink/>');
    expect(strFromU8(parts['xl/worksheets/sheet1.xml']!)).toContain('<v>6</v>');
  });

  it('nothing where there is nothing to tell', () => expect(told({ sheets })).toBe(''));
});

it.each([
  [new TextEncoder().encode('no zip at all'), /zip|workbook/i],
  [new Uint8Array(0), /./],
])('a file that is no workbook is refused in words (%#)', (bytes, words) => {
  expect(() => opened(bytes)).toThrow(WorkbookRefusal);
  expect(() => opened(bytes)).toThrow(words);
});

it('SUBTOTAL leaves out subtotals, and rows that a filter or a hand has hidden as Excel does', () => {
  const rows = '<row r="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c></row><row r="2"><c r="A2"><v>1</v></c></row><row r="3" hidden="1"><c r="A3"><v>10</v></c></row><row r="4"><c r="A4"><f>SUBTOTAL(9,A2:A3)</f><v>11</v></c></row>';
  const sheet = (filter: string) => opened({ sheets: { S: `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData>${filter}</worksheet>` } });
  const sums = (book: ReturnType<typeof opened>) => ['=SUBTOTAL(9,A2:A4)', '=SUBTOTAL(109,A2:A4)'].map((formula) => {
    book.type('C1', formula);
    return book.value('C1');
  });
  expect(sums(sheet(''))).toEqual([11, 1]);
  expect(sums(sheet('<autoFilter ref="A1:A4"><filterColumn colId="0"><filters><filter val="1"/></filters></filterColumn></autoFilter>'))).toEqual([1, 1]);
});
