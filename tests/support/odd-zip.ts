import { strToU8 } from 'fflate';
import { crc32 } from 'node:zlib';

export interface OddZip {
  /** Sizes after the data instead of before it. */
  readonly descriptors?: boolean;
  /** All sizes and places in 64-bit fields. */
  readonly wide?: boolean;
  readonly comment?: string;
  /** Bytes between entries. */
  readonly padding?: number;
}

const number = (value: number, bytes: number): number[] => Array.from({ length: bytes }, (_, index) => (index < 6 ? Math.floor(value / 2 ** (8 * index)) % 256 : 0));

/** A zip as unusual programs write it, entries not packed, each with an extra field and a time of its own. */
export function oddZip(parts: Readonly<Record<string, string | Uint8Array>>, { descriptors = false, wide = false, comment = '', padding = 0 }: OddZip): Uint8Array {
  const out: number[] = [];
  const records: number[] = [];
  const local = [0xfe, 0xca, 3, 0, 1, 2, 3];
  Object.entries(parts).forEach(([name, content], index) => {
    const bytes = [...(typeof content === 'string' ? strToU8(content) : content)];
    const sum = crc32(Uint8Array.from(bytes));
    const named = [...strToU8(name)];
    const offset = out.length;
    const head = [...number(descriptors ? 8 : 0, 2), ...number(0, 2), ...number(0x5000 + index, 2), ...number(0x5821, 2)];
    const sizes = wide ? [...number(0xffffffff, 4), ...number(0xffffffff, 4)] : [...number(bytes.length, 4), ...number(bytes.length, 4)];
    const wideExtra = [...number(1, 2), ...number(24, 2), ...number(bytes.length, 8), ...number(bytes.length, 8), ...number(offset, 8)];
    const extra = wide ? [...local, ...wideExtra] : local;
    out.push(0x50, 0x4b, 3, 4, ...number(20, 2), ...head, ...(descriptors ? number(0, 12) : [...number(sum, 4), ...sizes]), ...number(named.length, 2), ...number(local.length, 2), ...named, ...local, ...bytes);
    if (descriptors) out.push(0x50, 0x4b, 7, 8, ...number(sum, 4), ...number(bytes.length, 4), ...number(bytes.length, 4));
    out.push(...Array.from({ length: padding }, () => 0x2a));
    records.push(0x50, 0x4b, 1, 2, ...number(20, 2), ...number(20, 2), ...head, ...number(sum, 4), ...sizes, ...number(named.length, 2), ...number(extra.length, 2), ...number(2, 2), ...number(0, 8), ...number(wide ? 0xffffffff : offset, 4), ...named, ...extra, 0x68, 0x69);
  });
  const directory = out.length;
  out.push(...records);
  const count = Object.keys(parts).length;
  if (wide) {
    const at = out.length;
    out.push(0x50, 0x4b, 6, 6, ...number(44, 8), ...number(45, 2), ...number(45, 2), ...number(0, 8), ...number(count, 8), ...number(count, 8), ...number(records.length, 8), ...number(directory, 8));
    out.push(0x50, 0x4b, 6, 7, ...number(0, 4), ...number(at, 8), ...number(1, 4));
    out.push(0x50, 0x4b, 5, 6, ...number(0, 4), 0xff, 0xff, 0xff, 0xff, ...number(0xffffffff, 4), ...number(0xffffffff, 4));
  } else out.push(0x50, 0x4b, 5, 6, ...number(0, 4), ...number(count, 2), ...number(count, 2), ...number(records.length, 4), ...number(directory, 4));
  const words = [...strToU8(comment)];
  out.push(...number(words.length, 2), ...words);
  return Uint8Array.from(out);
}
