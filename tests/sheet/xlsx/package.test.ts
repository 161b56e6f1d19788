import { zipSync, strToU8 } from 'fflate';
import { openPackage } from '../../../src/sheet/xlsx/package';
import { WorkbookRefusal } from '../../../src/sheet/xlsx/refusal';
import { sheetCells } from '../../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../../src/sheet/xlsx/workbook';
import { SIZE_LIMITS } from '../../../src/sheet/xlsx/zip/limits';
import { type HandMade, handMade, handMadeParts, styles, zipped } from '../../support/hand-made-workbook';

const plain: HandMade = { sheets: { S: '<row r="1"><c r="A1"><v>1</v></c></row>' } };
const parts = (what: Partial<HandMade> = {}): Record<string, string | Uint8Array> => handMadeParts({ ...plain, ...what });
const good = (): Uint8Array => zipped(parts());
const readAll = (bytes: Uint8Array): void => {
  const workbook = openWorkbook(bytes);
  for (const sheet of workbook.facts.sheets) sheetCells(workbook, sheet);
};
const find = (bytes: Uint8Array, mark: number, from = 0): number => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = from; at < bytes.length - 4; at++) if (view.getUint32(at, true) === mark) return at;
  throw new Error('no such record');
};
/** The good workbook with some of its bytes changed. */
const spoiled = (change: (bytes: Uint8Array, view: DataView, record: number, end: number) => void): Uint8Array => {
  const bytes = good();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  change(bytes, view, find(bytes, 0x02014b50), find(bytes, 0x06054b50));
  return bytes;
};
const twice = (): Uint8Array => {
  const bytes = zipSync({ ...Object.fromEntries(Object.entries(parts()).map(([name, text]) => [name, strToU8(text as string)])), 'xl/stylez.xml': strToU8(styles) });
  const text = new TextDecoder('latin1').decode(bytes).replaceAll('xl/stylez.xml', 'xl/styles.xml');
  return Uint8Array.from(text, (character) => latin1.get(character)!);
};
const latin1 = new Map(Array.from({ length: 256 }, (_, byte) => [new TextDecoder('latin1').decode(Uint8Array.of(byte)), byte]));

