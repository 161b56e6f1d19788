import { type StoredCell, type ReadContext, eachCell } from './read-cells';
import { refuse } from './refusal';
import { scanSheet } from './scan';
import type { OpenWorkbook, SheetFacts } from './workbook';
import { attribute } from './xml/attributes';

export const readContext = (workbook: OpenWorkbook, sheet: SheetFacts): ReadContext =>
  ({ part: sheet.part, strings: workbook.strings, date1904: workbook.facts.date1904 });

/** The sheet of a name, in any case. */
export function sheetNamed(workbook: OpenWorkbook, name: string): SheetFacts {
  const wanted = name.toLowerCase();
  return workbook.facts.sheets.find((sheet) => sheet.name.toLowerCase() === wanted) ?? refuse(`The workbook has no sheet "${name}".`);
}

/** Hands on the cells of a sheet one by one; none for a sheet that is a chart or a dialog. */
export function eachSheetCell(workbook: OpenWorkbook, sheet: SheetFacts, visit: (cell: StoredCell) => void): void {
  if (sheet.kind === 'worksheet') eachCell(workbook.package.text(sheet.part), readContext(workbook, sheet), visit);
}

/** All cells of a sheet. */
export function sheetCells(workbook: OpenWorkbook, sheet: SheetFacts): StoredCell[] {
  const cells: StoredCell[] = [];
  eachSheetCell(workbook, sheet, (cell) => { cells.push(cell); });
  return cells;
}

/** Whether spreadsheet programs let locked cells of the sheet be changed. */
export function isProtected(workbook: OpenWorkbook, sheet: SheetFacts): boolean {
  if (sheet.kind !== 'worksheet') return false;
  let found = false;
  scanSheet(workbook.package.text(sheet.part), sheet.part, {
    cell: () => {},
    other: ({ name, text, start, end }) => { found ||= name === 'sheetProtection' && /^(1|true|on)$/.test(attribute(text, start, end, 'sheet') ?? ''); },
  });
  return found;
}
