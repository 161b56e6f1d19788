import ExcelJS from 'exceljs';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { openBook } from '../../src/sheet/book';
import { customFunctions } from '../../src/sheet/custom-functions';

/** SUBTOTAL looks at rows and at other subtotals as well as at values; a file says of a row only that it is hidden. */
async function book(filtered: boolean) {
  const workbook = new ExcelJS.Workbook();
  const sheet = workbook.addWorksheet('S');
  sheet.getCell('A1').value = 'kA';
  [10, 20, 40].forEach((value, i) => void (sheet.getCell(i + 2, 1).value = value));
  sheet.getCell('A5').value = { formula: 'SUBTOTAL(9,A2:A4)', result: 0 };
  sheet.getCell('A6').value = { formula: 'SUBTOTAL(9,A2:A5)', result: 0 };
  sheet.getCell('A7').value = { formula: 'SUBTOTAL(109,A2:A4)', result: 0 };
  sheet.getCell('A8').value = { formula: 'AGGREGATE(9,5,A2:A4)', result: 0 };
  sheet.getRow(3).hidden = true;
  sheet.autoFilter = 'A1:A4';
  const parts = unzipSync(new Uint8Array(await workbook.xlsx.writeBuffer()));
  if (filtered) {
    const name = 'xl/worksheets/sheet1.xml';
    parts[name] = strToU8(strFromU8(parts[name]!).replace(/<autoFilter ref="A1:A4"\/>/, '<autoFilter ref="A1:A4"><filterColumn colId="0"><filters><filter val="10"/><filter val="40"/></filters></filterColumn></autoFilter>'));
  }
  const opened = openBook(zipSync(parts), customFunctions);
  opened.recalculate();
  return (address: string) => opened.value('S', address);
}

test('a row hidden by hand counts in SUBTOTAL 9 and not in 109; subtotals are not counted twice', async () => {
  const value = await book(false);
  expect([value('A5'), value('A6'), value('A7'), value('A8')]).toEqual([70, 70, 50, 50]);
});

test('a row hidden by a filter counts in none of them', async () => {
  const value = await book(true);
  expect([value('A5'), value('A6'), value('A7'), value('A8')]).toEqual([50, 50, 50, 50]);
});