describe('files that are not opened, and what the reader is told', () => {
  const sheet = (text: string): Uint8Array => zipped(parts({ sheets: { S: text } }));
  const rows = (text: string): Uint8Array => zipped(parts({ sheets: { S: text } }));
  const cases: [string, () => Uint8Array, RegExp][] = [
    ['nothing', () => new Uint8Array(), /empty/],
    ['no zip', () => strToU8('<html>no workbook</html>'), /not an \.xlsx workbook: it is no zip package/],
    ['password', () => Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0), /password-protected or an old \.xls/],
    ['cut off', () => good().slice(0, 900), /cut off or damaged/],
    ['cut off at the front', () => strToU8('PK').slice(), /cut off or damaged/],
    ['a bit turned over', () => spoiled((bytes, view, record) => { bytes[view.getUint32(record + 42, true) + 60]! ^= 0x10; }), /does not unpack to what its check sum says/],
    ['encrypted entry', () => spoiled((_, view, record) => view.setUint16(record + 8, 1, true)), /encrypted/],
    ['foreign packing', () => spoiled((_, view, record) => view.setUint16(record + 10, 12, true)), /packed by method 12/],
    ['directory elsewhere', () => spoiled((_, view, _record, end) => view.setUint32(end + 16, 5, true)), /list of parts is broken|not where it should be/],
    ['entry past the end', () => spoiled((_, view, record) => view.setUint32(record + 42, 0xfffff, true)), /not where it should be/],
    ['entries on one another', () => spoiled((_, view, record) => view.setUint32(record + 20, 100_000, true)), /runs into the next one or past the end/],
    ['split', () => spoiled((_, view, _record, end) => view.setUint16(end + 4, 3, true)), /one piece of a zip split/],
    ['a part too large', () => spoiled((_, view, record) => view.setUint32(record + 24, 300 * 1024 * 1024, true)), /would unpack to 300 MB; up to 256 MB/],
    ['a part blown up', () => spoiled((_, view, record) => view.setUint32(record + 24, 200 * 1024 * 1024, true)), /times its size, as no worksheet does/],
    ['traversal', () => zipped({ ...parts(), 'xl/../../evil.xml': '<a/>' }), /unsafe name "xl\/..\/..\/evil.xml"/],
    ['absolute name', () => zipped({ ...parts(), '/etc/x.xml': '<a/>' }), /unsafe name/],
    ['drive', () => zipped({ ...parts(), 'C:\\x.xml': '<a/>' }), /unsafe name/],
    ['the same part twice', twice, /"xl\/styles.xml" stands in it twice/],
    ['names that differ in case only', () => zipped({ ...parts(), 'XL/STYLES.XML': styles }), /stands in it twice/],
    ['some other zip', () => zipped({ 'hello.txt': 'hello' }), /no workbook: it lacks \[Content_Types\].xml/],
    ['no main part', () => zipped(parts({ parts: { '_rels/.rels': '<Relationships/>' } })), /names no main part/],
    ['main part missing', () => zipped(parts({ parts: { 'xl/workbook.xml': null } })), /"xl\/workbook.xml", the officeDocument of the package, is missing/],
    ['sheet missing', () => zipped(parts({ parts: { 'xl/worksheets/sheet1.xml': null } })), /"xl\/worksheets\/sheet1.xml", the sheet "S", is missing/],
    ['sheet without relationship', () => zipped(parts({ parts: { 'xl/_rels/workbook.xml.rels': '<Relationships/>' } })), /nothing tells where the sheet "S" stands/],
    ['relationship out of the file', () => zipped(parts({ target: () => '../../../../etc/passwd' })), /leads out of the file/],
    ['a relationship twice', () => zipped(parts({ parts: { '_rels/.rels': '<Relationships><Relationship Id="a" Type="x" Target="b"/><Relationship Id="a" Type="x" Target="b"/></Relationships>' } })), /relationship "a" twice/],
    ['no sheet', () => zipped(parts({ parts: { 'xl/workbook.xml': '<workbook/>' } })), /workbook has no sheet/],
    ['binary workbook', () => zipped(parts({ parts: { '[Content_Types].xml': (parts()['[Content_Types].xml'] as string).replace(/spreadsheetml\.sheet\.main\+xml/, 'ms-excel.sheet.binary.macroEnabled.main') } })), /binary workbook \(\.xlsb\)/],
    ['text document', () => zipped(parts({ parts: { '[Content_Types].xml': (parts()['[Content_Types].xml'] as string).replace('spreadsheetml.sheet.main', 'wordprocessingml.document.main') } })), /text document or a presentation/],
    ['DOCTYPE in a sheet', () => sheet('<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet><sheetData/></worksheet>'), /DOCTYPE or entity declaration/],
    ['DOCTYPE in a part that is never read', () => zipped({ ...parts(), 'docProps/core.xml': `<?xml version="1.0"?><!-- ${'x'.repeat(5000)} --><!DOCTYPE x><a/>` }), /docProps\/core.xml holds a DOCTYPE/],
    ['a part of comments', () => zipped({ ...parts(), 'x.xml': `<!-- ${Array.from({ length: 90_000 }, (_, index) => index).join(' ')} --><a/>` }), /x.xml holds no element in its first 262144 characters/],
    ['UTF-16', () => zipped(parts({ parts: { 'xl/styles.xml': Uint8Array.of(0xff, 0xfe, 0x3c, 0) } })), /UTF-16; only UTF-8/],
    ['another encoding', () => zipped(parts({ parts: { 'xl/styles.xml': '<?xml version="1.0" encoding="ISO-8859-1"?><styleSheet/>' } })), /"ISO-8859-1"; only UTF-8/],
    ['bytes that are no UTF-8', () => zipped(parts({ parts: { 'xl/styles.xml': Uint8Array.of(0x3c, 0x61, 0x3e, 0xff, 0x3c, 0x2f, 0x61, 0x3e) } })), /not written in UTF-8/],
    ['no worksheet', () => sheet('<?xml version="1.0"?><html/>'), /is no worksheet but "html"/],
    ['tags that do not nest', () => rows('<row r="1"><c r="A1"><v>1</c></v></row>'), /closes "c" where it is not open/],
    ['XML cut off', () => sheet('<?xml version="1.0"?><worksheet><sheetData><row r="1">'), /ends before "row" is closed/],
    ['half a tag', () => sheet('<?xml version="1.0"?><worksheet><sheetData'), /middle of a tag/],
    ['unknown entity', () => rows('<row r="1"><c r="A1" t="str"><v>&nbsp;</v></c></row>'), /"&nbsp;" stands for no character/],
    ['word of the language', () => rows('<row r="1"><c r="A1" t="str"><v>&constructor;</v></c></row>'), /"&constructor;" stands for no character/],
    ['forbidden character', () => rows('<row r="1"><c r="A1" t="str"><v>&#0;</v></c></row>'), /"&#0;" stands for no character/],
    ['a cell twice', () => rows('<row r="1"><c r="B1"/><c r="A1"/><c r="B1"/></row>'), /holds the cell B1 twice/],
    ['a row twice', () => rows('<row r="2"/><row r="1"/><row r="2"/>'), /holds row 2 twice/],
    ['a cell in another row', () => rows('<row r="1"><c r="A2"/></row>'), /holds the cell "A2" in row 1/],
    ['a cell off the sheet', () => rows('<row r="1"><c r="XFE1"/></row>'), /holds the cell "XFE1"/],
    ['a row off the sheet', () => rows('<row r="1048577"/>'), /row numbered "1048577"/],
    ['no number', () => rows('<row r="1"><c r="A1"><v>1,5</v></c></row>'), /holds "1,5" in A1, which is no number/],
    ['hexadecimal', () => rows('<row r="1"><c r="A1"><v>0x10</v></c></row>'), /no number/],
    ['beyond all numbers', () => rows('<row r="1"><c r="A1"><v>1e999</v></c></row>'), /no number/],
    ['no shared text', () => rows('<row r="1"><c r="A1" t="s"><v>7</v></c></row>'), /no number of a shared text/],
    ['no truth value', () => rows('<row r="1"><c r="A1" t="b"><v>2</v></c></row>'), /no truth value/],
    ['no date', () => rows('<row r="1"><c r="A1" t="d"><v>2025-02-30</v></c></row>'), /no date/],
    ['unknown type', () => rows('<row r="1"><c r="A1" t="z"><v>2</v></c></row>'), /unknown type "z"/],
    ['shared formula without its first', () => rows('<row r="1"><c r="A1"><f t="shared" si="3"/></c></row>'), /shared formula that is not written before it/],
    ['two sheets of one name', () => zipped(parts({ sheets: { S: '', s: '' } })), /two sheets are named "s"/],
    ['name of no sheet', () => zipped(parts({ names: '<definedName name="x" localSheetId="4">1</definedName>' })), /name "x" belongs to no sheet/],
  ];
  test.each(cases)('%s', (_, make, words) => {
    expect(() => readAll(make())).toThrow(WorkbookRefusal);
    expect(() => readAll(make())).toThrow(words);
  });
  test('the words hold no line breaks or control characters of the file', () => {
    const name = 'evil\u202e\u0007name';
    expect(() => readAll(zipped(parts({ parts: { 'xl/workbook.xml': `<workbook><sheets><sheet name="${name}" sheetId="1"/></sheets></workbook>`.replace('\u0007', '') } })))).toThrow(/^[^\p{Cc}\p{Cf}]*$/u);
  });
  test('sizes are judged before anything is unpacked', () => {
    expect(() => openPackage(good(), { ...SIZE_LIMITS, file: 100 })).toThrow(/The file has/);
    expect(() => openPackage(good(), { ...SIZE_LIMITS, total: 1000 })).toThrow(/would unpack to more than/);
    expect(() => openPackage(good(), { ...SIZE_LIMITS, entries: 3 })).toThrow(/up to 3 are read/);
  });
  test('an entry that holds more than it states is left at once', () => {
    const bomb = zipSync({ 'xl/media/a.xml': new Uint8Array(5_000_000), '[Content_Types].xml': strToU8('<Types/>') });
    const view = new DataView(bomb.buffer);
    view.setUint32(find(bomb, 0x02014b50) + 24, 1000, true);
    expect(() => openPackage(bomb)).toThrow(/does not unpack to what its check sum says/);
  });
});

