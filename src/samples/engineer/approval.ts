import type { Workbook, Worksheet } from 'exceljs';
import { digest } from '../../core/check/digest';
import type { Book } from '../../sheet/book';
import { BOARDS, CABLES, DEVICES } from '../cable-schedule/data';
import { DIGEST_COLUMN } from '../cable-schedule/devices';
import { FIRST_FREE_ROW, letters, printSetUp, titleBlock } from '../frame';
import { APPROVED, HEADING, REMARK, WORKED, WORDS, dress } from '../look';
import { fileFormula } from '../formula-text';
import { type Column, type WorkedColumns, addTable } from '../table';
import { APPROVED_REVISION, DOCUMENT } from './data';

type Row = readonly (string | number)[];
const cellByCell = (row: Row): string => digest(row.map((cell) => [[cell === '' ? null : cell]]));

/** What is digested: the range as a formula names it, and its cells as they were approved. */
interface Region {
  what: string;
  range: string;
  approved: readonly Row[];
}

const region = (what: string, sheet: string, columns: readonly [string, string], row: number, approved: readonly Row[]): Region =>
  ({ what, range: `'${sheet}'!$${columns[0]}$${row}:$${columns[1]}$${row + approved.length - 1}`, approved });

/** Devices have blanks in their rows, so theirs is a digest of the rows' digests. */
const REGIONS: readonly Region[] = [
  region('Boards: all inputs', 'Boards', ['A', letters(BOARDS[0]!.length)], FIRST_FREE_ROW + 4, BOARDS),
  region('Devices: inputs of the approved rows', 'Devices', [DIGEST_COLUMN, DIGEST_COLUMN], FIRST_FREE_ROW + 2, DEVICES.map((row) => [cellByCell(row)])),
  region('Cables: inputs of the approved rows', 'Cables', ['A', letters(CABLES[0]!.length)], FIRST_FREE_ROW + 2, CABLES),
];

interface Result { readonly cable: string; readonly endLevel: number; readonly trip: number; readonly withstand: string }

/** Results as they stand in the approved schedule. */
function approvedResults(schedule: Book): Result[] {
  return CABLES.map(([cable], i) => {
    const at = (name: string): unknown => schedule.value('Cables', `${columnOf(schedule, name)}${FIRST_FREE_ROW + 2 + i}`);
    return { cable, endLevel: at('Ik3 end') as number, trip: at('trips in') as number, withstand: at('withstand') as string };
  });
}

function columnOf(schedule: Book, name: string): string {
  for (let column = 1; column < 60; column += 1) if (schedule.value('Cables', `${letters(column)}${FIRST_FREE_ROW + 1}`) === name) return letters(column);
  throw new Error(`the schedule has no column ${name}`);
}

const now = (column: string): string => `XLOOKUP([@cable],Cables[cable],Cables[${column}])`;
const INPUTS = ['cable', 'from', 'to', 'length', 'metal', 'insulation', 'size', 'runs', 'earth', 'device'] as const;

const COLUMNS: readonly Column[] = [
  { name: 'cable', width: 9 },
  { name: 'digest approved', width: 14, note: 'Digest of the row’s inputs at approval.' },
  { name: 'Ik3 end approved', unit: 'kA', width: 11, format: '0.00' },
  { name: 'trips approved', unit: 's', width: 11, format: '0.000' },
  { name: 'withstand approved', width: 12 },
  { name: 'digest now', width: 14, formula: `JW.CHECK_DIGEST(${INPUTS.map(now).join(',')})` },
  { name: 'inputs', width: 12, formula: 'IF([@[digest now]]=[@[digest approved]],"untouched","CHANGED")' },
  { name: 'Ik3 end now', unit: 'kA', width: 11, format: '0.00', formula: now('Ik3 end') },
  { name: 'trips now', unit: 's', width: 11, format: '0.000', formula: now('trips in') },
  { name: 'withstand now', width: 12, formula: now('withstand') },
  {
    name: 'results', width: 12, note: 'Approved figures against those of today, to 0.01 %.',
    formula: 'IF(AND(JW.AGREE([@[Ik3 end approved]],[@[Ik3 end now]],0.01)="agrees",JW.AGREE([@[trips approved]],[@[trips now]],0.01)="agrees",JW.AGREE([@[withstand approved]],[@[withstand now]],0.01)="agrees"),"untouched","CHANGED")',
  },
];

const CHANGED_LOOK = { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF6D3D0' } }, font: { bold: true, color: { argb: 'FF8A1C12' } } } as const;

/** Nothing approved was disturbed: digests and results of the approved rows, then and now. */
export function addApproval(workbook: Workbook, worked: WorkedColumns, schedule: Book): Worksheet {
  const sheet = workbook.addWorksheet('Approval', { properties: { tabColor: { argb: 'FF34495A' } } });
  titleBlock(sheet, `APPROVAL: what revision ${APPROVED_REVISION} approved, and whether it still stands`, DOCUMENT, COLUMNS.length);
  const top = FIRST_FREE_ROW + 1;
  sheet.mergeCells(top, 1, top, 4);
  ['inputs', '', '', '', `digest rev ${APPROVED_REVISION}`, 'digest now', 'inputs'].forEach((text, i) => {
    if (text !== '') dress(sheet.getCell(top, i + 1), HEADING).value = text;
  });
  REGIONS.forEach(({ what, range, approved }, i) => {
    const row = top + 1 + i;
    sheet.mergeCells(row, 1, row, 4);
    dress(sheet.getCell(row, 1), WORDS).value = what;
    dress(sheet.getCell(row, 5), APPROVED).value = digest([approved]);
    dress(sheet.getCell(row, 6), WORKED).value = { formula: fileFormula(`JW.CHECK_DIGEST(${range})`, '') };
    dress(sheet.getCell(row, 7), WORKED).value = { formula: `IF(E${row}=F${row},"untouched","CHANGED")` };
  });
  const summary = top + REGIONS.length + 2;
  dress(sheet.getCell(summary, 1), REMARK).value = 'A digest shows a change and is no seal. Row by row:';
  sheet.getCell(summary, 1).alignment = { wrapText: false };
  const rows = approvedResults(schedule).map(({ cable, endLevel, trip, withstand }, i) => [cable, cellByCell(CABLES[i]!), endLevel, trip, withstand]);
  const last = addTable(sheet, { name: 'Approval', at: { row: summary + 1 }, columns: COLUMNS, rows, inputLook: () => APPROVED }, worked);
  for (const ref of [`G${top + 1}:G${top + REGIONS.length}`, `G${summary + 3}:G${last}`, `K${summary + 3}:K${last}`]) {
    sheet.addConditionalFormatting({ ref, rules: [{ type: 'cellIs', operator: 'equal', priority: 1, formulae: ['"CHANGED"'], style: CHANGED_LOOK }] });
  }
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length });
  return sheet;
}

