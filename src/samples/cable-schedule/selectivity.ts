import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { REMARK, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { COMPARED, DOCUMENT, PAIRS } from './data';

const of = (ref: string, column: string): string => `XLOOKUP([@${ref}],Devices[device],Devices[${column}])`;

const PAIR_COLUMNS: readonly Column[] = [
  { name: 'major', width: 8, list: 'list_device', note: 'The device upstream.' },
  { name: 'minor', width: 8, list: 'list_device', note: 'The device nearer the fault.' },
  { name: 'read at', unit: 'kA', width: 8, format: '0.0', note: 'Level at which the pre-arcing integral of the major was read: that of the minor’s board.' },
  { name: 'In major', unit: 'A', width: 9, format: '0', formula: of('major', 'rated') },
  { name: 'In minor', unit: 'A', width: 9, format: '0', formula: of('minor', 'rated') },
  { name: 'ratio', unit: '–', width: 8, format: '0.00', formula: 'JW.SELECT_RATIO([@[In major]],[@[In minor]])' },
  { name: 'by ratio', width: 11, verdict: true, formula: `JW.SELECT_RATIO_TEST([@[In major]],[@[In minor]],${of('major', 'range')},${of('minor', 'range')})`, note: 'Links of one range only: 1.6 to 1.' },
  { name: 'ratio margin', unit: '%', width: 9, format: '0', formula: `JW.SELECT_RATIO_MARGIN([@[In major]],[@[In minor]],${of('major', 'range')},${of('minor', 'range')})` },
  { name: 'total minor', unit: 'A²s', width: 12, format: '#,##0', formula: of('minor', 'total') },
  { name: 'pre-arcing major', unit: 'A²s', width: 12, format: '#,##0', formula: of('major', 'pre-arcing') },
  { name: 'minor level', unit: 'kA', width: 9, format: '0.0', formula: of('minor', 'read at') },
  { name: 'by joule integral', width: 11, verdict: true, formula: 'JW.SELECT_JOULE_TEST([@[total minor]],[@[pre-arcing major]],[@[minor level]],[@[read at]])', note: 'Total of the minor against pre-arcing of the major, at one level.' },
  { name: 'joule margin', unit: '%', width: 9, format: '0', formula: 'JW.SELECT_JOULE_MARGIN([@[total minor]],[@[pre-arcing major]],[@[minor level]],[@[read at]])' },
  { name: 'caution', width: 30, words: true, formula: orNone('JW.CAUTION("SELECT_JOULE_TEST",[@[total minor]],[@[pre-arcing major]],[@[minor level]],[@[read at]])') },
];

const OPTION_COLUMNS: readonly Column[] = [
  { name: 'link', width: 8, list: 'list_device' },
  { name: 'breaker', width: 8, list: 'list_device' },
  { name: 'link lets', unit: 'A²s', width: 8, format: '#,##0', formula: of('link', 'let-through') },
  { name: 'breaker lets', unit: 'A²s', width: 9, format: '0.00E+00', formula: of('breaker', 'let-through') },
  { name: 'share', unit: '–', width: 9, format: '0.000%', formula: `JW.LETTHROUGH_RATIO([@[link lets]],[@[breaker lets]],${of('link', 'level')},${of('breaker', 'level')})`, note: 'Joule integral of the link for each of the breaker’s, at one fault level.' },
];

/** Pairs that must discriminate, and two options compared by what they let through. */
export function addSelectivity(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Selectivity', { properties: { tabColor: { argb: 'FF8A5C8A' } } });
  titleBlock(sheet, 'SELECTIVITY: pairs of links; link against breaker', DOCUMENT, PAIR_COLUMNS.length);
  const pairsEnd = addTable(sheet, { name: 'Pairs', at: { row: FIRST_FREE_ROW }, columns: PAIR_COLUMNS, rows: PAIRS }, worked);
  const optionsAt = pairsEnd + 3;
  dress(sheet.getCell(optionsAt - 1, 1), REMARK).value = 'What a link lets through beside a breaker that waits, both at the main switchboard:';
  sheet.getCell(optionsAt - 1, 1).alignment = { wrapText: false };
  const last = addTable(sheet, { name: 'Options', at: { row: optionsAt }, columns: OPTION_COLUMNS, rows: COMPARED }, worked);
  printSetUp(sheet, DOCUMENT, { rows: last, columns: PAIR_COLUMNS.length });
  return sheet;
}
