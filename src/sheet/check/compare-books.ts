import { type Cell, CellError } from '../../functions/kernel/cell';
import { type Book, openBook } from '../book';
import type { BookCell, BookSheet } from '../calculate/cells';
import type { CustomFunctions } from '../evaluate';
import { typedFormula } from '../explain/calls-in-formula';
import type { TableFacts } from '../xlsx/tables';
import { agrees } from './agree';
import { type RowMoves, formulaMoved, rowMoves } from './row-moves';
import { Templates } from './templates';

/** What a cell holds in one of the two workbooks; undefined where it is not there. */
export interface Side {
  readonly address: string;
  readonly value: Cell;
  /** As it is typed, with its =. */
  readonly formula: string | null;
}

export interface Difference {
  /** Input: what is typed. Formula: another one, or one in place of a constant. Result: what a formula that stayed gives. */
  readonly kind: 'input' | 'formula' | 'result';
  readonly sheet: string;
  /** Key of the row and heading of the column where the cell stands in a table; '' elsewhere. */
  readonly row: string;
  readonly column: string;
  readonly was: Side | undefined;
  readonly now: Side | undefined;
}

export interface Comparison {
  readonly differences: readonly Difference[];
  /** In words: sheets, table rows and columns, and names that came, went or changed. */
  readonly structure: readonly string[];
  readonly compared: number;
}

/**
 * Compares two states of a workbook by what is stored in them. Rows of a table are told by their first cell where that is
 * unique, other rows by the texts in them, so that a row put in between changes nothing else; where no row moved, cells are
 * told by their address.
 */
export function compareWorkbooks(before: Uint8Array, after: Uint8Array, custom: CustomFunctions, tolerance: number): Comparison {
  return new BookComparison(openBook(before, custom), openBook(after, custom), tolerance).made();
}

class BookComparison {
  private readonly differences: Difference[] = [];
  private readonly structure: string[] = [];
  private compared = 0;
  private readonly oldTemplates = new Templates();
  private readonly newTemplates = new Templates();
  /** Sheets by name in which rows have moved. */
  private readonly moves = new Map<string, RowMoves>();

  constructor(private readonly before: Book, private readonly after: Book, private readonly tolerance: number) {}

