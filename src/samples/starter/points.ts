import type { Workbook, Worksheet } from 'exceljs';
import { LINK_CURVES } from '../cable-schedule/data';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, letters, printSetUp, titleBlock } from '../frame';
import { EXAMPLE, HEADING, INPUT, LABEL, REMARK, UNIT, WORDS, dress } from '../look';
import { BLOCK, CURVES, DOCUMENT } from './document';

/** Rows for the points of a curve. */
const ROOM = 14;
const EXAMPLE_LINK = LINK_CURVES[400]!;

const KINDS = [
  { kind: 'time', points: EXAMPLE_LINK.time, units: ['A', 's'], formats: ['#,##0', 'General'], check: 'time' },
  { kind: 'cutoff', points: EXAMPLE_LINK.cutOff, units: ['kA', 'kA peak'], formats: ['0.0', '0.00'], check: 'cut-off' },
  { kind: 'joule', points: EXAMPLE_LINK.joule, units: ['kA', 'A²s'], formats: ['0.0', '#,##0'], check: 'joule' },
] as const;

/** Room for the curves of a few links: time, cut-off, joule integral, each pair of columns under a name. */
export function addPoints(workbook: Workbook): Worksheet {
  const sheet = workbook.addWorksheet('Points', { properties: { tabColor: { argb: 'FFA04848' } } });
  const columns = 1 + 2 * KINDS.length * CURVES.length;
  sheet.getColumn(1).width = 11.7;
  titleBlock(sheet, 'POINTS: curves of links, from their sheets', DOCUMENT, columns, BLOCK);
  dress(sheet.getCell(FIRST_FREE_ROW, 1), REMARK).value = 'Devices name a curve by its number. Points from the maker’s sheet, current rising downwards; the names time_1, cutoff_1, joule_1 … reach over all rows of a block.';
  sheet.getCell(FIRST_FREE_ROW, 1).alignment = { wrapText: false };
  const head = FIRST_FREE_ROW + 1;
  const first = head + 2;
  const last = first + ROOM - 1;
  dress(sheet.getCell(head, 1), HEADING).value = 'curve';
  dress(sheet.getCell(head + 1, 1), UNIT).value = 'unit';
  dress(sheet.getCell(last + 1, 1), LABEL).value = 'In order?';
  CURVES.forEach((curve, i) => KINDS.forEach(({ kind, points, units, formats, check }, j) => {
    const column = 2 + 2 * (i * KINDS.length + j);
    const isExample = i === 0;
    sheet.mergeCells(head, column, head, column + 1);
    dress(sheet.getCell(head, column), HEADING).value = `${curve}: ${check}`;
    [0, 1].forEach((axis) => {
      dress(sheet.getCell(head + 1, column + axis), UNIT).value = units[axis]!;
      for (let n = 0; n < ROOM; n += 1) dress(sheet.getCell(first + n, column + axis), isExample ? EXAMPLE : INPUT, formats[axis]!).value = isExample ? points[n]?.[axis] ?? null : null;
      sheet.getColumn(column + axis).width = 11.2;
    });
    workbook.definedNames.add(`'Points'!$${letters(column)}$${first}:$${letters(column + 1)}$${last}`, `${kind}_${curve}`);
    sheet.mergeCells(last + 1, column, last + 1, column + 1);
    dress(sheet.getCell(last + 1, column), WORDS).value = { formula: fileFormula(`IF(COUNT(${kind}_${curve})=0,"no points yet",JW.CURVE_CHECK(${kind}_${curve},"${check}"))`, '') };
    if (isExample) sheet.getRow(last + 1).height = 26;
  }));
  printSetUp(sheet, DOCUMENT, { rows: last + 1, columns });
  return sheet;
}
