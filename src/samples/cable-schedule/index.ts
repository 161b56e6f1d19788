import { COMMON_LISTS, addLists } from '../lists';
import type { WorkedColumns } from '../table';
import { finishedWorkbook, startWorkbook } from '../workbook';
import { addArc } from './arc';
import { addBoards } from './boards';
import { addCables } from './cables';
import { addCheck } from './check';
import { addCurves, curveCharts } from './curves';
import { BOARDS, DOCUMENT, LINK_RATINGS } from './data';
import { addDevices, addDuty } from './devices';
import { addPoints } from './points';
import { addRing } from './ring';
import { addSelectivity } from './selectivity';
import { addSources } from './sources';

export const SCHEDULE_LISTS = {
  ...COMMON_LISTS,
  list_kind: ['gG', 'breaker'],
  list_link: LINK_RATINGS,
  list_feeder: ['source', ...BOARDS.map(([board]) => board)],
  list_state: ['closed', 'open'],
} as const;

/** The sample schedule as the bytes of a workbook, its values worked out by our own functions. */
export async function cableSchedule(): Promise<Uint8Array> {
  const workbook = startWorkbook('Cable schedule of an invented works', DOCUMENT);
  const worked: WorkedColumns = new Map();
  addSources(workbook, DOCUMENT);
  addBoards(workbook, worked, DOCUMENT);
  addRing(workbook, worked, DOCUMENT);
  addDevices(workbook, worked, DOCUMENT);
  addDuty(workbook, worked, DOCUMENT);
  addCables(workbook, worked, DOCUMENT);
  addPoints(workbook, DOCUMENT);
  const curves = addCurves(workbook, DOCUMENT);
  addSelectivity(workbook, worked, DOCUMENT);
  addArc(workbook, worked, DOCUMENT);
  addCheck(workbook, worked, DOCUMENT);
  addLists(workbook, DOCUMENT, SCHEDULE_LISTS);
  return finishedWorkbook(workbook, worked, new Map([[curves.id, curveCharts]]));
}