  made(): Comparison {
    const oldSheets = new Map(this.before.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
    for (const sheet of this.after.sheets) {
      const old = oldSheets.get(sheet.name.toLowerCase());
      const moved = old && rowMoves(old, sheet);
      if (moved) this.moves.set(sheet.name.toLowerCase(), moved);
    }
    for (const sheet of this.after.sheets) {
      const old = oldSheets.get(sheet.name.toLowerCase());
      oldSheets.delete(sheet.name.toLowerCase());
      if (old) this.sheets(old, sheet);
      else this.structure.push(`sheet ${sheet.name} is new`);
    }
    for (const sheet of oldSheets.values()) this.structure.push(`sheet ${sheet.name} is gone`);
    this.names();
    return { differences: this.differences, structure: this.structure, compared: this.compared };
  }

  private sheets(old: BookSheet, now: BookSheet): void {
    const seenOld = new Set<BookCell>();
    const seenNow = new Set<BookCell>();
    const tables = this.tablesOf(this.after, now.name);
    for (const was of this.tablesOf(this.before, old.name)) {
      const table = tables.find(({ name }) => name.toLowerCase() === was.name.toLowerCase());
      if (table) this.tables(old, was, now, table, seenOld, seenNow);
      else this.structure.push(`table ${was.name} is gone`);
    }
    for (const { name } of tables) if (!this.before.workbook.facts.tables.some((was) => was.name.toLowerCase() === name.toLowerCase())) this.structure.push(`table ${name} is new`);
    const moved = this.moves.get(now.name.toLowerCase());
    const oldOf = (row: number): number | undefined => (moved ? moved.oldOf(row) : row);
    for (const cell of now.all) {
      const row = oldOf(cell.row);
      if (!seenNow.has(cell)) this.cells(row === undefined ? undefined : old.at(row, cell.column), cell, '', '', seenOld);
    }
    for (const cell of old.all) if (!seenOld.has(cell)) this.cells(cell, undefined, '', '');
    if (moved) this.rows(old, now, moved, seenOld, seenNow);
  }

  /** Rows outside of tables that came or went. */
  private rows(old: BookSheet, now: BookSheet, { added, gone }: RowMoves, inOldTables: ReadonlySet<BookCell>, inNewTables: ReadonlySet<BookCell>): void {
    for (const [rows, sheet, tables, what] of [[added, now, inNewTables, 'is new'], [gone, old, inOldTables, 'is gone']] as const) {
      for (const row of rows) {
        let outside = false;
        sheet.each(row, 0, row, sheet.lastColumn, (cell) => { outside ||= !tables.has(cell); });
        if (outside) this.structure.push(`sheet ${now.name}: row ${row + 1}${what === 'is gone' ? ' of the older state' : ''} ${what}`);
      }
    }
  }

  private tablesOf = (book: Book, sheet: string): readonly TableFacts[] => book.workbook.facts.tables.filter((table) => table.sheet === sheet);

  private tables(old: BookSheet, was: TableFacts, now: BookSheet, is: TableFacts, seenOld: Set<BookCell>, seenNow: Set<BookCell>): void {
    const [oldRows, newRows] = [rowsByKey(old, was), rowsByKey(now, is)];
    if (!oldRows || !newRows) return; // told by address, as cells outside of tables
    const oldColumns = new Map(was.columns.map(({ name }, at) => [name.toLowerCase(), was.box.left + at]));
    for (const { name } of was.columns) if (!is.columns.some((each) => each.name.toLowerCase() === name.toLowerCase())) this.structure.push(`table ${is.name}: column ${name} is gone`);
    for (const { name } of is.columns) if (!oldColumns.has(name.toLowerCase())) this.structure.push(`table ${is.name}: column ${name} is new`);
    for (const key of oldRows.keys()) if (!newRows.has(key)) this.structure.push(`table ${is.name}: row ${key} is gone`);
    for (const [key, row] of newRows) {
      const oldRow = oldRows.get(key);
      if (oldRow === undefined) this.structure.push(`table ${is.name}: row ${key} is new`);
      is.columns.forEach(({ name }, at) => {
        const column = oldColumns.get(name.toLowerCase());
        const before = oldRow === undefined || column === undefined ? undefined : old.at(oldRow, column);
        const after = now.at(row, is.box.left + at);
        if (oldRow !== undefined && column !== undefined) this.cells(before, after, key, name);
      });
    }
    for (const [sheet, { box }, seen] of [[old, was, seenOld], [now, is, seenNow]] as const) sheet.each(box.top, box.left, box.bottom, box.right, (cell) => { seen.add(cell); });
  }

  private cells(was: BookCell | undefined, now: BookCell | undefined, row: string, column: string, seen?: Set<BookCell>): void {
    if (was) seen?.add(was);
    if (!was && !now) return;
    this.compared++;
    const [a, b] = [was && this.oldTemplates.of(was)?.key, now && this.newTemplates.of(now)?.key];
    const filled = was?.owner !== undefined && now?.owner !== undefined;
    const formulas = (was?.formula ?? null) !== null || (now?.formula ?? null) !== null;
    const sameFormula = a === b || (was?.formula != null && now?.formula != null && (was.formula === now.formula || this.moved(was.formula, was.sheet.name) === now.formula));
    if (formulas && !sameFormula) this.add('formula', was, now, row, column);
    else if (!agrees(was?.stored ?? null, now?.stored ?? null, this.tolerance)) this.add(formulas || filled ? 'result' : 'input', was, now, row, column);
  }

  private moved = (formula: string, sheet: string): string => (this.moves.size === 0 ? formula : formulaMoved(formula, sheet, (name) => this.moves.get(name.toLowerCase())));

  private add(kind: Difference['kind'], was: BookCell | undefined, now: BookCell | undefined, row: string, column: string): void {
    this.differences.push({ kind, sheet: (now ?? was)!.sheet.name, row, column, was: was && sideOf(was), now: now && sideOf(now) });
  }

  private names(): void {
    const key = ({ name, sheet }: { name: string; sheet: string | undefined }): string => `${sheet ?? ''}!${name}`.toLowerCase();
    const old = new Map(this.before.workbook.facts.names.map((name) => [key(name), name]));
    for (const name of this.after.workbook.facts.names) {
      if (/^_xlnm\./.test(name.name)) continue;
      const was = old.get(key(name));
      if (!was) this.structure.push(`name ${name.name} is new: ${name.text}`);
      else if (was.text !== name.text && this.moved(was.text, '') !== name.text) this.structure.push(`name ${name.name}: ${was.text} became ${name.text}`);
    }
    const now = new Set(this.after.workbook.facts.names.map(key));
    for (const [id, { name }] of old) if (!now.has(id) && !/^_xlnm\./.test(name)) this.structure.push(`name ${name} is gone`);
  }
}

const sideOf = (cell: BookCell): Side => ({ address: cell.address, value: cell.stored, formula: cell.formula === null ? null : `=${typedFormula(cell.formula)}` });

const keyOf = (cell: Cell): string => (cell === null || cell instanceof CellError ? '' : String(cell).trim());

/** Rows of a table by their first cell; undefined where two are alike or one is blank. */
function rowsByKey(sheet: BookSheet, { box, headerRows, totalsRows }: TableFacts): Map<string, number> | undefined {
  const rows = new Map<string, number>();
  for (let row = box.top + headerRows; row <= Math.min(box.bottom - totalsRows, sheet.lastRow); row++) {
    const key = keyOf(sheet.at(row, box.left)?.stored ?? null);
    if (key === '' || rows.has(key)) return undefined;
    rows.set(key, row);
  }
  return rows;
}
