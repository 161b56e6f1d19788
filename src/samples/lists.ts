import type { Workbook } from 'exceljs';
import { type Document, letters, printSetUp } from './frame';
import { HEADING, dress } from './look';

/** Words and sizes that more than one workbook offers. */
export const COMMON_LISTS = {
  list_metal: ['copper', 'aluminium'],
  list_insulation: ['XLPE', 'EPR', 'PVC'],
  list_size: [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630],
  list_need: ['service', 'once'],
  list_electrodes: ['VCB', 'VCBB', 'HCB', 'VOA', 'HOA'],
} as const;

/** A sheet of the words that validated cells choose from, one name a list. */
export function addLists(workbook: Workbook, document: Document, lists: Readonly<Record<string, readonly (string | number)[]>>): void {
  const sheet = workbook.addWorksheet('Lists');
  Object.entries(lists).forEach(([name, entries], i) => {
    const column = i + 1;
    dress(sheet.getCell(1, column), HEADING).value = name.slice('list_'.length);
    entries.forEach((entry, j) => void (sheet.getCell(j + 2, column).value = entry));
    sheet.getColumn(column).width = 13.7;
    workbook.definedNames.add(`'Lists'!$${letters(column)}$2:$${letters(column)}$${entries.length + 1}`, name);
  });
  printSetUp(sheet, document, { rows: 1 + Math.max(...Object.values(lists).map(({ length }) => length)), columns: Object.keys(lists).length });
}
