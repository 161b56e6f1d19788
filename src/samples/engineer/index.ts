import type { Worksheet } from 'exceljs';
import { openBook } from '../../sheet/book';
import { customFunctions } from '../../sheet/custom-functions';
import { SCHEDULE_LISTS, cableSchedule } from '../cable-schedule';
import { addBoards } from '../cable-schedule/boards';
import { addCables } from '../cable-schedule/cables';
import { BOARDS, CABLES, DEVICES } from '../cable-schedule/data';
import { addDevices, addDuty } from '../cable-schedule/devices';
import { addPoints } from '../cable-schedule/points';
import { addSources } from '../cable-schedule/sources';
import { INVENTED } from '../frame';
import { addLists } from '../lists';
import { ADDED, APPROVED } from '../look';
import type { Column, WorkedColumns } from '../table';
import { finishedWorkbook, startWorkbook } from '../workbook';
import { addApproval } from './approval';
import { ADDED_CABLES, ADDED_DEVICES, APPROVED_REVISION, DOCUMENT, OPEN_POINTS } from './data';

const STATUS: readonly Column[] = [
  { name: 'status', width: 10, list: 'list_status' },
  { name: 'rev', width: 6, note: 'Revision that brought the row in.' },
  { name: 'remark', width: 24, words: true },
];
const approvedThen = (approved: number) => (row: number) => (row < approved ? APPROVED : ADDED);

const REMARK = `${INVENTED} Protected without a password: approved rows are locked, added rows are open. For more rows: Review > Unprotect Sheet, then type below the last one.`;

/** Locks what is approved; added rows stay open to typing, columns to resizing. */
const protect = (sheet: Worksheet): Promise<void> => sheet.protect('', { formatColumns: true, formatRows: true, autoFilter: true, sort: true });

/** An approved schedule to which a dozen cables are added, nothing approved disturbed. */
export async function engineer(): Promise<Uint8Array> {
  const approved = openBook(await cableSchedule(), customFunctions);
  const workbook = startWorkbook('Revision of the cable schedule of an invented works', DOCUMENT);
  const worked: WorkedColumns = new Map();
  const devices = [...DEVICES, ...ADDED_DEVICES];
  const look = approvedThen(DEVICES.length);
  const sheets = [
    addSources(workbook, DOCUMENT, APPROVED),
    addBoards(workbook, worked, DOCUMENT, approvedThen(BOARDS.length)),
    addDevices(workbook, worked, DOCUMENT, devices, look),
    addDuty(workbook, worked, DOCUMENT, devices, look),
    addCables(workbook, worked, DOCUMENT, {
      rows: [...CABLES.map((row) => [...row, 'approved', APPROVED_REVISION, OPEN_POINTS[row[0]] ?? '–']), ...ADDED_CABLES.map((row) => [...row, 'added', DOCUMENT.revision, '–'])],
      more: STATUS,
      inputLook: approvedThen(CABLES.length),
      title: 'CABLE SCHEDULE: approved rows, and a dozen added',
      block: { remark: REMARK, legend: [['approved', APPROVED], ['added', ADDED]] },
    }),
    addPoints(workbook, DOCUMENT, APPROVED),
    addApproval(workbook, worked, approved),
  ];
  addLists(workbook, DOCUMENT, { ...SCHEDULE_LISTS, list_status: ['approved', 'added'] });
  for (const sheet of sheets) await protect(sheet);
  return finishedWorkbook(workbook, worked);
}
