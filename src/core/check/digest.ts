import type { SheetCell } from './agree';

/**
 * Digest of inputs: FNV-1a, 32 bits, over cells row by row. It shows that something changed and is no seal.
 * Each cell gives a letter for its kind, then its content; R ends a row, G an argument.
 */
const OFFSET_BASIS = 0x811c9dc5;
const PRIME = 0x01000193;

const utf8 = new TextEncoder();

function bytesOf(cell: SheetCell): Uint8Array {
  if (cell === null || cell === '') return utf8.encode('E');
  if (typeof cell === 'string') return utf8.encode(`T${cell}\0`);
  if (typeof cell === 'boolean') return utf8.encode(cell ? 'B1' : 'B0');
  if (typeof cell === 'object') return utf8.encode(`X${cell.code}`);
  const bytes = new Uint8Array(9);
  bytes[0] = 'N'.charCodeAt(0);
  // −0 and 0 are one figure to whoever reads the sheet.
  new DataView(bytes.buffer).setFloat64(1, cell === 0 ? 0 : cell, false);
  return bytes;
}

/**
 * @param inputs one entry an argument: its rows of cells
 * @returns eight hexadecimal digits, upper case
 */
export function digest(inputs: readonly (readonly (readonly SheetCell[])[])[]): string {
  let hash = OFFSET_BASIS;
  const add = (bytes: Uint8Array): void => {
    for (const byte of bytes) hash = Math.imul(hash ^ byte, PRIME);
  };
  const endOfRow = utf8.encode('R');
  const endOfArgument = utf8.encode('G');
  for (const rows of inputs) {
    for (const row of rows) {
      for (const cell of row) add(bytesOf(cell));
      add(endOfRow);
    }
    add(endOfArgument);
  }
  return (hash >>> 0).toString(16).toUpperCase().padStart(8, '0');
}
