import { COMMON_LISTS, addLists } from '../lists';
import type { WorkedColumns } from '../table';
import { finishedWorkbook, startWorkbook } from '../workbook';
import { DOCUMENT } from './data';
import { addCheck, addDesigner, addFindings, addSources } from './sheets';

/** A colleague's sheet recomputed from its sources, with what disagrees. */
export async function checker(): Promise<Uint8Array> {
  const workbook = startWorkbook('Check of a colleague’s sheet of an invented works', DOCUMENT);
  const worked: WorkedColumns = new Map();
  addSources(workbook, worked);
  addDesigner(workbook, worked);
  addCheck(workbook, worked);
  addFindings(workbook, worked);
  const { list_metal, list_insulation, list_size } = COMMON_LISTS;
  addLists(workbook, DOCUMENT, { list_metal, list_insulation, list_size, list_class: ['A', 'B', 'C', '–'] });
  return finishedWorkbook(workbook, worked);
}
