import ExcelJS from 'exceljs';
import { openBook } from '../../sheet/book';
import { customFunctions } from '../../sheet/custom-functions';
import { recompute } from '../../sheet/recompute';
import type { Chart } from '../chart-xml';
import { repaired, withCharts } from '../finish';
import type { WorkedColumns } from '../table';
import { valuesIn } from '../values';
import { addBoards } from './boards';
import { addCables } from './cables';
import { addCheck } from './check';
import { addCurves, curveCharts } from './curves';
import { DOCUMENT } from './data';
import { addDevices } from './devices';
import { addLists } from './lists';
import { addSelectivity } from './selectivity';
import { addSources } from './sources';

/** The sample schedule as the bytes of a workbook, its values worked out by our own functions. */
export async function cableSchedule(): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook();
  workbook.creator = 'Joulewright sample';
  workbook.lastModifiedBy = 'Joulewright sample';
  workbook.created = DOCUMENT.date;
  workbook.modified = DOCUMENT.date;
  workbook.title = 'Cable schedule of an invented works';
  workbook.calcProperties.fullCalcOnLoad = false;
  const worked: WorkedColumns = new Map();
  addSources(workbook);
  addBoards(workbook, worked);
  addDevices(workbook, worked);
  addCables(workbook, worked);
  addSelectivity(workbook, worked);
  const curves = addCurves(workbook);
  addCheck(workbook, worked);
  addLists(workbook);

  const written = new Uint8Array(await workbook.xlsx.writeBuffer());
  const { bytes, notComputed } = recompute(repaired(written, worked), customFunctions);
  if (notComputed.length > 0) throw new Error(`the sample has formulas that cannot be computed: ${JSON.stringify(notComputed[0])}`);
  const book = openBook(bytes, customFunctions);
  const charts = new Map<number, readonly Chart[]>([[curves.id, curveCharts]]);
  return withCharts(bytes, charts, (reference) => valuesIn(book, reference));
}
