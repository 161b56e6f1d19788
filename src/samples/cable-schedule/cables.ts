import type { Style, Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable, carriedHeading } from '../table';
import { CABLES } from './data';
import { LINK_TOLERANCE, ofBoard, ofDevice, pointsOf, tripTime } from './formulas';

const WITHSTAND = '[@[let-through]],[@[k²S²]],[@level],[@[Ik3 max]]';
const TRIPS =
  `IF(${ofDevice('device', 'kind')}="gG",JW.CURVE_TIME(${pointsOf('time', ofDevice('device', 'curve'))},1000*[@[Ik1 min]],${LINK_TOLERANCE},"slow"),` +
  `${tripTime('1000*[@[Ik1 min]]', (name) => ofDevice('device', name), 'slow')})`;

/** What is read and printed. */
const CABLES_READ: readonly Column[] = [
  { name: 'cable', width: 8 },
  { name: 'from', width: 9, list: 'list_board' },
  { name: 'to', width: 15 },
  { name: 'length', unit: 'm', width: 8, format: '0', between: [1, 2000] },
  { name: 'metal', width: 10, list: 'list_metal' },
  { name: 'insulation', width: 10, list: 'list_insulation' },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'earth', unit: 'mm²', width: 7, list: 'list_size', note: 'Earth conductor in the same cable, of the same metal.' },
  { name: 'device', width: 8, list: 'list_device' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: ofBoard('from', 'Ik3 max'), note: 'At the board that feeds the cable.' },
  { name: 'Ik3 end', unit: 'kA', width: 9, format: '0.00', formula: `JW.FAULT_3PH_MAX(JW.IMP_SERIES(${ofBoard('from', 'Z max')},[@[line 20 °C]]),Un_V,c_max)`, note: 'Greatest three-phase fault at the far end.' },
  { name: 'Ik1 min', unit: 'kA', width: 9, format: '0.000', formula: `JW.FAULT_LOOP_MIN(JW.IMP_SERIES(${ofBoard('from', 'Z loop min')},[@[line hot]],[@[earth hot]]),U0_V,c_min)`, note: 'Least line-to-earth fault at the far end.' },
  { name: 'trips in', unit: 's', width: 9, format: '0.000', formula: TRIPS, note: 'Slow edge of the device at Ik1 min.' },
  { name: 'in time?', width: 10, verdict: true, formula: 'JW.LIMIT_TEST([@[trips in]],t_limit_s)' },
  { name: 'let-through', unit: 'A²s', width: 13, format: '#,##0', formula: ofDevice('device', 'let-through') },
  { name: 'level', unit: 'kA', width: 8, format: '0.00', formula: ofDevice('device', 'level'), note: 'Fault level that the let-through belongs to.' },
  { name: 'k', unit: 'A√s/mm²', width: 9, format: '0', formula: 'JW.CABLE_K([@metal],[@insulation],[@size])' },
  { name: 'k²S²', unit: 'A²s', width: 15, format: '#,##0', formula: 'JW.CABLE_WITHSTAND([@k],[@size])', note: 'One run: a fault inside one cable loads it alone.' },
  { name: 'withstand', width: 11, verdict: true, formula: `JW.LETTHROUGH_TEST(${WITHSTAND})` },
  { name: 'margin', unit: '%', width: 9, format: '0', formula: `IF([@withstand]="not shown","–",JW.LETTHROUGH_MARGIN(${WITHSTAND}))` },
  { name: 'caution', width: 44, words: true, formula: orNone(`JW.CAUTION("LETTHROUGH_TEST",${WITHSTAND})`) },
];

/** Impedances as complex text, carried with all digits. */
const CABLES_CARRIED: readonly Column[] = [
  { name: 'hot', unit: '°C', width: 8, carried: true, formula: 'IF([@insulation]="PVC",70,90)', note: 'Conductor at full load.' },
  { name: 'line 20 °C', unit: 'mΩ', width: 20, carried: true, formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)' },
  { name: 'line hot', unit: 'mΩ', width: 20, carried: true, formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],[@hot])' },
  { name: 'earth hot', unit: 'mΩ', width: 20, carried: true, formula: 'JW.IMP_CABLE([@length],[@earth],[@metal],[@runs],[@hot])' },
];

export interface Schedule {
  rows: readonly (readonly (string | number)[])[];
  /** Columns behind the printed ones of the schedule; their typed cells stand last in a row. */
  more?: readonly Column[];
  inputLook?: (row: number) => Partial<Style>;
  title?: string;
  block?: Parameters<typeof titleBlock>[4];
}

/** The schedule: each cable against the let-through of its device, and whether that trips in time. */
export function addCables(workbook: Workbook, worked: WorkedColumns, document: Document, schedule: Schedule = { rows: CABLES }): Worksheet {
  const { rows, more = [], inputLook, title = 'CABLE SCHEDULE: what each cable withstands against what its device lets through', block } = schedule;
  const sheet = workbook.addWorksheet('Cables', { properties: { tabColor: { argb: 'FF5C8A4A' } } });
  const read = [...CABLES_READ, ...more];
  titleBlock(sheet, title, document, read.length, block);
  const units = FIRST_FREE_ROW;
  const last = addTable(sheet, { name: 'Cables', at: { row: units }, columns: [...read, ...CABLES_CARRIED], rows, ...(inputLook ? { inputLook } : {}) }, worked);
  carriedHeading(sheet, units - 1, read.length + 1);
  sheet.views = [{ state: 'frozen', xSplit: 1, ySplit: units + 1 }];
  printSetUp(sheet, document, { rows: last, columns: read.length }, [units, units + 1]);
  return sheet;
}
