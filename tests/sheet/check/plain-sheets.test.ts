import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { addressOf } from '../../../src/sheet/xlsx/address';
import { calculated, checked, told } from '../../support/checked';
import { type Typed, type TypedTable, typedBook } from '../../support/sheet-text';

/** Sheets without tables, as they are typed row by row; what is found in them when all is calculated. */
type Rows = readonly (readonly (Typed | undefined)[])[];

const cellsOf = (rows: Rows): Record<string, Typed> =>
  Object.fromEntries(rows.flatMap((row, r) => row.flatMap((typed, c) => (typed === undefined || typed === null || typed === '' ? [] : [[addressOf(r, c), typed] as const]))));

const book = (sheets: Readonly<Record<string, Rows>>, tables: readonly TypedTable[] = []): Uint8Array =>
  calculated(typedBook({ sheets: Object.fromEntries(Object.entries(sheets).map(([name, rows]) => [name, cellsOf(rows)])), tables }));

const findings = (sheets: Readonly<Record<string, Rows>>, tables?: readonly TypedTable[]): string[] => told(checked(book(sheets, tables)).findings);

const rows = (count: number, row: (i: number) => readonly (Typed | undefined)[]): Rows => Array.from({ length: count }, (_, i) => row(i));
const at = (what: string, column: string, from: number, to: number): string[] => Array.from({ length: to - from + 1 }, (_, i) => `${what}!${column}${from + i}`);

/** A schedule of eight cables: headings in row 3, units in row 4. */
const schedule = (edits: Readonly<Record<string, Typed>> = {}, units: readonly string[] = ['', '', '[m]', '[mm²]', '', '', 'A√s/mm²', 'mΩ', 'kA rms', 'A²s']) => {
  const cells = cellsOf([
    ['Schedule of cables'], [],
    ['Cable', 'From', 'Length', 'Size', 'Metal', 'Insulation', 'k', 'Z hot', 'Ik″ min', 'Withstand'], units,
    ...rows(8, (i) => {
      const row = i + 5;
      return [`C-${i + 1}`, 'MSB', 40 + 10 * i, [25, 35, 50, 70][i % 4]!, i % 2 ? 'Al' : 'Cu', i % 3 ? 'XLPE' : 'PVC', `=JW.CABLE_K(E${row},F${row})`,
        `=JW.IMP_CABLE(C${row},D${row},E${row},1,IF(F${row}="PVC",70,90))`, `=JW.FAULT_3PH_MIN(JW.IMP_SERIES("2+8i",H${row}),400)`, `=JW.CABLE_WITHSTAND(G${row},D${row})`];
    }),
  ]);
  return told(checked(calculated(typedBook({ sheets: { Sched: { ...cells, ...edits } } }))).findings);
};

