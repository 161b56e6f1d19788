import { complex } from '../../core/complex';
import type { BoardRow } from '../../core/network/board-row';
import { SOURCE, nameKey } from '../../core/network/names';
import type { RowFault } from '../../core/network/row-fault';
import { wrongValue } from '../../core/refusal';
import type { Cell } from '../kernel/cell';
import { columnsOf } from './columns';
import { faultFrom, impedanceIn, nameOf, optionalImpedanceIn } from './row-cells';
import type { TableCells } from './table-cells';

const COLUMNS = [
  { name: 'board' },
  { name: 'fed_from' },
  { name: 'z_mohm', spellings: ['Z mΩ'] },
  { name: 'z_return_mohm', spellings: ['Z return mΩ'], optional: true },
] as const;

const NOTHING = complex(0, 0);

/** Rows of a boards table; a row that cannot be read carries its fault, the others stand. */
export function boardRows(cells: TableCells): readonly BoardRow[] {
  const { first, places } = columnsOf(cells, COLUMNS);
  const [board, fedFrom, z, zReturn] = places as [number, number, number, number];
  const { reading } = cells;
  const read = (row: readonly Cell[], number: number): BoardRow => {
    let fault: RowFault | undefined;
    const or = <T>(fallback: T, reader: () => T): T => {
      try {
        return reader();
      } catch (thrown) {
        fault ??= faultFrom(thrown);
        return fallback;
      }
    };
    return {
      row: number,
      board: or('', () => boardName(nameOf(row[board], 'board', reading))),
      fedFrom: or('', () => nameOf(row[fedFrom], 'fed_from', reading)),
      z: or(NOTHING, () => impedanceIn(row[z], 'z_mohm', reading)),
      zReturn: or(undefined, () => optionalImpedanceIn(row[zReturn], 'z_return_mohm', reading)),
      fault,
    };
  };
  return cells.rows.slice(first).map((row, i) => read(row, first + i + 1));
}

function boardName(name: string): string {
  if (nameKey(name) === SOURCE) throw wrongValue('board', `${name} is the supply, takes another name`);
  return name;
}
