import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { DESIGNER } from './data';

const CHECKER = 'XLOOKUP([@cable],Cables[cable],IF([@item]="Ik3 end",Cables[Ik3 end],IF([@item]="Ik1 min",Cables[Ik1 min],Cables[k²S²])))';

const COLUMNS: readonly Column[] = [
  { name: 'cable', width: 9 },
  { name: 'item', width: 12 },
  { name: 'designer', width: 15, format: '#,##0.00' },
  { name: 'tolerance', unit: '%', width: 10, format: '0.0', between: [0, 100] },
  { name: 'checker', width: 16, format: '#,##0.00', formula: CHECKER },
  { name: 'agrees?', width: 20, formula: 'JW.AGREE([@designer],[@checker],[@tolerance])' },
  { name: 'why?', width: 44, words: true, formula: orNone('JW.AGREE_HINT([@designer],[@checker])') },
  { name: 'difference', unit: '%', width: 11, format: '0.00', formula: 'JW.AGREE_DIFFERENCE([@designer],[@checker])' },
];

/** A colleague's figures against ours. */
export function addCheck(workbook: Workbook, worked: WorkedColumns, document: Document): Worksheet {
  const sheet = workbook.addWorksheet('Check', { properties: { tabColor: { argb: 'FF777777' } } });
  titleBlock(sheet, 'CHECK: the designer’s figures against this schedule', document, 10);
  const last = addTable(sheet, { name: 'Check', at: { row: FIRST_FREE_ROW }, columns: COLUMNS, rows: DESIGNER }, worked);
  sheet.addConditionalFormatting({
    ref: `F${FIRST_FREE_ROW + 2}:F${last}`,
    rules: [{ type: 'expression', priority: 1, formulae: [`LEFT(F${FIRST_FREE_ROW + 2},7)="DIFFERS"`], style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF6D3D0' } }, font: { bold: true, color: { argb: 'FF8A1C12' } } } }],
  });
  printSetUp(sheet, document, { rows: last, columns: 10 });
  return sheet;
}
