import { type Cell, CellError, type Matrix } from '../kernel/cell';
import type { TableCells } from './table-cells';

/** Works something when first asked for, and has the same answer from then on, a refusal too. */
export function once<T>(make: () => T): () => T {
  // Replaced by its answer, so that what it was made of need not be kept.
  let answer = (): T => {
    try {
      const made = make();
      answer = () => made;
    } catch (thrown) {
      answer = () => { throw thrown; };
    }
    return answer();
  };
  return () => answer();
}

/** The last few answers of many; what was worked for a question is never changed. */
export class Remembered<K, V> {
  private last: { same(key: K): boolean; answer(): V }[] = [];
  constructor(private readonly most: number) {}
  of(key: K, same: (other: K) => boolean, make: () => V): V {
    const found = this.last.find((entry) => entry.same(key));
    if (found) return found.answer();
    const answer = once(make);
    this.last = [{ same, answer }, ...this.last].slice(0, this.most);
    return answer();
  }
}

/** Cells of a table as they were, so that a later change in place is seen. */
interface Snapshot {
  readonly widths: Int32Array;
  readonly cells: readonly Cell[];
}

const snapshotOf = (rows: Matrix): Snapshot => ({ widths: Int32Array.from(rows, (row) => row.length), cells: rows.flat() });

/** Hosts make a new error for each reading of a cell. */
const alike = (a: Cell | undefined, b: Cell | undefined): boolean =>
  a === b || (a instanceof CellError && b instanceof CellError && a.code === b.code && a.message === b.message);

function same({ widths, cells }: Snapshot, rows: Matrix): boolean {
  if (rows.length !== widths.length) return false;
  for (let r = 0, at = 0; r < rows.length; r += 1) {
    const row = rows[r]!;
    if (row.length !== widths[r]) return false;
    for (let i = 0; i < row.length; i += 1, at += 1) if (!alike(row[i], cells[at])) return false;
  }
  return true;
}

/** Tables kept, and cells in all of them together; the oldest go first. */
const MOST_TABLES = 8;
const MOST_CELLS = 2_000_000;

/**
 * Keeps what was made of the last few tables. One question about a table is asked once for each row of a schedule, and
 * each time with the whole table; so it is read and solved once, and every further question only compares the cells.
 * All cells are compared, so what is kept can never change a result.
 */
export class Kept<T> {
  private entries: { name: string; zeroMayBeBlank: boolean; snapshot: Snapshot; made(): T }[] = [];
  constructor(private readonly mostTables = MOST_TABLES, private readonly mostCells = MOST_CELLS) {}

  of(table: TableCells, make: () => T): T {
    const { name, rows } = table;
    const zeroMayBeBlank = table.reading.blankArrivesAsZero;
    const found = this.entries.findIndex((entry) => entry.name === name && entry.zeroMayBeBlank === zeroMayBeBlank && same(entry.snapshot, rows));
    const entry = found >= 0 ? this.entries.splice(found, 1)[0]! : { name, zeroMayBeBlank, snapshot: snapshotOf(rows), made: once(make) };
    this.entries.unshift(entry);
    let cells = 0;
    this.entries = this.entries.slice(0, this.mostTables).filter(({ snapshot }) => (cells += snapshot.cells.length) <= this.mostCells);
    return entry.made();
  }
}
