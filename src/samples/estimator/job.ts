import type { Workbook, Worksheet } from 'exceljs';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { LINE_COLUMNS, type Line, addLines, setLineWidths } from '../lines';
import { REMARK, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { BOARDS, DOCUMENT } from './data';

const NETWORK: readonly Line[] = [
  { label: 'Nominal voltage between lines', value: 415, unit: 'V', name: 'Un_V' },
  { label: 'Voltage factor, greatest fault', value: 1.05, unit: '–', name: 'c_max', format: '0.00' },
  { label: 'Supply network, greatest fault level', value: 350, unit: 'MVA', name: 'Grid_max_MVA', remark: 'Network as in schedule TT-EL-014 rev C' },
  { label: 'Transformers TR1, TR2: rating each', value: 1250, unit: 'kVA', name: 'TR_kVA' },
  { label: 'Impedance voltage', value: 6, unit: '%', name: 'TR_uk_pct', format: '0.0' },
  { label: 'Load loss', value: 13.5, unit: 'kW', name: 'TR_loss_kW', format: '0.0' },
];

export const MONEY: readonly Line[] = [
  { label: 'Interest', value: 7, unit: '% a year', name: 'rate_pct', format: '0.0', remark: 'Client’s figure' },
  { label: 'Years compared', value: 15, unit: 'years', name: 'years' },
  { label: 'Rate of labour', value: 55, unit: 'a hour', name: 'labour_rate', remark: 'Invented prices throughout, in no currency' },
  { label: 'Cost of an hour without the way', value: 900, unit: 'a hour', name: 'downtime_rate', remark: 'Client’s figure' },
  { label: 'Hours run a year', value: 6000, unit: 'h', name: 'hours_a_year' },
  { label: 'Price of energy', value: 0.21, unit: 'a kWh', name: 'energy_price', format: '0.00' },
];

const WORKED_OUT: readonly Line[] = [
  { label: 'Source: grid and both transformers', value: 'JW.IMP_SERIES(JW.IMP_GRID(Grid_max_MVA,Un_V),JW.IMP_PARALLEL(JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max),JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max)))', unit: 'mΩ', carried: true, name: 'Zs_max' },
  { label: 'The same with uk 10 % lower', value: 'JW.IMP_SERIES(JW.IMP_GRID(Grid_max_MVA,Un_V),JW.IMP_PARALLEL(JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max,TRUE,-10),JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max,TRUE,-10)))', unit: 'mΩ', carried: true, name: 'Zs_low', remark: 'For sensitivity, not for the record' },
  { label: 'Calculated with', value: 'JW.CORE_VERSION()', format: '@', lines: 9 },
];

const BOARD_COLUMNS: readonly Column[] = [
  { name: 'board' },
  { name: 'Z from the source', unit: 'mΩ', note: 'Conductors at 20 °C, from the cable schedule.' },
  { name: 'Ik3 max', unit: 'kA', format: '0.00', formula: 'JW.FAULT_3PH_MAX(JW.IMP_SERIES(Zs_max,[@[Z from the source]]),Un_V,c_max)' },
  { name: 'pf', unit: '–', format: '0.00', formula: 'JW.IMP_PART(JW.IMP_SERIES(Zs_max,[@[Z from the source]]),"pf")', note: 'Power factor of the fault.' },
  { name: 'ip', unit: 'kA', format: '0.0', formula: 'JW.FAULT_PEAK([@[Ik3 max]],JW.IMP_PART(JW.IMP_SERIES(Zs_max,[@[Z from the source]]),"R/X"))', note: 'Peak.' },
  { name: 'uk −10 %', unit: 'kA', format: '0.00', formula: 'JW.FAULT_3PH_MAX(JW.IMP_SERIES(Zs_low,[@[Z from the source]]),Un_V,c_max)', note: 'Ik3 if the transformers’ impedance lies at its lower tolerance: a sensitivity.' },
];

/** Network, money and fault levels that every option is judged by. */
export function addJob(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Job', { properties: { tabColor: { argb: 'FF34495A' } } });
  setLineWidths(sheet);
  titleBlock(sheet, 'JOB: network, money, fault levels', DOCUMENT, LINE_COLUMNS);
  let row = addLines(workbook, sheet, FIRST_FREE_ROW, 'Network', NETWORK, false) + 1;
  row = addLines(workbook, sheet, row, 'Money', MONEY, false) + 1;
  row = addLines(workbook, sheet, row, 'Worked out', WORKED_OUT, true) + 1;
  dress(sheet.getCell(row, 1), REMARK).value = 'Boards: both options of a way are judged at these levels.';
  row = addTable(sheet, { name: 'Boards', at: { row: row + 1 }, columns: BOARD_COLUMNS, rows: BOARDS }, worked);
  printSetUp(sheet, DOCUMENT, { rows: row, columns: LINE_COLUMNS });
  return sheet;
}
