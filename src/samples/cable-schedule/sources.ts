import type { Style, Workbook, Worksheet } from 'exceljs';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { LINE_COLUMNS, type Line, addLines, setLineWidths } from '../lines';

export const CONSTANTS: readonly Line[] = [
  { label: 'Nominal voltage between lines', value: 415, unit: 'V', name: 'Un_V' },
  { label: 'Voltage line to earth', value: 240, unit: 'V', name: 'U0_V' },
  { label: 'Voltage factor, greatest fault', value: 1.05, unit: '–', name: 'c_max', format: '0.00' },
  { label: 'Voltage factor, least fault', value: 0.95, unit: '–', name: 'c_min', format: '0.00' },
];

export const SUPPLY: readonly Line[] = [
  { label: 'Supply network, greatest fault level', value: 350, unit: 'MVA', name: 'Grid_max_MVA', remark: 'Declared by the supply authority, invented' },
  { label: 'Supply network, least fault level', value: 180, unit: 'MVA', name: 'Grid_min_MVA' },
  { label: 'Transformers TR1, TR2: rating each', value: 1250, unit: 'kVA', name: 'TR_kVA' },
  { label: 'Impedance voltage', value: 6, unit: '%', name: 'TR_uk_pct', format: '0.0' },
  { label: 'Load loss', value: 13.5, unit: 'kW', name: 'TR_loss_kW', format: '0.0' },
  { label: 'Motors running on MSB, sum', value: 280, unit: 'kW', name: 'Motors_kW', remark: 'Presses and fans; those behind converters left out' },
  { label: 'Motors: power factor', value: 0.86, unit: '–', name: 'Motors_pf', format: '0.00' },
  { label: 'Motors: efficiency', value: 0.93, unit: '–', name: 'Motors_eff', format: '0.00' },
];

export const WORKED_OUT: readonly Line[] = [
  { label: 'Grid, greatest', value: 'JW.IMP_GRID(Grid_max_MVA,Un_V)', unit: 'mΩ', name: 'Zgrid_max', carried: true },
  { label: 'Grid, least', value: 'JW.IMP_GRID(Grid_min_MVA,Un_V,1)', unit: 'mΩ', name: 'Zgrid_min', carried: true, remark: 'c of the high-voltage network: 1.00 for the least fault' },
  { label: 'One transformer, greatest fault', value: 'JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max)', unit: 'mΩ', name: 'Ztr_max', carried: true, remark: 'With the correction factor' },
  { label: 'One transformer, least fault', value: 'JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max,FALSE)', unit: 'mΩ', name: 'Ztr_min', carried: true, remark: 'Uncorrected' },
  { label: 'Source, greatest: both transformers in', value: 'JW.IMP_SERIES(Zgrid_max,JW.IMP_PARALLEL(Ztr_max,Ztr_max))', unit: 'mΩ', name: 'Zs_max', carried: true },
  { label: 'Source, least: one transformer in', value: 'JW.IMP_SERIES(Zgrid_min,Ztr_min)', unit: 'mΩ', name: 'Zs_min', carried: true },
  { label: 'Motors', value: 'JW.IMP_MOTOR(Motors_kW,Motors_pf,Motors_eff,Un_V)', unit: 'mΩ', name: 'Zmotors', carried: true },
  { label: 'Ik3 at the transformers’ terminals, greatest', value: 'JW.FAULT_3PH_MAX(Zs_max,Un_V,c_max)', unit: 'kA', name: 'Ik3_source_kA', format: '0.00' },
  { label: 'The same from the plates alone', value: '2*JW.FAULT_FROM_RATING(TR_kVA,TR_uk_pct,Un_V)', unit: 'kA', format: '0.00', remark: 'Rough second way: leaves out grid, c and correction factor' },
  { label: 'Ik3 that the motors add', value: 'JW.FAULT_3PH_MAX(Zmotors,Un_V,c_max)', unit: 'kA', name: 'Ik3_motors_kA', format: '0.00' },
  { label: 'Peak there, network and motors', value: 'JW.FAULT_PEAK(Ik3_source_kA,JW.IMP_PART(Zs_max,"R/X"),"plain",Ik3_motors_kA)', unit: 'kA peak', format: '0.0' },
  { label: 'Longest disconnection time of these circuits', value: 'JW.DISCONNECT_LIMIT("TN","distribution",U0_V)', unit: 's', name: 't_limit_s', remark: 'All feed boards or fixed loads above 32 A' },
  { label: 'How the source was worked', value: 'JW.SHOW_WORKING("FAULT_3PH_MAX",Zs_max,Un_V,c_max)', format: '@' },
  { label: 'Clause', value: 'JW.CLAUSE("FAULT_3PH_MAX")', format: '@' },
  { label: 'Calculated with', value: 'JW.CORE_VERSION()', format: '@', lines: 9 },
];

/** Job constants, supply, transformers, motors; and the source impedances worked from them, under names. */
export function addSources(workbook: Workbook, document: Document, inputLook?: Partial<Style>): Worksheet {
  const sheet = workbook.addWorksheet('Sources', { properties: { tabColor: { argb: 'FF34495A' } } });
  setLineWidths(sheet);
  titleBlock(sheet, 'SOURCES: supply, transformers, motors', document, LINE_COLUMNS);
  let row = FIRST_FREE_ROW;
  for (const [title, lines, worked] of [['Job constants', CONSTANTS, false], ['Supply as declared', SUPPLY, false], ['Worked out', WORKED_OUT, true]] as const) {
    row = addLines(workbook, sheet, row, title, lines, worked, inputLook) + 1;
  }
  printSetUp(sheet, document, { rows: row, columns: LINE_COLUMNS });
  return sheet;
}
