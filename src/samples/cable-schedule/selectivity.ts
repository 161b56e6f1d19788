import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, type Document, printSetUp, titleBlock } from '../frame';
import { REMARK, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { BELOW_BREAKER, COMPARED, PAIRS } from './data';
import { LINK_TOLERANCE, ofDevice, pointsOf } from './formulas';

const RATIO = `[@[In major]],[@[In minor]],${ofDevice('major', 'range')},${ofDevice('minor', 'range')}`;
const JOULE = '[@[total minor]],[@[pre-arcing major]],[@[minor level]],[@[read at]]';
const range = (name: string): string =>
  `JW.SELECT_RANGES_AT(${pointsOf('time', ofDevice('minor', 'curve'))},${LINK_TOLERANCE},${pointsOf('time', ofDevice('major', 'curve'))},${LINK_TOLERANCE},${ofDevice('minor', 'Ik3 max')},"${name}")`;

const PAIR_COLUMNS: readonly Column[] = [
  { name: 'major', width: 8, list: 'list_device', note: 'The device upstream.' },
  { name: 'minor', width: 8, list: 'list_device', note: 'The device nearer the fault.' },
  { name: 'read at', unit: 'kA', width: 8, format: '0.0', note: 'Level at which the pre-arcing integral of the major was read: that of the minor’s board.' },
  { name: 'In major', unit: 'A', width: 9, format: '0', formula: ofDevice('major', 'rated') },
  { name: 'In minor', unit: 'A', width: 9, format: '0', formula: ofDevice('minor', 'rated') },
  { name: 'ratio', unit: '–', width: 8, format: '0.00', formula: 'JW.SELECT_RATIO([@[In major]],[@[In minor]])' },
  { name: 'by ratio', width: 11, verdict: true, formula: `JW.SELECT_RATIO_TEST(${RATIO})`, note: 'Links of one range only: 1.6 to 1.' },
  { name: 'ratio margin', unit: '%', width: 9, format: '0', formula: `JW.SELECT_RATIO_MARGIN(${RATIO})` },
  { name: 'total minor', unit: 'A²s', width: 12, format: '#,##0', formula: ofDevice('minor', 'let-through') },
  { name: 'pre-arcing major', unit: 'A²s', width: 12, format: '#,##0', formula: ofDevice('major', 'pre-arcing') },
  { name: 'minor level', unit: 'kA', width: 9, format: '0.0', formula: ofDevice('minor', 'level') },
  { name: 'by joule integral', width: 11, verdict: true, formula: `JW.SELECT_JOULE_TEST(${JOULE})`, note: 'Total of the minor against pre-arcing of the major, at one level.' },
  { name: 'joule margin', unit: '%', width: 9, format: '0', formula: `IF([@[by joule integral]]="not shown","–",JW.SELECT_JOULE_MARGIN(${JOULE}))` },
  { name: 'overload', width: 11, verdict: true, formula: range('overload'), note: 'Whole curves, slow edge against fast edge, minor slower than 1 s.' },
  { name: 'short-time', width: 11, verdict: true, formula: range('short-time'), note: 'From 0.1 to 1 s.' },
  { name: 'caution', width: 34, words: true, formula: orNone(`JW.CAUTION("SELECT_JOULE_TEST",${JOULE})`) },
];

const BELOW_COLUMNS: readonly Column[] = [
  { name: 'major', width: 8, list: 'list_device', note: 'The breaker.' },
  { name: 'minor', width: 8, list: 'list_device', note: 'The link.' },
  { name: 'Ii', unit: 'A', width: 8, format: '0', formula: ofDevice('major', 'Ii') },
  { name: 'Icw', unit: 'kA', width: 8, format: '0', formula: ofDevice('major', 'Icw') },
  { name: 'Ik3 max', unit: 'kA', width: 8, format: '0.00', formula: ofDevice('minor', 'Ik3 max') },
  { name: 'limit', unit: 'kA', width: 8, format: '0.0', formula: 'JW.SELECT_LIMIT([@Ii],[@Icw])', note: 'By settings: the breaker waits and carries up to its short-time rating.' },
  { name: 'extent', width: 11, formula: 'JW.SELECT_EXTENT([@[Ik3 max]],[@limit])' },
  { name: 'cut-off', unit: 'kA peak', width: 9, format: '0.0', formula: ofDevice('minor', 'cut-off') },
  { name: 'by peak', width: 12, verdict: true, formula: 'JW.SELECT_PEAK_TEST([@[cut-off]],[@Ii])', note: 'Says nothing where the instantaneous stage is off.' },
];

const OPTION_COLUMNS: readonly Column[] = [
  { name: 'link', width: 8, list: 'list_device' },
  { name: 'breaker', width: 8, list: 'list_device' },
  { name: 'link lets', unit: 'A²s', width: 9, format: '0.00E+00', formula: ofDevice('link', 'let-through') },
  { name: 'breaker lets', unit: 'A²s', width: 9, format: '0.00E+00', formula: ofDevice('breaker', 'let-through') },
  { name: 'share', unit: '–', width: 9, format: '0.000%', formula: `JW.LETTHROUGH_RATIO([@[link lets]],[@[breaker lets]],${ofDevice('link', 'level')},${ofDevice('breaker', 'level')})`, note: 'Joule integral of the link for each of the breaker’s, at one fault level.' },
];

/** Pairs that must discriminate, links below a breaker, and two options compared by what they let through. */
export function addSelectivity(workbook: Workbook, worked: WorkedColumns, document: Document): Worksheet {
  const sheet = workbook.addWorksheet('Selectivity', { properties: { tabColor: { argb: 'FF8A5C8A' } } });
  titleBlock(sheet, 'SELECTIVITY: pairs of links; links below a breaker', document, PAIR_COLUMNS.length);
  const remark = (row: number, text: string): void => {
    dress(sheet.getCell(row, 1), REMARK).value = text;
    sheet.getCell(row, 1).alignment = { wrapText: false };
  };
  let row = addTable(sheet, { name: 'Pairs', at: { row: FIRST_FREE_ROW }, columns: PAIR_COLUMNS, rows: PAIRS }, worked) + 2;
  remark(row, 'Links below a breaker that waits, at the main switchboard:');
  row = addTable(sheet, { name: 'Below', at: { row: row + 1 }, columns: BELOW_COLUMNS, rows: BELOW_BREAKER }, worked) + 2;
  remark(row, 'What a link lets through beside the breaker that waits, both at the main switchboard:');
  row = addTable(sheet, { name: 'Options', at: { row: row + 1 }, columns: OPTION_COLUMNS, rows: COMPARED }, worked);
  printSetUp(sheet, document, { rows: row, columns: PAIR_COLUMNS.length });
  return sheet;
}
