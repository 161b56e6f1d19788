import type { Workbook, Worksheet } from 'exceljs';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { LABEL, REMARK, WORDS, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { RING, RING_BOARDS } from './data';

/** Branches and sources as the network functions read them: from, to, impedance, state; node, impedance. */
const CLOSED = 'Ring[[from]:[state]],RingSource[[node]:[Z cold]]';
const SWITCHED = 'Ring[[from hot]:[state hot]],RingSource[[node hot]:[Z hot]]';

const SOURCE: readonly Column[] = [
  { name: 'node', width: 10, list: 'list_board' },
  { name: 'Z cold', unit: 'mΩ', width: 22, carried: true, formula: 'XLOOKUP([@node],Boards[board],Boards[Z max])', note: 'Behind the greatest fault at this board.' },
  { name: 'node hot', width: 10, formula: '[@node]' },
  { name: 'Z hot', unit: 'mΩ', width: 22, carried: true, formula: 'XLOOKUP([@node],Boards[board],Boards[Z min])', note: 'Behind the least fault at this board.' },
];

/** The cold block stands first, as the function reads it; what it is worked from follows. */
const BRANCHES: readonly Column[] = [
  { name: 'from', width: 10 },
  { name: 'to', width: 10 },
  { name: 'Z', unit: 'mΩ', width: 22, carried: true, formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],20)' },
  { name: 'state', width: 9, list: 'list_state' },
  { name: 'length', unit: 'm', width: 8, between: [1, 2000] },
  { name: 'size', unit: 'mm²', width: 7, list: 'list_size' },
  { name: 'metal', width: 10, list: 'list_metal' },
  { name: 'runs', unit: '–', width: 6, between: [1, 24] },
  { name: 'from hot', width: 10, formula: '[@from]' },
  { name: 'to hot', width: 10, formula: '[@to]' },
  { name: 'Z hot', unit: 'mΩ', width: 22, carried: true, formula: 'JW.IMP_CABLE([@length],[@size],[@metal],[@runs],90)' },
  { name: 'state hot', width: 9, formula: 'IF([@state]="open","open","either")', note: 'For the least fault every closed branch may stand open.' },
];

const NODES: readonly Column[] = [
  { name: 'node', width: 10 },
  { name: 'left', width: 10, note: 'Neighbour on one side.' },
  { name: 'right', width: 22, note: 'Neighbour on the other side.' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00', formula: `JW.NET_MESHED_AT(${CLOSED},[@node],"Ik3",Un_V,c_max)`, note: 'In the positions of the table above.' },
  { name: 'κ', unit: '–', width: 8, format: '0.000', formula: `JW.NET_MESHED_AT(${CLOSED},[@node],"kappa",Un_V,c_max)`, note: 'Method C.' },
  { name: 'ip', unit: 'kA peak', width: 9, format: '0.0', formula: `JW.NET_MESHED_AT(${CLOSED},[@node],"ip",Un_V,c_max)` },
  { name: 'from left', unit: 'kA', width: 10, format: '0.00', formula: `JW.NET_CONTRIBUTION_AT(${CLOSED},[@node],[@left],[@node],Un_V,c_max)`, note: 'Share of the fault current; vectors, so the two do not add up.' },
  { name: 'from right', unit: 'kA', width: 10, format: '0.00', formula: `JW.NET_CONTRIBUTION_AT(${CLOSED},[@node],[@right],[@node],Un_V,c_max)` },
  { name: 'Ik3 min', unit: 'kA', width: 10, format: '0.00', formula: `JW.NET_ARRANGEMENTS_AT(${SWITCHED},[@node],"least",Un_V,c_min)`, note: 'Hot, one transformer, the ring open wherever it is worst.' },
];

/** A ring of boards fed from the main switchboard: meshed, so by the nodal method. */
export function addRing(workbook: Workbook, worked: WorkedColumns, document: Document): Worksheet {
  const sheet = workbook.addWorksheet('Ring', { properties: { tabColor: { argb: 'FF4E7A8C' } } });
  titleBlock(sheet, 'RING: workshop boards', document, BRANCHES.length);
  const remark = (row: number, text: string): void => {
    dress(sheet.getCell(row, 1), REMARK).value = text;
    sheet.getCell(row, 1).alignment = { wrapText: false };
  };
  dress(sheet.getCell(FIRST_FREE_ROW, 1), LABEL).value = 'In order?';
  sheet.mergeCells(FIRST_FREE_ROW, 2, FIRST_FREE_ROW, 8);
  remark(FIRST_FREE_ROW + 1, 'Where the ring is fed:');
  const sourceEnd = addTable(sheet, { name: 'RingSource', at: { row: FIRST_FREE_ROW + 2 }, columns: SOURCE, rows: [['MSB']] }, worked);
  remark(sourceEnd + 2, 'Its branches; open one and see what the boards have left:');
  const ringEnd = addTable(sheet, { name: 'Ring', at: { row: sourceEnd + 3 }, columns: BRANCHES, rows: RING }, worked);
  remark(ringEnd + 2, 'Its boards:');
  const last = addTable(sheet, { name: 'RingBoards', at: { row: ringEnd + 3 }, columns: NODES, rows: RING_BOARDS }, worked);
  dress(sheet.getCell(FIRST_FREE_ROW, 2), WORDS).value = { formula: fileFormula(`JW.NET_CHECK(${CLOSED})`, 'Ring') };
  printSetUp(sheet, document, { rows: last, columns: BRANCHES.length });
  return sheet;
}