describe('units as people write them', () => {
  test.each<[string, readonly string[]]>([
    ['in brackets and with r.m.s.', ['', '', '[m]', '[mm²]', '', '', 'A√s/mm²', '[mΩ]', 'kA rms', 'A²s']],
    ['bare', ['', '', 'm', 'mm²', '-', '-', 'A√s/mm²', 'mΩ', 'kA', 'A²s']],
  ])('%s under the headings: nothing is wrong', (_, units) => expect(schedule({}, units)).toEqual([]));
  test.each<[string, readonly string[], string[]]>([
    ['a length in km', ['', '', '[km]', '[mm²]', '', '', 'A√s/mm²', '[mΩ]', 'kA rms', 'A²s'], at('A unit Sched', 'H', 5, 12)],
    ['a length in km, bare', ['', '', 'km', 'mm²', '', '', 'A√s/mm²', 'mΩ', 'kA', 'A²s'], at('A unit Sched', 'H', 5, 12)],
    ['a result in A', ['', '', 'm', 'mm²', '', '', 'A√s/mm²', 'mΩ', 'A rms', 'A²s'], at('A unit Sched', 'I', 5, 12)],
  ])('%s', (_, units, expected) => expect(schedule({}, units)).toEqual(expected));
  test.each<[string, string, string, string[]]>([
    ['behind a stroke', 'U / V', 'Ik″ / kA', []],
    ['behind a stroke, another one', 'U / kV', 'Ik″ / kA', at('A unit S', 'C', 2, 4)],
    ['behind "in"', 'volts in kV', 'Ik″ in kA', at('A unit S', 'C', 2, 4)],
    ['on a line of its own', 'volts\nkV', 'Ik″\n[kA]', at('A unit S', 'C', 2, 4)],
    ['of the result', 'U / V', 'Ik″ [A] max', at('A unit S', 'C', 2, 4)],
  ])('%s', (_, volts, current, expected) => {
    expect(findings({ S: [['Z / mΩ', volts, current], ...rows(3, (i) => [`${2 + i}+8i`, 415, `=ROUND(JW.FAULT_3PH_MAX(A${i + 2},B${i + 2}),2)`])] })).toEqual(expected);
  });
  test('a heading over a blank cell in the row of units', () => {
    const loops = (heading: string, ...z: readonly Typed[]): string[] => findings({ S: [['Loop', heading, 'Ik'], ['', '', 'kA'], ...z.map((each, i) => [`L${i}`, each, `=JW.FAULT_LOOP_MIN(B${i + 3},230)`])] });
    expect(loops('Zs / mΩ', 350, 450)).toEqual([]);
    expect(loops('Zs / Ω', '0.35 Ω', '0.45 Ω')).toEqual([]);
    expect(loops('Zs / Ω', 0.35, 0.45)).toEqual(['A unit S!C3', 'A unit S!C4']);
    expect(loops('Zs / mΩ', '350', 450, 520)).toEqual(['B number-as-text S!B3']);
  });
  test('all that contradicts in one cell is told at once', () => {
    const [finding, ...more] = checked(book({ S: [['rating', 1000, 'MVA'], ['uk', 6, '%'], ['loss', 10.5, 'W'], ['Z', '=JW.IMP_TRANSFORMER(B1,B2,B3,400)', 'Ω']] })).findings;
    expect(more).toEqual([]);
    expect(finding!.reason).toBe('rating_kVA of IMP_TRANSFORMER takes kVA, S!B1 says MVA; loss_kW of IMP_TRANSFORMER takes kW, S!B3 says W; IMP_TRANSFORMER gives mΩ, the sheet says Ω');
  });
  test('a schedule that lies on its side has one column of units', () => {
    const lying = (length: string): string[] => findings({ S: [['Cable', '', 'C1', 'C2', 'C3'], ['Length', length, 10, 20, 30], ['Size', 'mm²', 16, 25, 35], ['Z', 'mΩ', ...['C', 'D', 'E'].map((c) => `=JW.IMP_CABLE(${c}2,${c}3,"Cu")`)]] });
    expect(lying('m')).toEqual([]);
    expect(lying('km')).toEqual(['A unit S!C4', 'A unit S!D4', 'A unit S!E4']);
  });
  test('letters and words that are no units where they do not stand among units', () => {
    const fault = (i: number) => `=JW.FAULT_3PH_MAX("${3 + i}+8i",400)`;
    expect(findings({ S: [['Board', 'Fault', '', 'Device'], ['', 'max', 'min', 'rated'], ['', 'kA', 'kA', 'A'], ...rows(3, (i) => [`DB${i}`, fault(i), fault(i + 1), 100])] })).toEqual([]);
    expect(findings({ S: [['Transformer', 'A', 'B'], ['Board', 'level', 'level'], ...rows(3, (i) => [`DB${i}`, fault(i), fault(i + 1)])] })).toEqual([]);
    expect(findings({ S: [['Board', 'L / N'], ...rows(3, (i) => [`DB${i}`, fault(i)])] })).toEqual([]);
  });
});

describe('a filled block without a table', () => {
  test.each<[string, Readonly<Record<string, Typed>>, string[]]>([
    ['a figure in its first row', { I5: 7.2 }, ['B constant-over-formula Sched!I5']],
    ['a figure in its last row', { I12: 2.2 }, ['B constant-over-formula Sched!I12']],
    ['figures in four rows', { I6: 7.2, I7: 7.1, I8: 7, I9: 6.5 }, at('B constant-over-formula Sched', 'I', 6, 9)],
    ['another formula in its first row', { J5: '=JW.CABLE_WITHSTAND(G5,D5,2)' }, ['B unlike-neighbours Sched!J5']],
    ['another formula in its last row', { J12: '=JW.CABLE_WITHSTAND(G12,D12,2)' }, ['B unlike-neighbours Sched!J12']],
    ['a number that is text in its first row', { C5: '40' }, ['B number-as-text Sched!C5']],
  ])('%s', (_, edits, expected) => expect(schedule(edits)).toEqual(expected));
});

