import { COMMON_LISTS, addLists } from '../lists';
import type { WorkedColumns } from '../table';
import { finishedWorkbook, startWorkbook } from '../workbook';
import { addCompare, compareCharts } from './compare';
import { BOARDS, DOCUMENT, OPTIONS } from './data';
import { addJob } from './job';
import { addCost, addOptions } from './options';

/** Two ways priced two ways each, as the bytes of a workbook. */
export async function estimator(): Promise<Uint8Array> {
  const workbook = startWorkbook('Options for two ways of an invented works', DOCUMENT);
  const worked: WorkedColumns = new Map();
  addJob(workbook, worked);
  addOptions(workbook, worked);
  addCost(workbook, worked);
  const compare = addCompare(workbook, worked);
  addLists(workbook, DOCUMENT, {
    list_option: ['fuse-switch', 'breaker'], list_need: COMMON_LISTS.list_need, list_board: BOARDS.map(([board]) => board), list_key: OPTIONS.map(([key]) => key),
  });
  return finishedWorkbook(workbook, worked, new Map([[compare.id, compareCharts]]));
}
