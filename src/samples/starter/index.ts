import type { Workbook } from 'exceljs';
import type { SheetPlan } from '../../pane/sheet-plan';
import { COMMON_LISTS, addLists } from '../lists';
import { sheetPlans } from '../sheet-plans';
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
export const starter = async (): Promise<Uint8Array> => {
  const { workbook, worked } = starterSheets();
  return finishedWorkbook(workbook, worked);
};

/** The same sheets as plans, which the pane inserts into a workbook that is open. */
export const starterPlans = (): SheetPlan[] => sheetPlans(starterSheets().workbook);

function starterSheets(): { workbook: Workbook; worked: WorkedColumns } {
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
  return { workbook, worked };
}
