import { Inflate } from 'fflate';
import { quoted, refuse, WorkbookRefusal } from '../refusal';
import { crc32 } from './crc32';
import type { ZipEntry } from './directory';

const PIECE = 64 * 1024;
const SMALL_PIECE = 1024;

const damaged = (entry: ZipEntry): never => refuse(`The file is damaged: the part ${quoted(entry.name)} does not unpack to what its check sum says.`);

/** The bytes of one entry, checked against the size and check sum of the directory. */
export function unpack(bytes: Uint8Array, entry: ZipEntry): Uint8Array {
  const content = new Uint8Array(entry.size);
  let filled = 0;
  stream(bytes, entry, PIECE, (piece) => {
    content.set(piece, filled);
    filled += piece.length;
    return false;
  });
  if (filled !== entry.size || crc32(content) !== entry.crc) damaged(entry);
  return content;
}

/** Unpacks the beginning of an entry as text until `enough` says so. */
export function unpackStart(bytes: Uint8Array, entry: ZipEntry, enough: (sofar: string) => boolean): void {
  const decoder = new TextDecoder();
  let text = '';
  stream(bytes, entry, SMALL_PIECE, (piece) => {
    text += decoder.decode(piece, { stream: true });
    return enough(text);
  });
}

/** Piece by piece, so that an entry which holds more than it states is left as soon as it shows. */
function stream(bytes: Uint8Array, entry: ZipEntry, step: number, take: (piece: Uint8Array) => boolean): void {
  const packed = bytes.subarray(entry.data, entry.data + entry.packed);
  let size = 0;
  let done = false;
  const give = (piece: Uint8Array): void => {
    size += piece.length;
    if (size > entry.size) damaged(entry);
    done ||= take(piece);
  };
  if (entry.method === 0) {
    for (let at = 0; at < packed.length && !done; at += step) give(packed.subarray(at, at + step));
    return;
  }
  const inflate = new Inflate(give);
  try {
    for (let at = 0; at < packed.length && !done; at += step) inflate.push(packed.subarray(at, at + step), at + step >= packed.length);
  } catch (thrown) {
    if (thrown instanceof WorkbookRefusal) throw thrown;
    damaged(entry);
  }
}