describe('right habits that look unusual', () => {
  test.each<[string, Readonly<Record<string, Rows>>]>([
    ['rows of totals within a block', { S: [['Item', 'A', 'kW', 'share'], ...[0, 1, 2].flatMap((board) => {
      const from = 2 + board * 4;
      return [...rows(3, (i) => [`L${i}`, 10 + i, `=B${from + i}*0.6`, `=C${from + i}/C$14`]), [`Total ${board}`, `=SUM(B${from}:B${from + 2})`, `=SUM(C${from}:C${from + 2})`, `=C${from + 3}/C$14`]];
    }), ['All', '=B5+B9+B13', '=C5+C9+C13', '=C14/C$14']] }],
    ['two formulas in turn', { S: [['Case', 'A', 'f', 'rated'], ...rows(10, (i) => [i % 2 ? 'winter' : 'summer', 100 + i, 0.9, i % 2 ? `=B${i + 2}*C${i + 2}` : `=B${i + 2}*C${i + 2}*0.95`])] }],
    ['a value and what follows from it in turn', { S: [['Board', 'value'], ...rows(12, (i) => [`B${i >> 1}`, i % 2 ? `=B${i + 1}*2.1` : 5 + i])] }],
    ['a chain that begins with another formula', { S: [['Tap', 'm', 'from start', 'volts'], ...rows(6, (i) => [`T${i}`, 12 + i, i ? `=C${i + 1}+B${i + 2}` : '=B2', i ? `=D${i + 1}-C${i + 2}*0.1` : '=400-C2*0.1'])] }],
    ['figures shared out among ranges', { L: [['Board', 'A'], ...rows(9, (i) => [`DB${i}`, 10 + i])], S: [['=SUM(L!B2:B4)'], ['=SUM(L!B5:B7)'], ['=SUM(L!B8:B10)']] }],
    ['years as headings', { S: [['Item', 2023, 2024], ['a', 1, 2], ['b', 4, 5], ['Total', '=SUM(B2:B3)', '=SUM(C2:C3)']] }],
    ['voltages as headings', { S: [['Board', 400, 690], ['a', 1, 2], ['b', 3, 4], ['Total', '=SUM(B2:B3)', '=SUM(C2:C3)']] }],
    ['months as headings', { S: [['Item', 1, 2, 3], ['a', 1, 2, 4], ['b', 4, 5, 6], ['Total', '=SUM(B2:B3)', '=SUM(C2:C3)', '=SUM(D2:D3)']] }],
    ['a matrix that is looked up by its headings', { L: [['size', 16, 25, 120], [1, 5, 6, 7], [2, 8, 9, 10], [3, 11, 12, 13]], S: [['=INDEX(L!$B$2:$D$4,MATCH(2,L!$A$2:$A$4,0),MATCH(25,L!$B$1:$D$1,0))']] }],
    ['the greatest of the rows under their mean', { S: [['Step', 'kWh', 'h', 'kW'], ...rows(4, (i) => [`s${i}`, 100 + i, 2, `=B${i + 2}/C${i + 2}`]), ['Mean', '=SUM(B2:B5)', '=SUM(C2:C5)', '=B6/C6'], ['Max', '=MAX(B2:B5)', '=MAX(C2:C5)', '=MAX(D2:D5)']] }],
    ['verdicts that rows are counted by', { S: [['A', 'limit', 'test'], ...rows(4, (i) => [10 + i, 12, `=IF(A${i + 2}<=B${i + 2},"pass","FAIL")`])], Count: [['verdict', 'rows'], ['pass', '=COUNTIF(S!C2:C5,A2)'], ['FAIL', '=COUNTIF(S!C2:C5,A3)']] }],
    ['numbers of items as text', { S: [['Item', 'A'], [1, 5], ['2.1', 6], ['2.2', 7], [3, 8], [4, 9]] }],
    ['k of an earth conductor over a row of units', { S: [['Metal', 'Insulation', 'k line', 'k earth'], ['', '', 'A√s/mm²', 'A√s/mm²'], ['copper', 'PVC', 115, 143], ['copper', 'XLPE', 143, 176]] }],
  ])('%s', (_, sheets) => expect(findings(sheets)).toEqual([]));

  test('a chain in a table begins with another formula', () => {
    const taps: TypedTable = { name: 'Taps', sheet: 'S', at: 'A2', columns: [{ name: 'tap' }, { name: 'length' }, { name: 'chainage' }], rows: rows(5, (i) => [`T${i}`, 10 + i, i ? `=C${i + 2}+B${i + 3}` : '=B3']).map((row) => row.map((typed) => typed ?? null)) };
    expect(findings({ S: [] }, [taps])).toEqual([]);
  });
});

