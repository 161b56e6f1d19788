import { tokenize } from '@borgar/fx/xlsx';
import type { BookSheet } from '../calculate/cells';
import { sheetOfPrefix } from '../formula/sheet-prefix';
import { TOKENS } from '../formula/shift';

/** Which row of an older state of a sheet a row of the newer one was. */
export interface RowMoves {
  /** undefined for a row that was put in. */
  oldOf(row: number): number | undefined;
  /** Where an old row stands now, or would stand if it was taken out. */
  nowOf(row: number): number;
  readonly added: readonly number[];
  readonly gone: readonly number[];
}

type Pair = readonly [old: number, now: number];

/** The texts of a row, by which it is known again; '' where it has none. */
function keysOf(sheet: BookSheet): Map<number, string> {
  const keys = new Map<number, string>();
  for (const { row, formula, owner, stored } of sheet.all) if (formula === null && !owner && typeof stored === 'string') keys.set(row, `${keys.get(row) ?? ''}\n${stored}`);
  return keys;
}

/** Rows by texts that no other row has. */
function unique(keys: ReadonlyMap<number, string>): Map<string, number> {
  const rows = new Map<string, number>();
  const twice = new Set<string>();
  for (const [row, key] of keys) {
    if (rows.has(key)) twice.add(key);
    rows.set(key, row);
  }
  for (const key of twice) rows.delete(key);
  return rows;
}

/** The most pairs that go up on both sides; they go up on the newer side. */
function rising(pairs: readonly Pair[]): Pair[] {
  const ends: number[] = [];
  const before: number[] = [];
  pairs.forEach(([old], at) => {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (pairs[ends[middle]!]![0] < old) low = middle + 1;
      else high = middle;
    }
    before[at] = low > 0 ? ends[low - 1]! : -1;
    ends[low] = at;
  });
  const chosen: Pair[] = [];
  for (let at = ends.at(-1) ?? -1; at >= 0; at = before[at]!) chosen.push(pairs[at]!);
  return chosen.reverse();
}

/** How rows moved from one state of a sheet to the next; undefined where none did, so far as the texts in them tell. */
export function rowMoves(old: BookSheet, now: BookSheet): RowMoves | undefined {
  const [oldKeys, nowKeys] = [keysOf(old), keysOf(now)];
  const oldRows = unique(oldKeys);
  const common = [...unique(nowKeys)].flatMap(([key, row]): Pair[] => (oldRows.has(key) ? [[oldRows.get(key)!, row]] : [])).sort((a, b) => a[1] - b[1]);
  const anchors = rising(common);
  if (anchors.every(([from, to]) => from === to)) return undefined;
  const [toOld, toNow] = [new Map<number, number>(), new Map<number, number>()];
  const pair = (from: number, to: number): void => void (toOld.set(to, from), toNow.set(from, to));
  const [added, gone]: [number[], number[]] = [[], []];
  let [from, to] = [0, 0];
  for (const [oldEnd, nowEnd] of [...anchors, [old.lastRow + 1, now.lastRow + 1] as Pair]) {
    // Between two rows that are known again: as many rows on both sides are the same ones, else those that read alike from either end.
    let [a, b] = [oldEnd, nowEnd];
    const same = a - from === b - to;
    const alike = (x: number, y: number): boolean => same || (oldKeys.get(x) ?? '') === (nowKeys.get(y) ?? '');
    while (from < a && to < b && alike(from, to)) pair(from++, to++);
    while (a > from && b > to && alike(a - 1, b - 1)) pair(--a, --b);
    for (; from < a; from++) gone.push(from);
    for (; to < b; to++) added.push(to);
    pair(oldEnd, nowEnd);
    [from, to] = [oldEnd + 1, nowEnd + 1];
  }
  // A row that was taken out would stand behind the last one above it that stayed.
  const places: number[] = [];
  for (let row = 0; row <= old.lastRow; row++) places.push(toNow.get(row) ?? (places.at(-1) ?? -1) + 1);
  return { oldOf: (row) => toOld.get(row), nowOf: (row) => places[row] ?? row, added, gone };
}

/** A formula in the form of the file as it reads after rows have moved, on its own sheet or on others that it names. */
export function formulaMoved(formula: string, sheet: string, movesOf: (sheet: string) => RowMoves | undefined): string {
  return tokenize(`=${formula}`, TOKENS).map(({ type, value }) => {
    if (!/^(?:range|range_beam|range_ternary)$/.test(type)) return value;
    const cut = value.lastIndexOf('!') + 1;
    const named = sheetOfPrefix(value.slice(0, cut));
    const moves = /\[/.test(named) ? undefined : movesOf(named === '' ? sheet : named);
    return moves ? value.slice(0, cut) + value.slice(cut).replace(/(^|:|[A-Za-z$])(\d+)/g, (_, before: string, row: string) => `${before}${moves.nowOf(Number(row) - 1) + 1}`) : value;
  }).join('').slice(1);
}
