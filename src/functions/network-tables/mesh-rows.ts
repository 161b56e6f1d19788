import type { BranchRow, SourceRow, State } from '../../core/network/mesh';
import { SOURCE, nameKey } from '../../core/network/names';
import { type RowFault, faultOfRow } from '../../core/network/row-fault';
import { wrongValue } from '../../core/refusal';
import type { Cell } from '../kernel/cell';
import type { Reading } from '../kernel/kind';
import { shownCell } from '../kernel/scalar';
import { type Column, columnsOf } from './columns';
import { branchImpedanceIn, cellIn, faultFrom, nameOf } from './row-cells';
import type { TableCells } from './table-cells';

const Z: Column = { name: 'z_mohm', spellings: ['Z mΩ'] };
const STATE: Column = { name: 'state', optional: true };
const BRANCH_COLUMNS: readonly Column[] = [{ name: 'from' }, { name: 'to' }, Z, STATE];
const SOURCE_COLUMNS: readonly Column[] = [{ name: 'node' }, Z, STATE];

const STATES: ReadonlyMap<string, State> = new Map([['closed', 'closed'], ['in', 'closed'], ['on', 'closed'], ['open', 'open'], ['out', 'open'], ['off', 'open'], ['either', 'either']]);

/** Whether rows may stand either way: only where arrangements are asked for, or a table is looked over. */
export interface MeshOptions {
  readonly either: boolean;
}

function stateOf(given: Cell | undefined, reading: Reading, { either }: MeshOptions): State {
  const cell = cellIn(given, 'state');
  if (cell === undefined) return 'closed';
  if (cell === 0 && reading.blankArrivesAsZero) throw wrongValue(undefined, 'state is blank or zero: write closed or open');
  const state = typeof cell === 'string' ? STATES.get(cell.trim().toLowerCase()) : undefined;
  if (state !== undefined && (either || state !== 'either')) return state;
  throw wrongValue('state', `got ${shownCell(cell)}, takes closed (in, on), open (out, off)${either ? ', either' : ''}`);
}

function nodeOf(cell: Cell | undefined, column: string, reading: Reading): string {
  const name = nameOf(cell, column, reading);
  if (nameKey(name) === SOURCE) throw wrongValue(column, `${name} is no node: sources stand in their own table`);
  return name;
}

/** A row that was read, with its number in the user's range. */
export type Numbered<T> = T & { readonly row: number };

/** Takes a row's fault: throws it where the table must be sound, or notes it down. */
export type OnFault = (row: number, fault: RowFault) => void;

/** A bad row makes every level of a mesh unsafe, so it is an error that names table and row. */
export const refusing = ({ name }: TableCells): OnFault => (row, fault) => { throw faultOfRow(name, row, fault); };

function rowsOf<T>(cells: TableCells, columns: readonly Column[], onFault: OnFault, read: (cellAt: (column: number) => Cell | undefined) => T): Numbered<T>[] {
  const { first, places } = columnsOf(cells, columns);
  return cells.rows.slice(first).flatMap((row, i) => {
    try {
      return [{ ...read((column) => row[places[column]!]), row: first + i + 1 }];
    } catch (thrown) {
      onFault(first + i + 1, faultFrom(thrown));
      return [];
    }
  });
}

export const branchRows = (cells: TableCells, options: MeshOptions, onFault: OnFault = refusing(cells)): readonly Numbered<BranchRow>[] =>
  rowsOf(cells, BRANCH_COLUMNS, onFault, (at) => {
    const from = nodeOf(at(0), 'from', cells.reading);
    const to = nodeOf(at(1), 'to', cells.reading);
    if (nameKey(from) === nameKey(to)) throw wrongValue(undefined, 'from and to are the same');
    return { from, to, z: branchImpedanceIn(at(2), 'z_mohm', cells.reading), state: stateOf(at(3), cells.reading, options) };
  });

export const sourceRows = (cells: TableCells, options: MeshOptions, onFault: OnFault = refusing(cells)): readonly Numbered<SourceRow>[] =>
  rowsOf(cells, SOURCE_COLUMNS, onFault, (at) => ({
    node: nodeOf(at(0), 'node', cells.reading),
    z: branchImpedanceIn(at(1), 'z_mohm', cells.reading),
    state: stateOf(at(2), cells.reading, options),
  }));
