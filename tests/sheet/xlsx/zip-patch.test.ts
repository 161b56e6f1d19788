import { strFromU8, strToU8, unzipSync } from 'fflate';
import { readDirectory } from '../../../src/sheet/xlsx/zip/directory';
import { SIZE_LIMITS } from '../../../src/sheet/xlsx/zip/limits';
import { patchZip } from '../../../src/sheet/xlsx/zip/patch';
import { unpack } from '../../../src/sheet/xlsx/zip/unpack';
import { type OddZip, oddZip } from '../../support/odd-zip';

const content = { 'a.txt': 'first', 'folder/b.xml': '<b>'.repeat(50), 'c.bin': Uint8Array.of(0, 1, 2, 255), 'ü.txt': 'last' };
const read = (bytes: Uint8Array): Record<string, string> => Object.fromEntries(readDirectory(bytes, SIZE_LIMITS).entries.map((entry) => [entry.name, strFromU8(unpack(bytes, entry), true)]));
/** Everything of an entry: local header, data and what follows it up to the next. */
const raw = (bytes: Uint8Array, name: string): Uint8Array => {
  const { entries, end } = readDirectory(bytes, SIZE_LIMITS);
  const at = entries.find((entry) => entry.name === name)!.offset;
  return bytes.slice(at, Math.min(...entries.map((entry) => entry.offset).filter((offset) => offset > at), end.directory));
};

describe.each<[string, OddZip]>([
  ['plain', {}], ['sizes after the data', { descriptors: true }], ['64-bit fields', { wide: true }], ['comment and gaps', { comment: 'made by hand PK', padding: 7 }], ['all at once', { descriptors: true, wide: true, comment: 'x', padding: 3 }],
])('zip: %s', (_, how) => {
  const bytes = oddZip(content, how);
  test('is read', () => expect(read(bytes)).toEqual({ 'a.txt': 'first', 'folder/b.xml': content['folder/b.xml'], 'c.bin': '\u0000\u0001\u0002\u00ff', 'ü.txt': 'last' }));
  test('without changes the very same bytes', () => expect(patchZip(bytes, new Map())).toBe(bytes));
  test('one entry is replaced, all others keep every byte, order and time', () => {
    const after = patchZip(bytes, new Map([['folder/b.xml', strToU8('new')]]));
    expect(read(after)).toEqual({ ...read(bytes), 'folder/b.xml': 'new' });
    expect(Object.keys(read(after))).toEqual(Object.keys(read(bytes)));
    for (const name of ['a.txt', 'c.bin', 'ü.txt']) expect(raw(after, name)).toEqual(raw(bytes, name));
    const time = (file: Uint8Array): number => new DataView(file.buffer, file.byteOffset).getUint32(readDirectory(file, SIZE_LIMITS).entries[1]!.record.start + 12, true);
    expect(time(after)).toBe(time(bytes));
    if (how.comment) expect(strFromU8(after.slice(-how.comment.length))).toBe(how.comment);
  });
  test('entries go and come', () => {
    const after = patchZip(bytes, new Map([['a.txt', null], ['z.txt', strToU8('more')], ['not there', null]]));
    expect(Object.keys(read(after))).toEqual(['folder/b.xml', 'c.bin', 'ü.txt', 'z.txt']);
    expect(read(after)['z.txt']).toBe('more');
  });
  test('another reader agrees', () => {
    const after = unzipSync(patchZip(bytes, new Map([['c.bin', strToU8('x'.repeat(1000))], ['new.txt', strToU8('n')]])));
    expect(Object.fromEntries(Object.entries(after).map(([name, each]) => [name, each.length]))).toMatchObject({ 'c.bin': 1000, 'new.txt': 1, 'a.txt': 5, 'folder/b.xml': 150 });
  });
  test('patching the patched', () => {
    const once = patchZip(bytes, new Map([['a.txt', strToU8('1')], ['ü.txt', strToU8('2')]]));
    expect(read(patchZip(once, new Map([['a.txt', strToU8('first')], ['ü.txt', strToU8('last')]])))).toEqual(read(bytes));
  });
});