describe('a block that is filled to the right', () => {
  const year = (edits: Readonly<Record<string, Typed>> = {}) => checked(calculated(typedBook({ sheets: { S: { ...cellsOf([
    ['', 'Jan', 'Feb', 'Mar', 'Apr', 'Sum'], ['in', 1, 2, 3, 4, '=SUM(B2:E2)'], ['out', 2, 1, 2, 1, '=SUM(B3:E3)'],
    ['net', '=B2-B3', '=C2-C3', '=D2-D3', '=E2-E3', '=SUM(B4:E4)'], ['so far', '=B4', '=B5+C4', '=C5+D4', '=D5+E4', '=E5'],
  ]), ...edits } } }))).findings;
  test('nothing is wrong', () => expect(told(year())).toEqual([]));
  test('a constant below constants', () => {
    const found = year({ C4: -1 });
    expect(told(found)).toEqual(['B constant-over-formula S!C4']);
    expect(found[0]!.reason).toBe('typed over a formula: the cells beside it hold =B2-B3');
  });
  test('a sum that ends a month early', () => expect(told(year({ F3: '=SUM(B3:D3)' }))).toEqual(['B short-range S!F3']));
});

test('the same other formula in two rows of a table', () => {
  const table: TypedTable = { name: 'Q', sheet: 'S', at: 'A1', columns: [{ name: 'id' }, { name: 'a' }, { name: 'b' }], rows: Array.from({ length: 6 }, (_, i) => [`C${i}`, 10 + i, `=B${i + 2}*${i === 1 || i === 3 ? 3 : 2}`]) };
  expect(findings({ S: [] }, [table])).toEqual(['B unlike-neighbours S!C3', 'B unlike-neighbours S!C5']);
});

test('verdicts that are expected, held against those of today by EXACT', () => {
  expect(findings({ S: [['case', 'expected', 'got', 'same'], ...rows(4, (i) => [`T${i}`, 'pass', `=IF(${i}<9,"pass","FAIL")`, `=EXACT(B${i + 2},C${i + 2})`])] })).toEqual([]);
});

describe('lists of lookups', () => {
  const list: Rows = [['device', 'A'], ['F1', 76], ['F2', 101], ['F3', 125], ['F4', 151]];
  test('all of it', () => expect(findings({ L: list, S: rows(3, (i) => [`F${i + 1}`, `=VLOOKUP(A${i + 1},L!$A$2:$B$5,2,FALSE)`]) })).toEqual([]));
  test('that ends a row early, told by its names', () => {
    expect(findings({ L: list, S: rows(3, (i) => [`F${i + 1}`, `=INDEX(L!$B$2:$B$5,MATCH(A${i + 1},L!$A$2:$A$4,0))`]) })).toEqual(at('B short-range S', 'B', 1, 3));
  });
  test('that moves on with its formula', () => {
    expect(findings({ L: list, S: rows(3, (i) => [`F${i + 2}`, `=VLOOKUP(A${i + 1},L!A${i + 2}:B${i + 5},2,FALSE)`]) })).toEqual(at('B short-range S', 'B', 2, 3));
  });
});

