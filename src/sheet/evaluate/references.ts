import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import type { Workbook } from './context';
import { NotSupported, raise } from './errors';
import { LIMITS, boundedArray } from './limits';

/** Letters of a column, counted from 0. */
export function columnLetters(column: number): string {
  let letters = '';
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

/** A rectangle of cells on a sheet, read only when its values are asked for. Rows and columns count from 0. */
export class Reference {
  constructor(
    readonly workbook: Workbook,
    readonly sheet: string,
    readonly top: number,
    readonly left: number,
    readonly bottom: number,
    readonly right: number,
  ) {}

  get rows(): number {
    return this.bottom - this.top + 1;
  }

  get columns(): number {
    return this.right - this.left + 1;
  }

  get isOneCell(): boolean {
    return this.top === this.bottom && this.left === this.right;
  }

  get address(): string {
    const first = `${columnLetters(this.left)}${this.top + 1}`;
    return this.isOneCell ? first : `${first}:${columnLetters(this.right)}${this.bottom + 1}`;
  }

  /** One cell of the rectangle, counted from its top left. */
  at(row: number, column: number): Cell {
    const cell = this.workbook.get(this.sheet, this.top + row, this.left + column);
    if (typeof cell === 'object' && cell instanceof NotSupported) throw cell;
    return cell;
  }

  /** Rows and columns that can hold anything: the rectangle cut to the used part of the sheet, at least one of each. */
  filled(): { rows: number; columns: number } {
    const used = this.workbook.used(this.sheet);
    if (used instanceof CellError) return raise(used.code, `${used.message}: ${this.address}`);
    const rows = Math.max(1, Math.min(this.bottom, used[0]) - this.top + 1);
    const columns = Math.max(1, Math.min(this.right, used[1]) - this.left + 1);
    return { rows, columns };
  }

  /** The value of the one cell, or rows of cells down to the last used one. */
  value(): Cell | Matrix {
    if (this.isOneCell) return this.at(0, 0);
    const { rows, columns } = this.filled();
    boundedArray(rows, columns);
    const matrix: Matrix = [];
    for (let row = 0; row < rows; row++) {
      const cells: Cell[] = [];
      for (let column = 0; column < columns; column++) cells.push(this.at(row, column));
      matrix.push(cells);
    }
    return matrix;
  }

  /** Another rectangle on the same sheet; `#REF!` where it leaves the sheet. */
  moved(top: number, left: number, bottom: number, right: number): Reference {
    if (!(top >= 0 && left >= 0 && bottom >= top && right >= left && bottom < LIMITS.rows && right < LIMITS.columns)) {
      return raise('#REF!', 'the reference leaves the sheet');
    }
    return new Reference(this.workbook, this.sheet, top, left, bottom, right);
  }
}

/** Several areas: `(A1:A3,C1)`. */
export class Union {
  constructor(readonly areas: readonly Reference[]) {}
}

const sameSheet = (a: Reference, b: Reference): boolean => a.sheet.toLowerCase() === b.sheet.toLowerCase();

/** `a:b`, the rectangle around both. */
export function rangeAround(a: Reference, b: Reference): Reference {
  if (!sameSheet(a, b)) raise('#VALUE!', 'a range cannot span two sheets');
  return a.moved(Math.min(a.top, b.top), Math.min(a.left, b.left), Math.max(a.bottom, b.bottom), Math.max(a.right, b.right));
}

/** `a b`, the cells common to both. */
export function intersection(a: Reference, b: Reference): Reference {
  const [top, left] = [Math.max(a.top, b.top), Math.max(a.left, b.left)];
  const [bottom, right] = [Math.min(a.bottom, b.bottom), Math.min(a.right, b.right)];
  if (!sameSheet(a, b) || top > bottom || left > right) raise('#NULL!', `${a.address} and ${b.address} have no cell in common`);
  return a.moved(top, left, bottom, right);
}

/** `@range`: the cell of a column in the formula's row, or of a row in the formula's column. */
export function implicitIntersection(reference: Reference, row: number, column: number): Reference {
  if (reference.isOneCell) return reference;
  const inRow = row >= reference.top && row <= reference.bottom;
  const inColumn = column >= reference.left && column <= reference.right;
  if (reference.columns === 1 && inRow) return reference.moved(row, reference.left, row, reference.left);
  if (reference.rows === 1 && inColumn) return reference.moved(reference.top, column, reference.top, column);
  return raise('#VALUE!', `${reference.address} has no single cell in this row or column`);
}
