import { addressOf, boxText, inBox, oneCell } from '../../sheet/xlsx/address';
import type { OpenWorkbook } from '../../sheet/xlsx/workbook';
import { childNamed, childrenNamed, truth } from '../../sheet/xlsx/xml/tree';
import type { ReadSheet } from './workbook-data';

/** Why a cell may not be changed here; undefined where it may. */
export type WhyFixed = (sheet: string, row: number, column: number) => string | undefined;

/** Style numbers that cells without an entry of their own take from their row or column. */
export class SheetStyles {
  private readonly cells = new Map<string, number>();
  private readonly rows = new Map<number, number>();
  private readonly columns: { min: number; max: number; style: number }[] = [];

  constructor({ stored, frame }: ReadSheet) {
    for (const { address, style } of stored) this.cells.set(address, style);
    for (const { row, style } of frame.rows) if (style !== undefined) this.rows.set(row, style);
    for (const { attributes } of childrenNamed(childNamed(frame.root, 'cols'), 'col')) {
      const style = Number(attributes.get('style') ?? 0) || 0;
      if (style > 0) this.columns.push({ min: Number(attributes.get('min')) - 1, max: Number(attributes.get('max')) - 1, style });
    }
  }

  /** Style that a new cell takes; undefined where the file holds the cell already. */
  ofNew(row: number, column: number): number | undefined {
    return this.cells.has(addressOf(row, column)) ? undefined : this.rows.get(row) ?? this.columns.find(({ min, max }) => column >= min && column <= max)?.style;
  }

  of(row: number, column: number): number {
    return this.cells.get(addressOf(row, column)) ?? this.ofNew(row, column) ?? 0;
  }
}

const isProtected = ({ frame }: ReadSheet): boolean => truth(childNamed(frame.root, 'sheetProtection'), 'sheet');

function whyFixedIn(sheet: ReadSheet, styles: SheetStyles, { facts, styles: formats }: OpenWorkbook): (row: number, column: number) => string | undefined {
  const locked = isProtected(sheet);
  const tables = facts.tables.filter((table) => table.sheet === sheet.facts.name && table.headerRows === 1);
  const arrays = sheet.contents.arrays.filter(({ spills }) => !spills);
  return (row, column) => {
    const address = addressOf(row, column);
    if (locked && (formats[styles.of(row, column)]?.locked ?? true)) return `${address} is locked: the sheet ${sheet.facts.name} is protected, and only its input cells can be changed.`;
    const table = tables.find(({ box }) => row === box.top && column >= box.left && column <= box.right);
    if (table) return `${address} is a heading of the table ${table.name}, by which formulas find its column; it is renamed in a spreadsheet program only.`;
    const array = arrays.find(({ box, anchor }) => anchor !== address && !oneCell(box) && inBox(box, row, column));
    return array && `${address} is part of the array ${boxText(array.box)}, whose formula stands in ${array.anchor}; only the whole array can be changed.`;
  };
}

/** Cells that the file protects, headings of tables, and parts of arrays. */
export function fixedCells(sheets: readonly ReadSheet[], styles: ReadonlyMap<string, SheetStyles>, workbook: OpenWorkbook): WhyFixed {
  const bySheet = new Map(sheets.map((sheet) => [sheet.facts.name.toLowerCase(), whyFixedIn(sheet, styles.get(sheet.facts.name)!, workbook)]));
  return (sheet, row, column) => bySheet.get(sheet.toLowerCase())?.(row, column);
}
