/** One line of the table. A figure without an aim is for information. */
export interface Row {
  readonly what: string;
  readonly measured: string;
  /** What it is held against, and its figure in the same run. */
  readonly against?: string;
  readonly ratio?: string;
  readonly aim?: string;
  readonly met?: boolean;
}

export interface Options {
  readonly repeats: number;
}

/** Middle figure: on a machine that has other work to do, the mean says more of that work than of ours. */
export function median(figures: readonly number[]): number {
  const sorted = [...figures].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

const figures = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

export function time(seconds: number): string {
  if (seconds >= 1) return `${figures(seconds)} s`;
  if (seconds >= 1e-3) return `${figures(seconds * 1e3)} ms`;
  return seconds >= 1e-6 ? `${figures(seconds * 1e6)} µs` : `${figures(seconds * 1e9)} ns`;
}

export const times = (ratio: number): string => `${figures(ratio)}×`;
export const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;
export const kilobytes = (bytes: number): string => `${(bytes / 1e3).toFixed(1)} kB`;

/** The lines under their headings, in columns. */
export function tableText(rows: readonly Row[]): string {
  const cells = rows.map(({ what, measured, against = '', ratio = '', aim = '', met }) => [what, measured, against, ratio, aim, met === undefined ? '' : met ? 'met' : 'NOT met']);
  const all = [['what', 'measured', 'against', 'ratio', 'aim', ''], ...cells];
  const widths = all[0]!.map((_, column) => Math.max(...all.map((row) => row[column]!.length)));
  const line = (row: readonly string[]): string => row.map((cell, column) => cell.padEnd(widths[column]!)).join('  ').trimEnd();
  return [line(all[0]!), widths.map((width) => '-'.repeat(width)).join('  '), ...all.slice(1).map(line)].join('\n');
}
