import type { Workbook, Worksheet } from 'exceljs';
import { CONSTANTS, SUPPLY, WORKED_OUT } from '../cable-schedule/sources';
import { MONEY } from '../estimator/job';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { LINE_COLUMNS, type Line, addLines, setLineWidths } from '../lines';
import { EXAMPLE } from '../look';
import { BLOCK, DOCUMENT } from './document';

const LOW: Line = {
  label: 'Source with uk 10 % lower',
  value: 'JW.IMP_SERIES(Zgrid_max,JW.IMP_PARALLEL(JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max,TRUE,-10),JW.IMP_TRANSFORMER(TR_kVA,TR_uk_pct,TR_loss_kW,Un_V,c_max,TRUE,-10)))',
  unit: 'mΩ', carried: true, name: 'Zs_low', remark: 'For sensitivity, not for the record',
};
/** Remarks that belong to the sample works alone. */
const OF_THE_WORKS = /invented|presses/i;
const withoutRemark = ({ remark, ...line }: Line): Line => (remark !== undefined && OF_THE_WORKS.test(remark) ? line : { ...line, ...(remark === undefined ? {} : { remark }) });
/** Disconnection times stand in the cables' own rows here. */
const WORKED = [...WORKED_OUT.filter(({ name }) => name !== 't_limit_s').slice(0, -3), LOW, ...WORKED_OUT.slice(-3)];

/** Job constants, supply and money; what follows from them stands under names that the other sheets use. */
export function addJob(workbook: Workbook): Worksheet {
  const sheet = workbook.addWorksheet('Job', { properties: { tabColor: { argb: 'FF34495A' } } });
  setLineWidths(sheet);
  titleBlock(sheet, 'JOB: constants, supply, money', DOCUMENT, LINE_COLUMNS, BLOCK);
  let row = FIRST_FREE_ROW;
  row = addLines(workbook, sheet, row, 'Job constants', CONSTANTS, false, EXAMPLE) + 1;
  row = addLines(workbook, sheet, row, 'Supply', SUPPLY.map(withoutRemark), false, EXAMPLE) + 1;
  row = addLines(workbook, sheet, row, 'Money', MONEY.map(withoutRemark), false, EXAMPLE) + 1;
  row = addLines(workbook, sheet, row, 'Worked out', WORKED, true) + 1;
  printSetUp(sheet, DOCUMENT, { rows: row, columns: LINE_COLUMNS });
  return sheet;
}
