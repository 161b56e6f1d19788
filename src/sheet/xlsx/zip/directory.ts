import { quoted, refuse } from '../refusal';
import { type EndOfDirectory, findEnd } from './end-of-directory';
import { type SizeLimits, megabytes } from './limits';

const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
/** Kind of the extra field that holds the 64-bit ones. */
export const WIDE_EXTRA = 1;
const UNKNOWN_32 = 0xffffffff;

/** One entry of the zip as its directory tells it. */
export interface ZipEntry {
  /** As stored; `key` is what it is found by. */
  readonly name: string;
  readonly key: string;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  /** Start of the local header, and of the entry's data. */
  readonly offset: number;
  readonly data: number;
  /** Where the record stands in the directory. */
  readonly record: { readonly start: number; readonly end: number };
  /** Sizes or place stand in 64-bit fields. */
  readonly wide: boolean;
}

export interface ZipDirectory {
  readonly entries: readonly ZipEntry[];
  readonly end: EndOfDirectory;
}

/** Part names differ in more than case (OPC, ECMA-376-2, 6.2.2.3); some writers put backslashes. */
export const partKey = (name: string): string => name.replace(/\\/g, '/').toLowerCase();

/** Reads the zip's directory and judges names and sizes; unpacks nothing. */
export function readDirectory(bytes: Uint8Array, limits: SizeLimits): ZipDirectory {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findEnd(bytes, view);
  if (end.count > limits.entries) refuse(`The file holds ${end.count} parts; up to ${limits.entries} are read.`);
  const entries: ZipEntry[] = [];
  const seen = new Set<string>();
  let at = end.directory;
  let total = 0;
  for (let index = 0; index < end.count; index++) {
    const entry = readEntry(bytes, view, at, end.directoryEnd);
    at = entry.record.end;
    judgeName(entry);
    judgeSize(entry, limits);
    total += entry.size;
    if (total > limits.total) refuse(`The workbook would unpack to more than ${megabytes(limits.total)}; it is not opened.`);
    if (seen.has(entry.key)) refuse(`The file is damaged: the part ${quoted(entry.name)} stands in it twice.`);
    seen.add(entry.key);
    entries.push(entry);
  }
  judgeOverlap(entries, end.directory);
  return { entries, end };
}

function readEntry(bytes: Uint8Array, view: DataView, at: number, directoryEnd: number): ZipEntry {
  if (at + 46 > directoryEnd || view.getUint32(at, true) !== ENTRY) refuse('The file is damaged: its list of parts is broken.');
  const nameLength = view.getUint16(at + 28, true);
  const extraLength = view.getUint16(at + 30, true);
  const extra = at + 46 + nameLength;
  const end = extra + extraLength + view.getUint16(at + 32, true);
  if (end > directoryEnd) refuse('The file is damaged: its list of parts is broken.');
  const name = new TextDecoder().decode(bytes.subarray(at + 46, extra));
  const wide = readWide(view, extra, extra + extraLength, {
    size: view.getUint32(at + 24, true), packed: view.getUint32(at + 20, true), offset: view.getUint32(at + 42, true),
  }, name);
  const flags = view.getUint16(at + 8, true);
  const { offset } = wide;
  if (!(offset + 30 <= view.byteLength) || view.getUint32(offset, true) !== LOCAL) refuse(`The file is damaged: the part ${quoted(name)} is not where it should be.`);
  const data = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  return {
    ...wide, name, key: partKey(name), flags, data,
    method: view.getUint16(at + 10, true), crc: view.getUint32(at + 16, true), record: { start: at, end },
  };
}

/** Sizes and offset above 4 GB, or of writers that always use the wide form, stand in an extra field (APPNOTE 4.5.3). */
function readWide(view: DataView, from: number, to: number, narrow: { size: number; packed: number; offset: number }, name: string) {
  const missing = (['size', 'packed', 'offset'] as const).filter((field) => narrow[field] === UNKNOWN_32);
  const found = { ...narrow, wide: missing.length > 0 };
  if (missing.length === 0) return found;
  for (let at = from; at + 4 <= to; at += 4 + view.getUint16(at + 2, true)) {
    if (view.getUint16(at, true) !== WIDE_EXTRA) continue;
    let field = at + 4;
    for (const key of missing) {
      if (field + 8 > Math.min(to, at + 4 + view.getUint16(at + 2, true))) break;
      found[key] = Number(view.getBigUint64(field, true));
      field += 8;
    }
  }
  if (missing.some((key) => found[key] === UNKNOWN_32)) refuse(`The file is damaged: the size of the part ${quoted(name)} is not given.`);
  return found;
}

function judgeName({ name, key, flags }: ZipEntry): void {
  if (flags & 1) refuse('The file is encrypted. Remove its password first.');
  if (name === '' || /\p{Cc}/u.test(name) || /^(\/|[a-z]:)/.test(key) || key.split('/').some((step) => step === '..' || step === '.')) {
    refuse(`The file is not a workbook that is opened here: it holds a part with the unsafe name ${quoted(name)}.`);
  }
}

function judgeSize({ name, size, packed, method, data }: ZipEntry, limits: SizeLimits): void {
  if (size > limits.part) refuse(`The part ${quoted(name)} would unpack to ${megabytes(size)}; up to ${megabytes(limits.part)} are read.`);
  if (size > limits.ratioFrom && size > packed * limits.ratio) {
    refuse(`The part ${quoted(name)} would unpack to ${Math.round(size / Math.max(packed, 1))} times its size, as no worksheet does; it is not opened.`);
  }
  if (method !== 0 && method !== 8) refuse(`The part ${quoted(name)} is packed by method ${method}; workbooks use deflate only.`);
  if (!Number.isSafeInteger(data + packed)) refuse(`The file is damaged: the size of the part ${quoted(name)} cannot be.`);
}

/** Entries that share bytes are the make of a zip bomb, never of a workbook. */
function judgeOverlap(entries: readonly ZipEntry[], directory: number): void {
  const ordered = [...entries].sort((a, b) => a.offset - b.offset);
  ordered.forEach((entry, index) => {
    const next = ordered[index + 1]?.offset ?? directory;
    if (entry.data + entry.packed > next) refuse(`The file is damaged: the part ${quoted(entry.name)} runs into the next one or past the end.`);
  });
}
