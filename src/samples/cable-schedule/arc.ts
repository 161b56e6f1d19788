import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { type Column, type WorkedColumns, addTable } from '../table';
import { ARCS } from './data';
import { LINK_TOLERANCE, ofBoard, ofDevice, pointsOf, tripTime } from './formulas';

const time = (current: string): string =>
  `IF(${ofDevice('device', 'kind')}="gG",JW.ARC_TIME_FUSE(${pointsOf('time', ofDevice('device', 'curve'))},${current},${LINK_TOLERANCE}),` +
  `1000*${tripTime(`1000*${current}`, (name) => ofDevice('device', name), 'slow')})`;
const energy = (ms: string, reduced: string): string => `[@[Ik3 max]],${ms},[@gap],[@distance],[@electrodes],Un_V,[@[box factor]],${reduced}`;
const boundary = (ms: string, reduced: string): string => `JW.ARC_BOUNDARY([@[Ik3 max]],${ms},[@gap],[@electrodes],Un_V,[@[box factor]],${reduced})`;

const COLUMNS: readonly Column[] = [
  { name: 'board', width: 10, list: 'list_board' },
  { name: 'device', width: 8, list: 'list_device', note: 'The device that clears an arc at the board.' },
  { name: 'electrodes', width: 10, list: 'list_electrodes' },
  { name: 'gap', unit: 'mm', width: 8, format: '0', between: [6.35, 76.2] },
  { name: 'distance', unit: 'mm', width: 9, format: '0', between: [305, 5000] },
  { name: 'width', unit: 'mm', width: 8, format: '0', between: [1, 3000] },
  { name: 'height', unit: 'mm', width: 8, format: '0', between: [1, 3000] },
  { name: 'depth', unit: 'mm', width: 8, format: '0', between: [1, 3000] },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: ofBoard('board', 'Ik3 max') },
  { name: 'box factor', unit: '–', width: 8, format: '0.000', formula: 'JW.ARC_BOX_FACTOR([@width],[@height],[@depth],[@gap],[@electrodes],Un_V)' },
  { name: 'Iarc full', unit: 'kA', width: 9, format: '0.00', formula: 'JW.ARC_CURRENT([@[Ik3 max]],[@gap],[@electrodes],Un_V)' },
  { name: 'time full', unit: 'ms', width: 9, format: '0.0', formula: time('[@[Iarc full]]'), note: 'Slow edge of the device at this arc current.' },
  { name: 'E full', unit: 'J/cm²', width: 9, format: '0.0', formula: `JW.ARC_ENERGY(${energy('[@[time full]]', 'FALSE')})` },
  { name: 'Iarc reduced', unit: 'kA', width: 9, format: '0.00', formula: 'JW.ARC_CURRENT([@[Ik3 max]],[@gap],[@electrodes],Un_V,TRUE)' },
  { name: 'time reduced', unit: 'ms', width: 9, format: '0.0', formula: time('[@[Iarc reduced]]') },
  { name: 'E reduced', unit: 'J/cm²', width: 9, format: '0.0', formula: `JW.ARC_ENERGY(${energy('[@[time reduced]]', 'TRUE')})` },
  { name: 'E worse', unit: 'J/cm²', width: 9, format: '0.0', formula: 'MAX([@[E full]],[@[E reduced]])', note: 'The worse of the two cases.' },
  {
    name: 'boundary', unit: 'mm', width: 10, format: '[<=305]"≤ "0;0', note: 'Where the energy falls to 5.02 J/cm²; the model ends at 305 mm.',
    formula: `IF(ISNUMBER([@[E worse]]),MAX(IFERROR(${boundary('[@[time full]]', 'FALSE')},305),IFERROR(${boundary('[@[time reduced]]', 'TRUE')},305)),[@[E worse]])`,
  },
  { name: 'caution', width: 34, words: true, formula: orNone(`JW.CAUTION("ARC_ENERGY",${energy('[@[time full]]', 'FALSE')})`) },
];

/** Arc energy, full and reduced current side by side, each with its own clearing time. No class of clothing is named. */
export function addArc(workbook: Workbook, worked: WorkedColumns, document: Document): Worksheet {
  const sheet = workbook.addWorksheet('Arc', { properties: { tabColor: { argb: 'FFA04848' } } });
  titleBlock(sheet, 'ARC: energy at the working distance', document, COLUMNS.length);
  const last = addTable(sheet, { name: 'Arcs', at: { row: FIRST_FREE_ROW }, columns: COLUMNS, rows: ARCS }, worked);
  printSetUp(sheet, document, { rows: last, columns: COLUMNS.length });
  return sheet;
}
