import { unitOf } from '../../core/units';
import { type BookCell, BookSheet } from '../calculate/cells';
import type { TableFacts } from '../xlsx/tables';

/** Cells that stand under one heading: a column of a table, or cells one under the other without a gap. */
export interface Column {
  readonly sheet: BookSheet;
  readonly column: number;
  /** Rows of the data, the heading not among them. */
  readonly top: number;
  readonly bottom: number;
  readonly heading: string;
  /** As it is written above the heading, behind it or in brackets; '' where there is none. */
  readonly unit: string;
  readonly table: TableFacts | undefined;
  /** Cells of the data that hold anything, from top to bottom. */
  readonly cells: readonly BookCell[];
}

const textOf = (cell: BookCell | undefined): string => (cell && cell.formula === null && typeof cell.stored === 'string' ? cell.stored.trim() : '');

/** Marks of a column without a unit. */
const UNITLESS = /^[-–—]$/;

/** Unit words that the sheets use beside the units that functions read: "kA peak" is a kA. */
export const isUnitText = (text: string): boolean => UNITLESS.test(text) || unitOf(text.replace(/ peak$/, '')) !== undefined;

/** The unit that stands in a heading: "length, m", "length (m)", "length [m]". */
const inHeading = (heading: string): string => {
  const [, bracketed, listed] = /[([]([^()[\]]+)[)\]]\s*$|,\s*([^,\s]+)\s*$/.exec(heading) ?? [];
  const unit = (bracketed ?? listed ?? '').trim();
  return isUnitText(unit) ? unit : '';
};

const unitAbove = (sheet: BookSheet, headingRow: number, column: number, heading: string): string => {
  const above = textOf(sheet.at(headingRow - 1, column));
  return isUnitText(above) ? above : inHeading(heading);
};

/** All columns of a sheet. */
export class Columns {
  private readonly ofCells = new Map<BookCell, Column>();
  readonly list: Column[] = [];

  constructor(private readonly sheet: BookSheet, tables: readonly TableFacts[]) {
    for (const table of tables) this.addTable(table);
    const loose = new Map<number, BookCell[]>();
    for (const cell of sheet.all) {
      if (this.ofCells.has(cell)) continue;
      const list = loose.get(cell.column);
      if (list) list.push(cell);
      else loose.set(cell.column, [cell]);
    }
    for (const cells of loose.values()) this.addLoose(cells);
  }

  of(cell: BookCell): Column | undefined {
    return this.ofCells.get(cell);
  }

  private add(column: Column): void {
    this.list.push(column);
    for (const cell of column.cells) this.ofCells.set(cell, column);
  }

  private addTable(table: TableFacts): void {
    const { sheet } = this;
    const { box } = table;
    const [top, bottom] = [box.top + table.headerRows, Math.min(box.bottom - table.totalsRows, sheet.lastRow)];
    for (let column = box.left; column <= Math.min(box.right, sheet.lastColumn); column++) {
      const cells: BookCell[] = [];
      for (let row = top; row <= bottom; row++) {
        const cell = sheet.at(row, column);
        if (cell) cells.push(cell);
      }
      const heading = table.columns[column - box.left]!.name;
      this.add({ sheet, column, top, bottom, heading, unit: unitAbove(sheet, box.top, column, heading), table, cells });
    }
  }

  /** Cells of one column outside of tables, cut where a row is left out. */
  private addLoose(cells: BookCell[]): void {
    if (cells.some((cell, place) => place > 0 && cell.row < cells[place - 1]!.row)) cells.sort((a, b) => a.row - b.row);
    for (let from = 0, to = 1; from < cells.length; from = to++) {
      while (to < cells.length && cells[to]!.row === cells[to - 1]!.row + 1) to++;
      this.addRun(cells.slice(from, to));
    }
  }

  /** Text before the first figure or formula of a run is its heading; where all is text there is none. */
  private addRun(run: readonly BookCell[]): void {
    const { sheet } = this;
    const found = run.findIndex((cell) => cell.formula !== null || cell.owner !== undefined || typeof cell.stored !== 'string');
    const first = found < 0 ? 0 : found;
    const cells = run.slice(first);
    const head = first > 0 ? run[first - 1]! : undefined;
    const heading = textOf(head);
    this.add({
      sheet, column: run[0]!.column, top: cells[0]!.row, bottom: cells.at(-1)!.row, heading, table: undefined, cells,
      unit: head ? unitAbove(sheet, head.row, head.column, heading) : '',
    });
  }
}