describe('files that look odd and are opened', () => {
  const value = (bytes: Uint8Array): unknown => {
    const workbook = openWorkbook(bytes);
    return sheetCells(workbook, workbook.facts.sheets[0]!)[0]?.value;
  };
  test('targets from the root, or with a folder up and down', () => {
    expect(value(zipped(parts({ target: (file) => `/xl/worksheets/${file}` })))).toBe(1);
    expect(value(zipped(parts({ target: (file) => `../xl/./worksheets/${file}` })))).toBe(1);
  });
  test('names in other case, and backslashes in the zip', () => {
    expect(value(zipped(parts({ target: (file) => `WorkSheets/${file}` })))).toBe(1);
    expect(value(zipped(Object.fromEntries(Object.entries(parts()).map(([name, text]) => [name.replaceAll('/', '\\'), text]))))).toBe(1);
  });
  test('single quotes, spaces in tags, prefixes, comments and CDATA', () => {
    const text = "<?xml version='1.0'?><!-- <row> --><x:worksheet xmlns:x='m'><x:sheetData><x:row  r = '1' ><!-- <c/> --><x:c\n r='A1'\tt='str' ><x:v>a<![CDATA[<b>&]]>&#x263A;</x:v></x:c></x:row></x:sheetData></x:worksheet>";
    expect(value(handMade({ sheets: { S: text } }))).toBe('a<b>&\u263a');
  });
  test('a byte order mark, and stored instead of packed entries', () => {
    expect(value(zipped(parts({ parts: { 'xl/workbook.xml': `\ufeff${parts()['xl/workbook.xml'] as string}` } }), { level: 0 }))).toBe(1);
  });
  test('the strict dialect', () => {
    const strict = (text: string): string => text.replaceAll('http://schemas.openxmlformats.org/spreadsheetml/2006/main', 'http://purl.oclc.org/ooxml/spreadsheetml/main').replaceAll('http://schemas.openxmlformats.org/officeDocument/2006/relationships', 'http://purl.oclc.org/ooxml/officeDocument/relationships');
    const bytes = zipped(Object.fromEntries(Object.entries(parts()).map(([name, text]) => [name, strict(text as string)])));
    expect(value(bytes)).toBe(1);
    expect(openWorkbook(bytes).facts.strict).toBe(true);
  });
});
