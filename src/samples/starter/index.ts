import { COMMON_LISTS, addLists } from '../lists';
import type { WorkedColumns } from '../table';
import { finishedWorkbook, startWorkbook } from '../workbook';
import { addBoards } from './boards';
import { addCables } from './cables';
import { addCheck } from './check';
import { addDevices } from './devices';
import { DOCUMENT } from './document';
import { addJob } from './job';
import { addOptions } from './options';
import { addPoints } from './points';

/** Sheets to begin a job with: example rows in italics, blank rows behind them. */
export async function starter(): Promise<Uint8Array> {
  const workbook = startWorkbook('Starter sheets', DOCUMENT);
  const worked: WorkedColumns = new Map();
  addJob(workbook);
  addBoards(workbook, worked);
  addCables(workbook, worked);
  addDevices(workbook, worked);
  addPoints(workbook);
  addOptions(workbook, worked);
  addCheck(workbook, worked);
  addLists(workbook, DOCUMENT, {
    ...COMMON_LISTS, list_kind: ['gG', 'breaker'], list_where: ['in cable', 'separate', 'armour'], list_system: ['TN', 'TT', 'IT'], list_circuit: ['distribution', 'final'],
    list_option: ['fuse-switch', 'breaker'], list_class: ['A', 'B', 'C'],
  });
  return finishedWorkbook(workbook, worked);
}
