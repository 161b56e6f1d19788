import type { Workbook, Worksheet } from 'exceljs';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { DEVICES, DOCUMENT } from './data';

const COLUMNS: readonly Column[] = [
  { name: 'device', width: 8 },
  { name: 'board', width: 10, list: 'list_board' },
  { name: 'kind', width: 9, list: 'list_kind' },
  { name: 'rated', unit: 'A', width: 8, format: '0', between: [1, 6300] },
  { name: 'range', width: 13, note: 'Only links of one range are compared by the ratio of their ratings.' },
  { name: 'pre-arcing', unit: 'A²s', width: 12, format: '#,##0', note: 'Pre-arcing joule integral from the sheet of the link.' },
  { name: 'total', unit: 'A²s', width: 12, format: '#,##0', note: 'Total operating joule integral, read at the level beside it.' },
  { name: 'read at', unit: 'kA', width: 8, format: '0.0', note: 'Prospective fault level at which the total was read.' },
  { name: 'clearing', unit: 's', width: 9, format: '0.00', note: 'Breakers that do not limit: longest clearing time, delay included.' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: 'XLOOKUP([@board],Boards[board],Boards[Ik3 max])' },
  { name: 'R/X', unit: '–', width: 8, format: '0.000', formula: 'XLOOKUP([@board],Boards[board],Boards[R/X])' },
  {
    name: 'let-through', unit: 'A²s', width: 14, format: '#,##0',
    formula: 'IF([@kind]="breaker",JW.LETTHROUGH_PROSPECTIVE([@[Ik3 max]],[@clearing],[@[R/X]]),[@total])',
    note: 'Link: total of its sheet. Breaker: the prospective current left to flow for the clearing time, with its d.c. part.',
  },
  { name: 'level', unit: 'kA', width: 9, format: '0.00', formula: 'IF([@kind]="breaker",[@[Ik3 max]],[@[read at]])', note: 'Fault level that the let-through belongs to.' },
  { name: 'band least', unit: 'A²s', width: 12, format: '#,##0', formula: 'IF([@kind]="gG",JW.BAND_FUSE_JOULE([@rated],"least"),"–")', note: 'Limits of the standard for the pre-arcing integral at 0.01 s.' },
  { name: 'band greatest', unit: 'A²s', width: 12, format: '#,##0', formula: 'IF([@kind]="gG",JW.BAND_FUSE_JOULE([@rated],"greatest"),"–")' },
  {
    name: 'in band?', width: 12,
    formula: 'IF([@kind]="gG",IF(AND([@[pre-arcing]]>=[@[band least]],[@[pre-arcing]]<=[@[band greatest]]),"within","outside"),"–")',
  },
];

/** Protective devices with their joule integrals. */
export function addDevices(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Devices', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'DEVICES: joule integrals', DOCUMENT, COLUMNS.length);
  const units = FIRST_FREE_ROW;
  const last = addTable(sheet, { name: 'Devices', at: { row: units }, columns: COLUMNS, rows: DEVICES }, worked);
  workbook.definedNames.add(`'Devices'!$A$${units + 2}:$A$${last}`, 'list_device');
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: units + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length }, [units, units + 1]);
  return sheet;
}
