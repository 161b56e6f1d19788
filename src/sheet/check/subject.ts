import type { AstExpression } from '@borgar/fx/xlsx';
import type { Catalogue } from '../../functions/kernel/catalogue';
import type { Entry } from '../../functions/kernel/declaration';
import type { Book } from '../book';
import type { BookCell, BookSheet } from '../calculate/cells';
import { type Deviation, deviations } from './blocks';
import { type Column, Columns } from './columns';
import { type Place, Places, type WrittenRange, isOneCell, writtenRange } from './places';
import { readNotes } from '../xlsx/notes';
import { sheetNamed } from '../xlsx/sheet';
import { type CallNode, type Template, Templates, calledName, expressions } from './templates';
import { unitNamed, unitText } from './written-unit';

/** Columns that lie between a value and the unit where its row begins. */
const FAR = 100;

/** The workbook that is looked at: what several rules ask of it, each thing worked out once. */
export class Subject {
  readonly templates = new Templates();
  readonly places: Places;
  private readonly sheetsByName: ReadonlyMap<string, BookSheet>;
  private readonly columnsOf = new Map<BookSheet, Columns>();
  private readonly callsOf = new Map<string, readonly CallNode[]>();
  private deviating: readonly Deviation[] | undefined;
  private readonly ownEntries = new Map<CallNode, Entry | undefined>();
  private readonly rangesOfTemplates = new Map<Template, readonly WrittenRange[]>();
  private readonly notes = new Map<BookSheet, ReadonlyMap<string, string>>();
  private readonly unitColumns = new Map<string, boolean>();

  constructor(readonly book: Book, readonly catalogue: Catalogue) {
    const { facts } = book.workbook;
    this.sheetsByName = new Map(book.sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
    this.places = new Places(this.sheetsByName, facts);
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

  /** Text of the note that hangs on a cell; '' where none does. */
  noteOf({ sheet, address }: BookCell): string {
    let notes = this.notes.get(sheet);
    if (!notes) this.notes.set(sheet, (notes = readNotes(this.book.workbook, sheetNamed(this.book.workbook, sheet.name))));
    return notes.get(address) ?? '';
  }

  /** Ranges and cells that a filled formula names by address, as its first cell has them. */
  rangesOf(template: Template): readonly WrittenRange[] {
    let ranges = this.rangesOfTemplates.get(template);
    if (!ranges) {
      ranges = [...expressions(template.tree)].flatMap((node) => (node.type === 'ReferenceIdentifier' && node.kind === 'range' ? writtenRange(node.value) ?? [] : []));
      this.rangesOfTemplates.set(template, ranges);
    }
    return ranges;
  }

  /** Ranges of several rows that the formula of a cell names, and those of one row that does not move. */
  wideRangesOf(cell: BookCell): Place[] {
    const template = this.templates.of(cell);
    if (!template) return [];
    return this.rangesOf(template).flatMap(({ from, to, sheet: name }) => {
      const sheet = name === undefined ? cell.sheet : this.sheetsByName.get(name.toLowerCase());
      if (!sheet || (from.row === to.row && (from.column === to.column || !from.rowFixed))) return [];
      const at = (place: number, fixed: boolean, moved: number): number => place + (fixed ? 0 : moved);
      const [rows, columns] = [cell.row - template.first.row, cell.column - template.first.column];
      return [{
        sheet, top: at(from.row, from.rowFixed, rows), bottom: at(to.row, to.rowFixed, rows),
        left: at(from.column, from.columnFixed, columns), right: at(to.column, to.columnFixed, columns),
      }];
    });
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

  /** Unit that is written for a cell: over its column, in the cell to its right, or in the column of units where its row begins. */
  unitOf(cell: BookCell): string {
    const column = this.columnOf(cell);
    if (column && column.unit !== '') return column.unit;
    if (column?.table) return '';
    const beside = cell.sheet.at(cell.row, cell.column + 1);
    return (beside?.formula === null && typeof beside.stored === 'string' && unitText(beside.stored)) || this.unitOfRow(cell);
  }

  /** Where a schedule lies on its side, units stand in one column, behind the names of the rows. */
  private unitOfRow({ sheet, row, column }: BookCell): string {
    for (let left = column - 1; left > 0 && column - left <= FAR; left--) {
      const cell = sheet.at(row, left);
      if (!cell) return '';
      if (cell.formula !== null || typeof cell.stored !== 'string') continue;
      return this.isOfUnits(cell) ? unitText(cell.stored) : '';
    }
    return '';
  }

  private isOfUnits({ sheet, column }: BookCell): boolean {
    const key = `${sheet.name}\n${column}`;
    let known = this.unitColumns.get(key);
    if (known === undefined) {
      const seen = new Set<string>();
      let others = 0;
      sheet.each(0, column, sheet.lastRow, column, ({ formula, stored }) => {
        const unit = formula === null && typeof stored === 'string' ? unitNamed(stored) : undefined;
        if (unit) seen.add(unit);
        else others++;
      });
      this.unitColumns.set(key, (known = seen.size > 1 && others <= seen.size));
    }
    return known;
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
