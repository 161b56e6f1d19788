import ExcelJS from 'exceljs';
import { SAMPLES, bookOf, fileOf } from './support';

/** Bold letters are wider than the digits that a column's width counts. */
const BOLD = 1.1;

test.each(SAMPLES)('%s: no column cuts a word of the title block or of a heading', async (sample) => {
  const { tables } = bookOf(sample).workbook.facts;
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(fileOf(sample));
  const cut: string[] = [];
  const fits = (sheet: ExcelJS.Worksheet, column: number, text: string): void => {
    const longest = Math.max(...text.split(' ').map((word) => word.length));
    if ((sheet.getColumn(column).width ?? 0) < BOLD * longest) cut.push(`${sheet.name} ${text}`);
  };
  for (const sheet of workbook.worksheets.filter(({ name }) => name !== 'Lists')) {
    for (const label of ['Works', 'Document', 'Revision', 'Date']) fits(sheet, 1, label);
    for (const label of ['Prepared', 'Checked', 'Approved']) fits(sheet, 6, label);
    fits(sheet, 10, 'worked-out');
    for (const { box, columns } of tables.filter((table) => table.sheet === sheet.name)) columns.forEach(({ name }, i) => fits(sheet, box.left + i + 1, name));
  }
  expect(workbook.worksheets.length).toBeGreaterThan(3);
  expect(cut).toEqual([]);
});
