import type { Complex } from '../complex';
import { nameKey } from './names';
import { type RowFault, rowFault } from './row-fault';

/** One row of a boards table. `fault` says what makes the row itself unreadable. */
export interface BoardRow {
  /** Number of the row in the user's range, heading included. */
  readonly row: number;
  /** Empty where the name cannot be read. */
  readonly board: string;
  readonly fedFrom: string;
  /** Impedance of the run from the feeding board, mΩ. */
  readonly z: Complex;
  /** Impedance of its return path, mΩ; undefined where the cell is blank. */
  readonly zReturn: Complex | undefined;
  readonly fault: RowFault | undefined;
}

/** Several row numbers in words; a long list is cut. */
const rowNumbers = (rows: readonly number[]): string =>
  rows.length > 5 ? `${rows.slice(0, 5).join(', ')} and ${rows.length - 5} more` : rows.join(', ').replace(/, (\d+)$/, ' and $1');

/** Place of every name, and what is wrong with each row by itself, names used twice among it. */
export function boardIndex(rows: readonly BoardRow[]): { places: ReadonlyMap<string, number>; faults: (RowFault | undefined)[] } {
  const places = new Map<string, number>();
  const shared = new Map<string, number[]>();
  const faults = rows.map(({ fault }) => fault);
  rows.forEach(({ board }, place) => {
    if (board === '') return;
    const key = nameKey(board);
    const first = places.get(key);
    if (first === undefined) places.set(key, place);
    else if (shared.has(key)) shared.get(key)!.push(place);
    else shared.set(key, [first, place]);
  });
  for (const same of shared.values()) {
    const fault = rowFault('#VALUE!', `named twice: rows ${rowNumbers(same.map((place) => rows[place]!.row))}`);
    for (const place of same) faults[place] ??= fault;
  }
  return { places, faults };
}
