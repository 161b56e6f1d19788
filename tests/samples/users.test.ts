import { strFromU8, unzipSync } from 'fflate';
import { CellError } from '../../src/functions/kernel/cell';
import { bookOf, bytesOf, cellOf, changedBook, tableOf } from './support';

describe('estimator', () => {
  const book = bookOf('estimator');
  test('both options of a way are judged at one fault level', () => {
    const rows = tableOf(book, 'Options');
    for (const way of ['W1', 'W2']) expect(new Set(rows.filter((row) => row['way'] === way).map((row) => row['Ik3 max'])).size).toBe(1);
  });
  test('the break-even is where the present costs meet', () => {
    const [way] = tableOf(book, 'Ways');
    expect(way!['in words']).toMatch(/^A is cheaper above 0\.0\d+ faults a year$/);
    const at = changedBook('estimator', [{ ...cellOf(book, 'Ways', 'W1', 'faults a year'), value: way!['break-even'] as number }]);
    const [there] = tableOf(at, 'Ways');
    expect(there!['A present cost']).toBeCloseTo(there!['B present cost'] as number, 6);
  });
  test('a breaker is never called fit after a fault, and one way has no break-even', () => {
    for (const row of tableOf(book, 'Cost')) expect(row['after a fault']).toMatch(/^(replace|within Ics|above Ics)/);
    expect(tableOf(book, 'Ways')[1]).toMatchObject({ 'break-even': 'none', 'in words': 'A is cheaper at every rate' });
  });
});

