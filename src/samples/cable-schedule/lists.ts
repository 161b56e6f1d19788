import type { Workbook } from 'exceljs';
import { HEADING, dress } from '../look';
import { letters } from '../frame';

const LISTS: Readonly<Record<string, readonly (string | number)[]>> = {
  list_metal: ['copper', 'aluminium'],
  list_insulation: ['XLPE', 'EPR', 'PVC'],
  list_kind: ['gG', 'breaker'],
  list_feeder: ['source', 'MSB'],
  list_size: [1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400, 500, 630],
};

/** Words that validated cells choose from. */
export function addLists(workbook: Workbook): void {
  const sheet = workbook.addWorksheet('Lists');
  Object.entries(LISTS).forEach(([name, entries], i) => {
    const column = i + 1;
    dress(sheet.getCell(1, column), HEADING).value = name.slice('list_'.length);
    entries.forEach((entry, j) => void (sheet.getCell(j + 2, column).value = entry));
    sheet.getColumn(column).width = 13.7;
    workbook.definedNames.add(`'Lists'!$${letters(column)}$2:$${letters(column)}$${entries.length + 1}`, name);
  });
}
