/** Where a command reads and writes; tests hand in their own. */
export interface Terminal {
  out(line: string): void;
  error(line: string): void;
  /** All of standard input as text. */
  input(): Promise<string>;
  /** A line that the next one takes the place of; there on a terminal only. Empty text takes it away. */
  status?(line: string): void;
}

/** Exit status: 0 done, 1 something disagrees or fails, 2 could not run. */
export const DONE = 0;
export const DISAGREES = 1;
export const COULD_NOT_RUN = 2;

/** A command that could not run; the words go to standard error. */
export class CouldNotRun extends Error {}

// Cell text may hold control characters that a terminal would obey, and marks that turn the direction of what follows.
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u200e\u200f\u202a-\u202e\u2066-\u2069]/g; // eslint-disable-line no-control-regex

const byNumber = (code: number): string => (code < 256 ? `\\x${code.toString(16).padStart(2, '0')}` : `\\u${code.toString(16)}`);

/** Text made safe for one line of a terminal. */
export const oneLine = (text: string): string =>
  text.replace(CONTROL, (c) => (c === '\n' ? '\\n' : c === '\t' ? '\\t' : c === '\r' ? '\\r' : byNumber(c.charCodeAt(0))));

/** Rows of text in columns, numbers to the right. */
export function columns(rows: readonly (readonly string[])[], right: readonly boolean[] = []): string[] {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => [...(row[i] ?? '')].length)));
  const pad = (cell: string, i: number): string => {
    const space = ' '.repeat(Math.max(0, widths[i]! - [...cell].length));
    return right[i] ? space + cell : cell + space;
  };
  return rows.map((row) => row.map(pad).join('  ').trimEnd());
}
