import { Parts } from './validate/parts';
import { validateCharts, validatePackage } from './validate/package';
import { validateSheet } from './validate/sheet';
import { validateTables } from './validate/tables';
import { validateBook } from './validate/workbook';

/**
 * What a spreadsheet program would report as damage, or silently lose, in a workbook file; empty where nothing is wrong. Reads
 * the file by means of its own (a general XML parser).
 */
export function validateWorkbook(bytes: Uint8Array): string[] {
  const parts = new Parts(bytes);
  validatePackage(parts);
  const book = validateBook(parts);
  const cells = new Map(book.sheets.map((sheet) => [sheet.name, validateSheet(parts, book, sheet)]));
  validateTables(parts, book, cells);
  validateCharts(parts, new Set(book.sheets.map(({ name }) => name.toLowerCase())));
  return parts.faults;
}