/** The first sheet of a book with a note on one of its cells. */
function withNote(bytes: Uint8Array, address: string, note: string): Uint8Array {
  const parts = unzipSync(bytes);
  const sheet = Object.keys(parts).find((name) => /worksheets\/[^/]+\.xml$/.test(name))!;
  const name = sheet.slice(sheet.lastIndexOf('/') + 1);
  parts[`xl/worksheets/_rels/${name}.rels`] = strToU8('<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId77" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/comments" Target="../comments1.xml"/></Relationships>');
  parts['xl/comments1.xml'] = strToU8(`<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>x</author></authors><commentList><comment ref="${address}" authorId="0"><text><r><t>${note}</t></r></text></comment></commentList></comments>`);
  parts['[Content_Types].xml'] = strToU8(strFromU8(parts['[Content_Types].xml']!).replace('</Types>', '<Override PartName="/xl/comments1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.comments+xml"/></Types>'));
  return zipSync(parts);
}

describe('a constant on purpose', () => {
  const rowsOf: Rows = [['Cable', 'A', 'diversity', 'design'], ...rows(8, (i) => [`C${i}`, 20 + i, 0.8, i === 4 ? 32 : `=B${i + 2}*C${i + 2}`])];
  test('is a remark where a note on the cell tells of it, with the words of the note', () => {
    const [finding, ...more] = checked(withNote(book({ S: rowsOf }), 'D6', 'by the client, letter 12')).findings;
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ class: 'C', kind: 'constant-over-formula', cell: 'D6', reason: expect.stringContaining('"by the client, letter 12"') });
  });
  test('must be corrected without one, and where the note cannot be read', () => {
    expect(findings({ S: rowsOf })).toEqual(['B constant-over-formula S!D6']);
    expect(told(checked(withNote(book({ S: rowsOf }), 'D6', '<broken')).findings)).toEqual(['B constant-over-formula S!D6']);
  });
});

describe('c and temperature where the function takes both cases', () => {
  const boards = (c: number, temperature: number): Rows => [
    ['board', 'fed from', 'z'], ['MSB', 'source', `=JW.IMP_CABLE(10,240,"Cu",2,${temperature})`], ['DB1', 'MSB', `=JW.IMP_CABLE(60,95,"Cu",1,${temperature})`],
    [], [`=JW.NET_RADIAL_AT(A2:C3,"2+9i","DB1","Ik3",400,${c})`],
  ];
  test.each<[string, number, number, string[]]>([
    ['the greatest fault', 1.05, 20, []],
    ['the least', 0.95, 90, []],
    ['c of neither', 1, 90, ['A voltage-factor S!A5']],
    ['the least with cold conductors', 0.95, 20, ['A temperature-of-case S!C2', 'A temperature-of-case S!C3']],
  ])('of a network: %s', (_, c, temperature, expected) => expect(findings({ S: boards(c, temperature) })).toEqual(expected));
  test('of a loop limit, a transformer, a declared level', () => {
    expect(findings({ S: [['=JW.LOOP_MAX(320,230,1)', '=JW.IMP_TRANSFORMER(1000,6,10,415,1)', '=JW.IMP_TRANSFORMER(1000,6,10,415,1,FALSE)', '=JW.IMP_DECLARED(25,0.3,400,1)']] }))
      .toEqual(['A voltage-factor S!A1', 'A voltage-factor S!B1']);
  });
});

test('a mark that says there is nothing to work out is a remark', () => {
  expect(findings({ S: [['Way', 'load', 'A', 'rated'], ...rows(8, (i) => (i === 3 ? [i, 'spare', '–', 'n/a'] : [i, 'pump', 10 + i, `=C${i + 2}*1.25`]))] })).toEqual(['C constant-over-formula S!D5']);
});

describe('references', () => {
  const three = (last: string): readonly string[] => findings({ Sheet: [['a', 'b', 'sum'], ...rows(4, (i) => [i + 1, i + 2, i === 3 ? last : `=A${i + 2}+B${i + 2}`])] });
  test('one that is lost is found, though the stored error agrees with the formula', () => expect(three('=A5+#REF!')).toContain('B lost-reference Sheet!C5'));
  test('its name in a text, and an error that is looked for, are none', () => expect(three('=IF(ISERROR(A5),"#REF! in A5",A5+B5)').filter((line) => line.includes('lost-reference'))).toEqual([]));
});
