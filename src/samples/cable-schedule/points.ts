import type { Style, Workbook, Worksheet } from 'exceljs';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, type Document, letters, printSetUp, titleBlock } from '../frame';
import { HEADING, INPUT, LABEL, REMARK, UNIT, WORDS, dress } from '../look';
import { LINK_CURVES, LINK_RATINGS } from './data';
import { type PointKind, pointsName } from './formulas';

interface Block {
  kind: PointKind;
  key: 'time' | 'cutOff' | 'joule';
  title: string;
  units: readonly [string, string];
  formats: readonly [string, string];
  check: string;
}

const BLOCKS: readonly Block[] = [
  { kind: 'time', key: 'time', title: 'Time-current curves, mean: current, time', units: ['A', 's'], formats: ['#,##0', 'General'], check: 'time' },
  { kind: 'cutoff', key: 'cutOff', title: 'Cut-off: prospective current, peak let through', units: ['kA', 'kA peak'], formats: ['0.0', '0.00'], check: 'cut-off' },
  { kind: 'joule', key: 'joule', title: 'Joule integral, total: prospective current, let-through', units: ['kA', 'A²s'], formats: ['0.0', '#,##0'], check: 'joule' },
];

/** Points of the links' sheets: each curve is a pair of columns under a name; a check of its points stands below. */
export function addPoints(workbook: Workbook, document: Document, inputLook: Partial<Style> = INPUT): Worksheet {
  const sheet = workbook.addWorksheet('Points', { properties: { tabColor: { argb: 'FFA04848' } } });
  const columns = 1 + 2 * LINK_RATINGS.length;
  sheet.getColumn(1).width = 13.7;
  titleBlock(sheet, 'POINTS: curves of gG links, as read from their sheets', document, columns);
  let row = FIRST_FREE_ROW;
  for (const block of BLOCKS) row = addBlock(workbook, sheet, row, block, inputLook) + 2;
  printSetUp(sheet, document, { rows: row - 2, columns });
  return sheet;
}

function addBlock(workbook: Workbook, sheet: Worksheet, top: number, { kind, key, title, units, formats, check }: Block, inputLook: Partial<Style>): number {
  dress(sheet.getCell(top, 1), REMARK).value = title;
  sheet.getCell(top, 1).alignment = { wrapText: false };
  const most = Math.max(...LINK_RATINGS.map((rated) => LINK_CURVES[rated]![key].length));
  const first = top + 3;
  const end = first + most - 1;
  dress(sheet.getCell(top + 1, 1), HEADING).value = 'link';
  dress(sheet.getCell(top + 2, 1), UNIT).value = 'unit';
  dress(sheet.getCell(end + 1, 1), LABEL).value = 'In order?';
  LINK_RATINGS.forEach((rated, i) => {
    const column = 2 + 2 * i;
    sheet.mergeCells(top + 1, column, top + 1, column + 1);
    dress(sheet.getCell(top + 1, column), HEADING).value = `${rated} A gG`;
    const points = LINK_CURVES[rated]![key];
    [0, 1].forEach((axis) => {
      dress(sheet.getCell(top + 2, column + axis), UNIT).value = units[axis]!;
      for (let n = 0; n < most; n += 1) dress(sheet.getCell(first + n, column + axis), inputLook, formats[axis]!).value = points[n]?.[axis] ?? null;
      sheet.getColumn(column + axis).width = 11.2;
    });
    const range = `'Points'!$${letters(column)}$${first}:$${letters(column + 1)}$${first + points.length - 1}`;
    workbook.definedNames.add(range, pointsName(kind, rated));
    sheet.mergeCells(end + 1, column, end + 1, column + 1);
    dress(sheet.getCell(end + 1, column), WORDS).value = { formula: fileFormula(`JW.CURVE_CHECK(${pointsName(kind, rated)},"${check}")`, '') };
  });
  return end + 1;
}
