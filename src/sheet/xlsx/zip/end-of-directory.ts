import { refuse } from '../refusal';

const END = 0x06054b50;
const WIDE_END = 0x06064b50;
const WIDE_LOCATOR = 0x07064b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 0xffff;

/** Where the directory stands and how many entries it lists. */
export interface EndOfDirectory {
  readonly count: number;
  readonly directory: number;
  readonly directoryEnd: number;
  /** Start of the closing record. */
  readonly end: number;
}

/** Finds the closing record of a zip, and the 64-bit one before it where there is one (APPNOTE 4.3.14 to 4.3.16). */
export function findEnd(bytes: Uint8Array, view: DataView): EndOfDirectory {
  refuseOtherKinds(bytes);
  const lowest = Math.max(0, bytes.length - END_LENGTH - LONGEST_COMMENT);
  let end = bytes.length - END_LENGTH;
  while (end >= lowest && !(view.getUint32(end, true) === END && end + END_LENGTH + view.getUint16(end + 20, true) <= bytes.length)) end--;
  if (end < lowest) refuse('The file is cut off or damaged: the list of its parts, which stands at the end, is missing.');
  const found = widened(view, end) ?? {
    count: view.getUint16(end + 10, true), directory: view.getUint32(end + 16, true), length: view.getUint32(end + 12, true),
  };
  if (view.getUint16(end + 4, true) !== view.getUint16(end + 6, true)) refuse('The file is one piece of a zip split over several files.');
  const directoryEnd = found.directory + found.length;
  if (!(directoryEnd <= end)) refuse('The file is cut off or damaged: the list of its parts is not where it should be.');
  return { count: found.count, directory: found.directory, directoryEnd, end };
}

function widened(view: DataView, end: number): { count: number; directory: number; length: number } | undefined {
  const locator = end - 20;
  if (locator < 0 || view.getUint32(locator, true) !== WIDE_LOCATOR) return undefined;
  const at = Number(view.getBigUint64(locator + 8, true));
  if (!(at + 56 <= locator) || view.getUint32(at, true) !== WIDE_END) refuse('The file is cut off or damaged: the list of its parts is not where it should be.');
  return {
    count: Number(view.getBigUint64(at + 32, true)),
    length: Number(view.getBigUint64(at + 40, true)),
    directory: Number(view.getBigUint64(at + 48, true)),
  };
}

function refuseOtherKinds(bytes: Uint8Array): void {
  const starts = (...first: number[]): boolean => first.every((byte, index) => bytes[index] === byte);
  if (bytes.length === 0) refuse('The file is empty.');
  if (starts(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) {
    refuse('The file is password-protected or an old .xls workbook. Remove the password, or save it as .xlsx, then open it again.');
  }
  if (!starts(0x50, 0x4b)) refuse('The file is not an .xlsx workbook: it is no zip package.');
}
