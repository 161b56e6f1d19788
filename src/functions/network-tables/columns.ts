import { missing, wrongValue } from '../../core/refusal';
import type { Cell } from '../kernel/cell';
import type { TableCells } from './table-cells';

/** A column of a network table; the heading is read in any of its spellings. */
export interface Column {
  readonly name: string;
  readonly spellings?: readonly string[];
  readonly optional?: true;
}

export interface Columns {
  /** Place of the first row that holds data. */
  readonly first: number;
  /** Place of each column in the order asked for; nothing stands at that of an optional one which is not there. */
  readonly places: readonly number[];
}

const folded = (cell: Cell | undefined): string => (typeof cell === 'string' ? cell.trim().toLowerCase().replace(/[\s_]+/g, ' ') : '');
const spellingsOf = ({ name, spellings = [] }: Column): string[] => [name, ...spellings].map(folded);

const shape = (columns: readonly Column[]): string => columns.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(' | ');

/**
 * Where the columns stand. If the first row holds the first two headings, columns are found by heading, in any order,
 * and others are ignored; if not, their order counts.
 */
export function columnsOf({ name, rows }: TableCells, columns: readonly Column[]): Columns {
  const headings = rows[0]!.map(folded);
  const byHeading = columns.map((column) => headings.flatMap((heading, place) => (spellingsOf(column).includes(heading) ? [place] : [])));
  if (byHeading[0]!.length > 0 && byHeading[1]!.length > 0) {
    if (rows.length === 1) throw missing(name);
    return { first: 1, places: columns.map((column, i) => placeOf(byHeading[i]!, column, name)) };
  }
  const needed = columns.filter(({ optional }) => !optional).length;
  const width = rows.reduce((widest, row) => Math.max(widest, row.length), 0);
  if (width < needed) throw wrongValue(name, `got ${width === 1 ? 'one column' : `${width} columns`}, takes ${shape(columns)}`);
  return { first: 0, places: columns.map((_, i) => i) };
}

function placeOf(found: readonly number[], { name: heading, optional }: Column, table: string): number {
  if (found.length > 1) throw wrongValue(table, `column ${heading} stands twice`);
  if (found.length === 0 && !optional) throw wrongValue(table, `no column ${heading}`);
  return found[0] ?? -1;
}
