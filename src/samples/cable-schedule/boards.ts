import type { Workbook, Worksheet } from 'exceljs';
import { FIRST_FREE_ROW, letters, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable, carriedHeading } from '../table';
import { BOARDS, DOCUMENT } from './data';

const throughLink = (source: string, link: string, run: string): string =>
  `IF([@[fed from]]="source",JW.IMP_SERIES(${source},[@[${run}]]),JW.IMP_SERIES(${source},${link},[@[${run}]]))`;

/** What is read and printed. */
const READ: readonly Column[] = [
  { name: 'board', width: 10 },
  { name: 'fed from', width: 9, list: 'list_feeder' },
  { name: 'length', unit: 'm', width: 8, between: [1, 2000] },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'metal', width: 10, list: 'list_metal' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'return', unit: 'mm²', width: 8, list: 'list_size', note: 'Earth conductor of the run, of the same metal and as many runs.' },
  { name: 'Z greatest', unit: 'mΩ', width: 10, format: '0.00', formula: 'JW.IMP_PART([@[Z max]],"Z")', note: 'Size of the impedance behind the greatest fault.' },
  { name: 'Z least', unit: 'mΩ', width: 10, format: '0.00', formula: 'JW.IMP_PART([@[Z min]],"Z")', note: 'Size of the impedance behind the least fault.' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: 'JW.FAULT_3PH_MAX([@[Z max]],Un_V,c_max)' },
  { name: 'R/X', unit: '–', width: 8, format: '0.000', formula: 'JW.IMP_PART([@[Z max]],"R/X")' },
  { name: 'κ', unit: '–', width: 8, format: '0.000', formula: 'JW.PEAK_FACTOR([@[R/X]])' },
  { name: 'ip', unit: 'kA peak', width: 9, format: '0.0', formula: 'JW.FAULT_PEAK([@[Ik3 max]],[@[R/X]])' },
  { name: 'Ik3 min', unit: 'kA', width: 9, format: '0.00', formula: 'JW.FAULT_3PH_MIN([@[Z min]],Un_V,c_min)' },
  { name: 'Ik1 min', unit: 'kA', width: 9, format: '0.00', formula: 'JW.FAULT_LOOP_MIN([@[Z loop min]],U0_V,c_min)' },
];

/** Impedances as complex text, carried with all digits. */
const CARRIED: readonly Column[] = [
  { name: 'run 20 °C', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)' },
  { name: 'run hot', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],90)', note: 'Conductors at 90 °C for the least fault.' },
  { name: 'return hot', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@return],[@metal],[@runs],90)' },
  { name: 'Z max', unit: 'mΩ', formula: throughLink('Zs_max', 'Zlink_20', 'run 20 °C'), note: 'Impedance of the greatest fault: cold, both transformers.' },
  { name: 'Z min', unit: 'mΩ', formula: throughLink('Zs_min', 'Zlink_hot', 'run hot'), note: 'Impedance of the least fault: hot, one transformer.' },
  {
    name: 'Z loop min', unit: 'mΩ',
    formula: 'IF([@[fed from]]="source",JW.IMP_SERIES([@[Z min]],[@[return hot]]),JW.IMP_SERIES([@[Z min]],Zlink_return,[@[return hot]]))',
    note: 'Line and earth conductor to this board, hot, one transformer.',
  },
].map((column) => ({ ...column, width: 20, carried: true as const }));

const COLUMNS: readonly Column[] = [...READ, ...CARRIED];
const letterOf = (name: string): string => letters(COLUMNS.findIndex((column) => column.name === name) + 1);

/** Boards with the runs that feed them and their fault levels. */
export function addBoards(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Boards', { properties: { tabColor: { argb: 'FF4E7A8C' } } });
  titleBlock(sheet, 'BOARDS: fault levels', DOCUMENT, READ.length);
  const units = FIRST_FREE_ROW;
  const first = units + 2;
  const last = addTable(sheet, { name: 'Boards', at: { row: units }, columns: COLUMNS, rows: BOARDS }, worked);
  // The first row is the main switchboard; every other board lies behind its link.
  workbook.definedNames.add(`'Boards'!$${letterOf('run 20 °C')}$${first}`, 'Zlink_20');
  workbook.definedNames.add(`'Boards'!$${letterOf('run hot')}$${first}`, 'Zlink_hot');
  workbook.definedNames.add(`'Boards'!$${letterOf('return hot')}$${first}`, 'Zlink_return');
  workbook.definedNames.add(`'Boards'!$A$${first}:$A$${last}`, 'list_board');
  carriedHeading(sheet, units - 1, READ.length + 1);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: units + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: READ.length }, [units, units + 1]);
  return sheet;
}
