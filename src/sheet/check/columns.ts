import { type BookCell, BookSheet } from '../calculate/cells';
import type { TableFacts } from '../xlsx/tables';
import { looksLikeValue } from './number-text';
import { isAmbiguous, unitInHeading, unitText } from './written-unit';

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

/** The unit that a cell over a column consists of. A letter is one only in a row of units. */
function unitCell(cell: BookCell | undefined): string {
  const text = textOf(cell);
  const unit = unitText(text);
  return unit !== '' && (!isAmbiguous(text) || isAmongUnits(cell!)) ? unit : '';
}

const isAmongUnits = ({ sheet, row }: BookCell): boolean => isRowOfUnits(sheet, row, 2);

function isRowOfUnits(sheet: BookSheet, row: number, least: number): boolean {
  let units = 0;
  let texts = 0;
  sheet.each(row, 0, row, sheet.lastColumn, (cell) => {
    if (textOf(cell) === '') return;
    texts++;
    if (unitText(textOf(cell)) !== '') units++;
  });
  return units >= least && units * 2 > texts;
}

/** The heading over a column without a unit, where a row of units stands between. */
function overBlankUnit({ sheet, row, column }: BookCell): BookCell[] {
  const heading = sheet.at(row - 2, column);
  return heading && textOf(heading) !== '' && isRowOfUnits(sheet, row - 1, 1) ? [heading] : [];
}

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
      this.add({ sheet, column, top, bottom, heading, unit: unitCell(sheet.at(box.top - 1, column)) || unitInHeading(heading), table, cells });
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

  /** Texts before the first value or formula of a run are its heading and its unit, in whatever order; where all is text there is none. */
  private addRun(run: readonly BookCell[]): void {
    const { sheet } = this;
    const above = overBlankUnit(run[0]!);
    const isData = ({ formula, owner, stored }: BookCell, place: number): boolean =>
      formula !== null || owner !== undefined || typeof stored !== 'string' || (place + above.length > 0 && looksLikeValue(stored));
    const first = Math.max(0, run.findIndex(isData));
    const cells = run.slice(first);
    const over = first > 0 ? run.slice(0, first).reverse() : above;
    const heading = textOf(over.find((cell) => unitCell(cell) === '') ?? over[0]);
    const unit = over.map(unitCell).find((each) => each !== '') ?? '';
    this.add({ sheet, column: run[0]!.column, top: cells[0]!.row, bottom: cells.at(-1)!.row, heading, table: undefined, cells, unit: unit || unitInHeading(heading) });
  }
}
