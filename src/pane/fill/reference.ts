import type { SheetTable } from '../../sheet/calculate/structured';
import { type Box, boxText, inBox, oneCell } from '../../sheet/xlsx/address';

/** A cell or range as a formula in another cell names it. */

export interface Target {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const sameSheet = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Names that need no quotes and could not be taken for an address. */
const PLAIN_SHEET = /^(?![A-Za-z]{1,3}\d+$)(?![Rr]\d*[Cc]\d*$)[\p{L}_][\p{L}\p{N}_.]*$/u;
export const sheetPrefix = (sheet: string): string => (PLAIN_SHEET.test(sheet) ? `${sheet}!` : `'${sheet.replace(/'/g, "''")}'!`);

const escaped = (column: string): string => column.replace(/['[\]#@]/g, "'$&");
/** Of this row: a name of other than letters and digits stands in brackets of its own. */
const ofThisRow = (column: string): string => (/^[\p{L}\p{N}_]+$/u.test(column) ? `[@${column}]` : `[@[${escaped(column)}]]`);

const dataRows = ({ box, headerRows, totalsRows }: SheetTable): { top: number; bottom: number } => ({ top: box.top + headerRows, bottom: box.bottom - totalsRows });

/** The table whose data a cell stands in. */
export const tableAt = (tables: readonly SheetTable[], sheet: string, row: number, column: number): SheetTable | undefined =>
  tables.find((table) => sameSheet(table.sheet, sheet) && inBox({ ...table.box, ...dataRows(table) }, row, column));

/** Columns of a table that a box covers from the first row of data to the last. */
function wholeColumns(tables: readonly SheetTable[], sheet: string, box: Box): string | undefined {
  const table = tables.find((each) => sameSheet(each.sheet, sheet) && box.left >= each.box.left && box.right <= each.box.right && box.top === dataRows(each).top && box.bottom === dataRows(each).bottom);
  if (!table || box.top === box.bottom) return undefined;
  const [first, last] = [table.columns[box.left - table.box.left]!.name, table.columns[box.right - table.box.left]!.name].map(escaped);
  return first === last ? `${table.name}[${first}]` : `${table.name}[[${first}]:[${last}]]`;
}

/**
 * The text that stands for a box in the formula of the target: the column of this row where both are in one row of a table,
 * a column of a table where it is taken whole, else an address, with its sheet where that is another.
 */
export function referenceTo(sheet: string, box: Box, target: Target, tables: readonly SheetTable[]): string {
  if (oneCell(box) && sameSheet(sheet, target.sheet) && box.top === target.row) {
    const table = tableAt(tables, sheet, box.top, box.left);
    if (table && table === tableAt(tables, target.sheet, target.row, target.column)) return ofThisRow(table.columns[box.left - table.box.left]!.name);
  }
  return wholeColumns(tables, sheet, box) ?? `${sameSheet(sheet, target.sheet) ? '' : sheetPrefix(sheet)}${boxText(box)}`;
}
