const MB = 1024 * 1024;

/** How much a workbook may hold; read from the zip's directory before anything is unpacked. */
export interface SizeLimits {
  /** Bytes of the file as it is handed in. */
  readonly file: number;
  /** Unpacked bytes of one part, and of all of them. */
  readonly part: number;
  readonly total: number;
  readonly entries: number;
  /** Unpacked over packed size of a part, judged for parts above `ratioFrom` bytes only. */
  readonly ratio: number;
  readonly ratioFrom: number;
}

/** Deflate reaches 1032 : 1 on a single repeated byte; worksheets stay below 100 : 1. */
export const SIZE_LIMITS: SizeLimits = { file: 256 * MB, part: 256 * MB, total: 512 * MB, entries: 20_000, ratio: 400, ratioFrom: 4 * MB };

export const megabytes = (bytes: number): string => `${Math.ceil(bytes / MB).toLocaleString('en-GB')} MB`;
