import type { Style, Workbook, Worksheet } from 'exceljs';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { LABEL, WORDS, dress } from '../look';
import { type Column, type WorkedColumns, addTable, carriedHeading } from '../table';
import { BOARDS } from './data';

/** Ranges handed to the network functions: board, fed from, impedance of the run and of its return, in that order. */
const COLD = 'Boards[[cold board]:[cold Z]]';
const HOT = 'Boards[[hot board]:[hot return Z]]';
const LOOP = 'Boards[[loop board]:[loop Z]]';
const greatest = (quantity: string): string => `JW.NET_RADIAL_AT(${COLD},Zs_max,[@board],"${quantity}",Un_V,c_max)`;
const least = (quantity: string): string => `JW.NET_RADIAL_AT(${HOT},Zs_min,[@board],"${quantity}",Un_V,c_min)`;

/** What is read and printed. */
const READ: readonly Column[] = [
  { name: 'board', width: 10 },
  { name: 'fed from', width: 9, list: 'list_feeder' },
  { name: 'length', unit: 'm', width: 8, between: [1, 2000] },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'metal', width: 10, list: 'list_metal' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'return', unit: 'mm²', width: 8, list: 'list_size', note: 'Earth conductor of the run, of the same metal and as many runs.' },
  { name: 'Icw', unit: 'kA', width: 7, format: '0', between: [1, 200], note: 'Rated short-time withstand current of the assembly.' },
  { name: 'for', unit: 's', width: 6, format: '0.0', between: [0.01, 3] },
  { name: 'cleared in', unit: 's', width: 8, format: '0.0', between: [0.01, 3], note: 'Longest time that a short-circuit at the board flows.' },
  { name: 'Z greatest', unit: 'mΩ', width: 9, format: '0.00', formula: 'JW.IMP_PART([@[Z max]],"Z")', note: 'Size of the impedance behind the greatest fault.' },
  { name: 'Z least', unit: 'mΩ', width: 9, format: '0.00', formula: 'JW.IMP_PART([@[Z min]],"Z")', note: 'Size of the impedance behind the least fault.' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: greatest('Ik3'), note: 'From the tree of boards: cold, both transformers.' },
  { name: 'R/X', unit: '–', width: 8, format: '0.000', formula: 'JW.IMP_PART([@[Z max]],"R/X")' },
  { name: 'pf', unit: '–', width: 7, format: '0.00', formula: 'JW.IMP_PART([@[Z max]],"pf")', note: 'Power factor of the fault.' },
  { name: 'κ', unit: '–', width: 8, format: '0.000', formula: greatest('kappa') },
  { name: 'ip', unit: 'kA peak', width: 9, format: '0.0', formula: greatest('ip') },
  { name: 'Ik3 min', unit: 'kA', width: 9, format: '0.00', formula: least('Ik3'), note: 'Hot conductors, one transformer.' },
  { name: 'Ik2 min', unit: 'kA', width: 9, format: '0.00', formula: least('Ik2') },
  { name: 'Ik1 min', unit: 'kA', width: 9, format: '0.00', formula: least('Ik1') },
  { name: 'short-time', width: 10, verdict: true, formula: 'JW.SHORTTIME_TEST([@[Ik3 max]],[@[cleared in]],[@Icw],[@for])' },
  { name: 'margin', unit: '%', width: 8, format: '0', formula: 'JW.SHORTTIME_MARGIN([@[Ik3 max]],[@[cleared in]],[@Icw],[@for])' },
  { name: 'peak', width: 10, verdict: true, formula: 'JW.LIMIT_TEST([@ip],JW.PEAK_RATIO([@Icw],"assembly")*[@Icw])', note: 'Against the peak that belongs to the rated short-time current.' },
  { name: 'peak margin', unit: '%', width: 8, format: '0', formula: 'JW.LIMIT_MARGIN([@ip],JW.PEAK_RATIO([@Icw],"assembly")*[@Icw])' },
];

/** The three trees that the network functions read, and what they give as complex text; all digits are carried. */
const CARRIED: readonly Column[] = ([
  { name: 'cold board', formula: '[@board]' },
  { name: 'cold fed from', formula: '[@[fed from]]' },
  { name: 'cold Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)', note: 'Run at 20 °C.' },
  { name: 'hot board', formula: '[@board]' },
  { name: 'hot fed from', formula: '[@[fed from]]' },
  { name: 'hot Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],90)', note: 'Conductors at 90 °C for the least fault.' },
  { name: 'hot return Z', unit: 'mΩ', formula: 'JW.IMP_CABLE([@length],[@return],[@metal],[@runs],90)' },
  { name: 'loop board', formula: '[@board]' },
  { name: 'loop fed from', formula: '[@[fed from]]' },
  { name: 'loop Z', unit: 'mΩ', formula: 'JW.IMP_SERIES([@[hot Z]],[@[hot return Z]])', note: 'Line and earth conductor of the run, hot.' },
  { name: 'Z max', unit: 'mΩ', formula: greatest('Z') },
  { name: 'Z min', unit: 'mΩ', formula: least('Z') },
  { name: 'Z loop min', unit: 'mΩ', formula: `JW.NET_RADIAL_AT(${LOOP},Zs_min,[@board],"Z",Un_V,c_min)`, note: 'Fault loop to this board, hot, one transformer.' },
] satisfies Column[]).map((column) => ({ ...column, width: column.name.endsWith('board') || column.name.endsWith('from') ? 9 : 20, carried: true as const }));

const COLUMNS: readonly Column[] = [...READ, ...CARRIED];

/** Boards with the runs that feed them, as a tree, and their fault levels. */
export function addBoards(workbook: Workbook, worked: WorkedColumns, document: Document, inputLook?: (row: number) => Partial<Style>): Worksheet {
  const sheet = workbook.addWorksheet('Boards', { properties: { tabColor: { argb: 'FF4E7A8C' } } });
  titleBlock(sheet, 'BOARDS: fault levels', document, READ.length);
  const units = FIRST_FREE_ROW + 2;
  const last = addTable(sheet, { name: 'Boards', at: { row: units }, columns: COLUMNS, rows: BOARDS, ...(inputLook ? { inputLook } : {}) }, worked);
  workbook.definedNames.add(`'Boards'!$A$${units + 2}:$A$${last}`, 'list_board');
  dress(sheet.getCell(FIRST_FREE_ROW, 1), LABEL).value = 'In order?';
  sheet.mergeCells(FIRST_FREE_ROW, 2, FIRST_FREE_ROW, 10);
  dress(sheet.getCell(FIRST_FREE_ROW, 2), WORDS).value = { formula: fileFormula(`JW.NET_CHECK(${HOT})`, 'Boards') };
  carriedHeading(sheet, units - 1, READ.length + 1, 'Trees for NET_RADIAL_AT and impedances as complex text, carried with all digits; not printed:');
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: units + 1 }];
  printSetUp(sheet, document, { rows: last, columns: READ.length }, [units, units + 1]);
  return sheet;
}