describe('engineer', () => {
  const book = bookOf('engineer');
  test('a dozen rows are added behind the approved ones, which stand untouched', () => {
    const status = tableOf(book, 'Cables').map((row) => row['status']);
    expect(status).toEqual([...Array<string>(16).fill('approved'), ...Array<string>(12).fill('added')]);
    expect(tableOf(book, 'Approval').every((row) => row['inputs'] === 'untouched' && row['results'] === 'untouched')).toBe(true);
    expect(['G9', 'G10', 'G11'].map((address) => book.value('Approval', address))).toEqual(['untouched', 'untouched', 'untouched']);
  });
  test('the approved rows give what the approved schedule gives', () => {
    const approved = tableOf(bookOf('cable-schedule'), 'Cables');
    const now = tableOf(book, 'Cables');
    for (const [i, row] of approved.entries()) expect(now[i]).toMatchObject(row);
  });
  test.each([
    ['Cables', 'C05', 'size', 95, 'G11', true],
    ['Boards', 'GLAZE', 'length', 86, 'G9', false],
    ['Devices', 'F5', 'read at', 26.4, 'G10', false],
  ])('a change of an approved row of %s is told', (table, key, column, value, address, inRows) => {
    const changed = changedBook('engineer', [{ ...cellOf(book, table, key, column), value }]);
    expect(changed.value('Approval', address)).toBe('CHANGED');
    expect(tableOf(changed, 'Approval').filter((row) => row['inputs'] === 'CHANGED').map(({ cable }) => cable)).toEqual(inRows ? [key] : []);
  });
  test('a changed board changes the results that hang on it, and only those', () => {
    const changed = changedBook('engineer', [{ ...cellOf(book, 'Boards', 'GLAZE', 'length'), value: 100 }]);
    expect(tableOf(changed, 'Approval').filter((row) => row['results'] === 'CHANGED').map(({ cable }) => cable)).toEqual(['C10', 'C11', 'C12']);
  });
  test('an added row may change without a word on the approved ones', () => {
    const changed = changedBook('engineer', [{ ...cellOf(book, 'Cables', 'C20', 'length'), value: 55 }]);
    expect(tableOf(changed, 'Approval').every((row) => row['inputs'] === 'untouched' && row['results'] === 'untouched')).toBe(true);
  });
  test('sheets are protected without a password, approved cells locked and added ones open', () => {
    const parts = unzipSync(bytesOf('engineer'));
    const sheets = Object.keys(parts).filter((name) => /^xl\/worksheets\/sheet\d+\.xml$/.test(name)).map((name) => strFromU8(parts[name]!));
    const protections = sheets.flatMap((xml) => /<sheetProtection [^>]*>/.exec(xml) ?? []);
    expect(protections).toHaveLength(7);
    for (const tag of protections) expect(tag).not.toMatch(/hashValue|password|saltValue/);
    const styles = strFromU8(parts['xl/styles.xml']!);
    const formats = [.../<cellXfs[\s\S]*?<\/cellXfs>/.exec(styles)![0].matchAll(/<xf [^>]*\/>|<xf [^>]*>[\s\S]*?<\/xf>/g)].map(([xf]) => xf);
    const cables = strFromU8(parts[book.workbook.facts.sheets.find(({ name }) => name === 'Cables')!.part.replace(/^\//, '')]!);
    const locked = (address: string): boolean => {
      const style = Number(new RegExp(`<c r="${address}"[^>]* s="(\\d+)"`).exec(cables)![1]);
      return !/<protection [^>]*locked="0"/.test(formats[style]!);
    };
    expect([locked('D9'), locked('D24'), locked('D25'), locked('D36')]).toEqual([true, true, false, false]);
  });
});

describe('checker', () => {
  const book = bookOf('checker');
  const findings = tableOf(book, 'Findings').filter((row) => row['item'] !== '–');

  test.each([
    ['ip at KILN 1', /^DIFFERS -29/, /r\.m\.s\. against peak/],
    ['X1: R hot', /^DIFFERS -16\.67/, /70 °C against 20 °C/],
    ['X1: Ik1 min', /^DIFFERS \+10/, /voltage factor of the greatest against the least/],
    ['X3: Ik1 min', /^DIFFERS \+7\d/, /line against phase/],
    ['X1: time allowed', /^DIFFERS \+100/, /./],
    ['X2: k²S²', /^DIFFERS \+54/, /k² of 143 against 115/],
    ['X5: withstand', /^DIFFERS in words$/, /^none$/],
    ['X6: withstand', /^DIFFERS in words$/, /^none$/],
    ['X4: let-through', /^DIFFERS -99/, /a thousand/],
    ['X4: volt drop', /^DIFFERS -26/, /^none$/],
    ['F32: let-through', /^DIFFERS \+2320/, /^none$/],
    ['F32: I2', /^DIFFERS -9\.38/, /./],
    ['Q5: breaks, serves again', /^DIFFERS in words$/, /^none$/],
    ['F31 over F32 by joule', /^DIFFERS in words$/, /^none$/],
    ['F33 over F34 by ratio', /^DIFFERS in words$/, /^none$/],
    ['X6: neutral current', /^one is missing$/, /^none$/],
  ])('the mistake at %s is found', (item, finding, why) => {
    expect(findings.find((row) => row['item'] === item)).toMatchObject({ finding: expect.stringMatching(finding), 'why?': expect.stringMatching(why), class: expect.stringMatching(/^[ABC]$/) });
  });
  test('nothing else is found, and the count says so', () => {
    expect(findings).toHaveLength(16);
    expect(book.value('Findings', 'A7')).toBe('16 found');
    expect(tableOf(book, 'Check').filter((row) => row['agrees?'] === 'agrees').map(({ item }) => item)).toEqual(['Ik3 at MSB', 'Z of one transformer', 'X6: Ik1 min', 'X4: load']);
  });
  test('verdicts that cannot be shown say why', () => {
    const caution = (item: string) => tableOf(book, 'Check').find((row) => row['item'] === item)!['caution'];
    expect(caution('X6: withstand')).toContain('levels differ');
    expect(caution('F33 over F34 by ratio')).toContain('one type only');
  });
  test('a corrected figure leaves the list', () => {
    const place = cellOf(book, 'Given', 'ip at KILN 1', 'value');
    const corrected = changedBook('checker', [{ ...place, value: 45.8 }]);
    const items = tableOf(corrected, 'Findings').map((row) => row['item']);
    expect(items).not.toContain('ip at KILN 1');
    expect(items.filter((item) => item !== '–')).toHaveLength(15);
  });
});

describe('starter', () => {
  const book = bookOf('starter');
  const TABLES = [['Boards', 'board'], ['Cables', 'cable'], ['Devices', 'device'], ['Options', 'key'], ['Cost', 'key'], ['Ways', 'way'], ['Check', 'item'], ['Sources', 'input']] as const;

  test.each(TABLES)('blank rows of %s show nothing at all', (table, key) => {
    const blank = tableOf(book, table).filter((row) => row[key] === null);
    expect(blank.length).toBeGreaterThan(2);
    for (const row of blank) for (const value of Object.values(row)) expect([null, ' ']).toContain(value);
  });
  test('a half-filled row says what is missing, in words, and leaves the others alone', () => {
    const { sheet, address } = cellOf(book, 'Boards', 'MSB', 'board');
    const next = address.replace(/\d+$/, (row) => String(Number(row) + 1));
    const begun = changedBook('starter', [{ sheet, address: next, value: 'DB 1' }, { sheet, address: next.replace('A', 'B'), value: 'MSB' }]);
    const [first, second] = tableOf(begun, 'Boards');
    // The working tells the number of rows.
    expect({ ...first, working: '' }).toEqual({ ...tableOf(book, 'Boards')[0], working: '' });
    expect(second!['Ik3 max']).toBeInstanceOf(CellError);
    expect((second!['Ik3 max'] as CellError).message).toMatch(/missing: /);
    expect(second!['caution']).toMatch(/^input: .*missing: /);
    expect(begun.value('Boards', 'B7')).toMatch(/^row 2: /);
  });
  test('a filled row works', () => {
    const { sheet, address } = cellOf(book, 'Boards', 'MSB', 'board');
    const row = Number(/\d+$/.exec(address)![0]) + 1;
    const filled = changedBook('starter', ['DB 1', 'MSB', 60, 95, 'copper', 1, 50].map((value, i) => ({ sheet, address: `${'ABCDEFG'[i]!}${row}`, value })));
    const cells = tableOf(filled, 'Boards')[1]!;
    expect(cells['Ik3 max']).toBeGreaterThan(5);
    expect(cells['with motors']).toBe(cells['Ik3 max']);
    expect(Object.values(cells).filter((value) => value instanceof CellError)).toEqual([]);
  });
});
