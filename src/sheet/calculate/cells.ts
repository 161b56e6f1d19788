import { type Cell, CellError } from '../../functions/kernel/cell';
import { NotSupported } from '../evaluate';
import { type Box, addressOf, oneCell, parseBox } from '../xlsx/address';
import type { StoredCell } from '../xlsx/read-cells';
import { refuse } from '../xlsx/refusal';

/** A cell of an open book. Rows and columns count from 0. A large book has a million of them, so they hold no more than they need. */
export class BookCell {
  /** What the last recalculation gave; the stored value before any. */
  value: Cell;
  /** The cell whose array formula fills this one. */
  owner: BookCell | undefined = undefined;
  /** Round of the recalculation that gave the value. */
  round = 0;

  constructor(
    readonly sheet: BookSheet,
    readonly row: number,
    readonly column: number,
    /** In the form of the file; null for constants and cells that an array fills. */
    readonly formula: string | null,
    /** What the file holds. */
    readonly stored: Cell,
    /** Area of the array whose formula stands here. */
    readonly array: Box | undefined,
    /** The array may take more or fewer cells than it has. */
    readonly dynamic: boolean,
  ) {
    this.value = stored;
  }

  get address(): string {
    return addressOf(this.row, this.column);
  }
}

const MOST_ARRAY_CELLS = 2_000_000;

/** The cells of one sheet, found by row and column. */
export class BookSheet {
  private readonly rows = new Map<number, BookCell[]>();
  readonly formulas: BookCell[] = [];
  /** Every cell that there is, in the order of the file; those that only an array fills come last. */
  readonly all: BookCell[] = [];
  lastRow = 0;
  lastColumn = 0;

  constructor(readonly name: string, cells: (visit: (cell: StoredCell) => void) => void) {
    cells((cell) => this.add(cell));
    let arrayCells = 0;
    for (const cell of this.formulas) {
      if (!cell.array || oneCell(cell.array)) continue;
      arrayCells += (cell.array.bottom - cell.array.top + 1) * (cell.array.right - cell.array.left + 1);
      if (arrayCells > MOST_ARRAY_CELLS) refuse(`The array formulas of the sheet "${name}" fill more than ${MOST_ARRAY_CELLS} cells.`);
      this.fill(cell, cell.array);
    }
  }

  at(row: number, column: number): BookCell | undefined {
    return this.rows.get(row)?.[column];
  }

  /** Calls `visit` for each cell that there is within a rectangle. */
  each(top: number, left: number, bottom: number, right: number, visit: (cell: BookCell) => void): void {
    for (let row = top; row <= Math.min(bottom, this.lastRow); row++) {
      const cells = this.rows.get(row);
      if (cells) for (let column = left; column <= Math.min(right, cells.length - 1); column++) if (cells[column]) visit(cells[column]);
    }
  }

  private add({ row, column, address, formula, value, arrayRef, dynamic }: StoredCell): void {
    if (formula === null && value === null) return;
    const stored = value instanceof CellError && value.code === '#UNSUPPORTED!' ? new NotSupported(value.code, value.message) : value;
    const array = arrayRef === null ? undefined : parseBox(arrayRef) ?? refuse(`The file is damaged: the array in ${this.name}!${address} has no place.`);
    const cell = this.put(new BookCell(this, row, column, formula, stored, array, dynamic));
    if (formula !== null) this.formulas.push(cell);
  }

  private fill(owner: BookCell, { top, left, bottom, right }: Box): void {
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        const cell = this.at(row, column) ?? this.put(new BookCell(this, row, column, null, null, undefined, false));
        if (cell !== owner && cell.formula === null) cell.owner = owner;
      }
    }
  }

  private put(cell: BookCell): BookCell {
    const { row, column } = cell;
    let cells = this.rows.get(row);
    if (!cells) this.rows.set(row, (cells = []));
    cells[column] = cell;
    this.all.push(cell);
    if (row > this.lastRow) this.lastRow = row;
    if (column > this.lastColumn) this.lastColumn = column;
    return cell;
  }
}
