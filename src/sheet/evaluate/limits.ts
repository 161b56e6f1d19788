import { raise } from './errors';

/** Bounds of Excel, and where Excel has none or a far one, bounds that keep a single formula from filling the memory. */
export const LIMITS = {
  formulaLength: 8192,
  textLength: 32767,
  rows: 1_048_576,
  columns: 16_384,
  arrayCells: 1_048_576,
  /** Excel nests functions 64 deep; brackets and signs come on top. */
  nesting: 256,
  lambdaDepth: 200,
} as const;

export function boundedText(text: string): string {
  if (text.length > LIMITS.textLength) raise('#VALUE!', `the text would have ${text.length} characters, a cell holds ${LIMITS.textLength}`);
  return text;
}

export function boundedArray(rows: number, columns: number): void {
  if (!(rows * columns <= LIMITS.arrayCells)) {
    raise('#NUM!', `an array of ${rows} × ${columns} cells is over the limit of ${LIMITS.arrayCells} cells`);
  }
}
