import type { AstExpression } from '@borgar/fx/xlsx';
import type { Catalogue } from '../../functions/kernel/catalogue';
import type { Entry } from '../../functions/kernel/declaration';
import type { Book } from '../book';
import type { BookCell, BookSheet } from '../calculate/cells';
import { type Deviation, deviations } from './blocks';
import { type Column, Columns, isUnitText } from './columns';
import { type Place, Places, isOneCell } from './places';
import { type CallNode, Templates, calledName, expressions } from './templates';

/** The workbook that is looked at: what several rules ask of it, each thing worked out once. */
export class Subject {
  readonly templates = new Templates();
  readonly places: Places;
  private readonly columnsOf = new Map<BookSheet, Columns>();
  private readonly callsOf = new Map<string, readonly CallNode[]>();
  private deviating: readonly Deviation[] | undefined;
  private readonly ownEntries = new Map<CallNode, Entry | undefined>();

  constructor(readonly book: Book, readonly catalogue: Catalogue) {
    const { facts } = book.workbook;
    this.places = new Places(new Map(book.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet])), facts);
    for (const sheet of book.sheets) this.columnsOf.set(sheet, new Columns(sheet, facts.tables.filter((table) => table.sheet === sheet.name)));
  }

  get facts() {
    return this.book.workbook.facts;
  }

  get deviations(): readonly Deviation[] {
    return (this.deviating ??= deviations(this));
  }

  columns(sheet: BookSheet): readonly Column[] {
    return this.columnsOf.get(sheet)!.list;
  }

  columnOf(cell: BookCell): Column | undefined {
    return this.columnsOf.get(cell.sheet)!.of(cell);
  }

  /** Calls of our functions that stand in the formula of a cell, outer ones first. */
  ownCalls(cell: BookCell): readonly CallNode[] {
    const template = this.templates.of(cell);
    if (!template) return [];
    let calls = this.callsOf.get(template.key);
    if (!calls) {
      calls = [...expressions(template.tree)].filter((node): node is CallNode => this.entryOf(node) !== undefined);
      this.callsOf.set(template.key, calls);
    }
    return calls;
  }

  entryOf(node: AstExpression): Entry | undefined {
    const name = calledName(node);
    if (name === '' || !name.startsWith('_XLDUDF_JW_') && !name.startsWith('JW.')) return undefined;
    const call = node as CallNode;
    if (!this.ownEntries.has(call)) this.ownEntries.set(call, this.catalogue.find(name));
    return this.ownEntries.get(call);
  }

  /** The one cell that a reference in the formula of a cell means. */
  cellAt(node: AstExpression | null | undefined, cell: BookCell): { place: Place; cell: BookCell | undefined } | undefined {
    const place = this.placeOf(node, cell);
    return place && isOneCell(place) ? { place, cell: place.sheet.at(place.top, place.left) } : undefined;
  }

  placeOf(node: AstExpression | null | undefined, cell: BookCell): Place | undefined {
    const template = this.templates.of(cell);
    return template && this.places.of(node, template, cell);
  }

  /** Unit that is written for a cell: over its column, or in the cell to its right where values stand under one another with theirs. */
  unitOf(cell: BookCell): string {
    const column = this.columnOf(cell);
    if (column && column.unit !== '') return column.unit;
    if (column?.table) return '';
    const beside = cell.sheet.at(cell.row, cell.column + 1);
    return beside?.formula === null && typeof beside.stored === 'string' && isUnitText(beside.stored.trim()) ? beside.stored.trim() : '';
  }

  /** Cells of one record: the row of a table, or cells side by side without a gap. */
  record(of: BookCell): BookCell[] {
    const { sheet, row, column } = of;
    const table = this.columnOf(of)?.table;
    const cells: BookCell[] = [];
    if (table) {
      sheet.each(row, table.box.left, row, table.box.right, (cell) => { cells.push(cell); });
      return cells;
    }
    let left = column;
    while (left > 0 && sheet.at(row, left - 1)) left--;
    for (let cell = sheet.at(row, left); cell; cell = sheet.at(row, cell.column + 1)) cells.push(cell);
    return cells;
  }
}
