import ExcelJS, { type Workbook } from 'exceljs';
import { openBook } from '../sheet/book';
import { customFunctions } from '../sheet/custom-functions';
import { recompute } from '../sheet/recompute';
import type { Chart } from './chart-xml';
import { repaired, withCharts } from './finish';
import type { Document } from './frame';
import type { WorkedColumns } from './table';
import { valuesIn } from './values';

/** An empty sample workbook; its dates are those of the document, so that the same input gives the same bytes. */
export function startWorkbook(title: string, document: Document): Workbook {
  const workbook = new ExcelJS.Workbook();
  workbook.creator = 'Joulewright sample';
  workbook.lastModifiedBy = 'Joulewright sample';
  workbook.created = document.date;
  workbook.modified = document.date;
  workbook.title = title;
  workbook.calcProperties.fullCalcOnLoad = false;
  return workbook;
}

/** The bytes of a workbook whose values were worked out by our own functions; charts by the number of their sheet. */
export async function finishedWorkbook(workbook: Workbook, worked: WorkedColumns, charts: ReadonlyMap<number, readonly Chart[]> = new Map()): Promise<Uint8Array> {
  const written = new Uint8Array(await workbook.xlsx.writeBuffer());
  const { bytes, notComputed } = recompute(repaired(written, worked), customFunctions);
  if (notComputed.length > 0) throw new Error(`the sample has formulas that cannot be computed: ${JSON.stringify(notComputed[0])}`);
  if (charts.size === 0) return bytes;
  const book = openBook(bytes, customFunctions);
  return withCharts(bytes, charts, (reference) => valuesIn(book, reference));
}
