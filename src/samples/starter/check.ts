import type { Workbook, Worksheet } from 'exceljs';
import { orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { ANY_FIGURE } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { exampleLook, given, starterRows, whereFilled } from './blank-rows';
import { BLOCK, DOCUMENT } from './document';

const SOURCE_COLUMNS: readonly Column[] = [
  { name: 'input', width: 22 },
  { name: 'value', width: 16, shrink: true },
  { name: 'unit', width: 9 },
  { name: 'origin', width: 26, note: 'Document or plate from which the value was read.' },
  { name: 'issue', width: 9 },
  { name: 'comment', width: 40 },
  ...whereFilled('input', [{ name: 'digest', width: 12, formula: 'JW.CHECK_DIGEST([@input],[@value],[@unit])', note: 'Changes with any of the three.' }]),
];

const COLUMNS: readonly Column[] = [
  { name: 'item', width: 22 },
  { name: 'designer', width: 16, format: ANY_FIGURE, shrink: true, note: 'Typed, or a link to the designer’s cell.' },
  { name: 'unit', width: 9 },
  { name: 'tolerance', unit: '%', width: 9, format: '0.0', between: [0, 100] },
  { name: 'checker', width: 24, format: ANY_FIGURE, shrink: true, note: 'The function itself, from the sources, not from the designer’s cells.' },
  { name: 'class', width: 9, list: 'list_class', note: 'A changes a verdict on safety; B is wrong and changes none; C is of form.' },
  { name: 'remark', width: 34 },
  { name: 'function', width: 20, note: 'Name of the function in the column checker, for its clause.' },
  ...whereFilled('item', [
    { name: 'agrees?', width: 20, formula: `JW.AGREE(${given('designer')},${given('checker')},[@tolerance])` },
    { name: 'difference', unit: '%', width: 10, format: '0.00', formula: 'IF(AND(ISNUMBER([@designer]),ISNUMBER([@checker])),JW.AGREE_DIFFERENCE([@designer],[@checker]),"–")' },
    { name: 'why?', width: 40, words: true, formula: `IF(LEFT([@[agrees?]],7)="DIFFERS",${orNone('JW.AGREE_HINT([@designer],[@checker])')},"none")` },
    { name: 'clause', width: 36, words: true, formula: 'IF([@function]="","–",JW.CLAUSE([@function]))' },
  ]),
];

const SOURCES = [['Source, greatest', '=Zs_max', 'mΩ', 'Sheet Job', '–', 'example row']] as const;
const CHECKS = [['Ik3 at the source', 58.4, 'kA', 1, '=JW.FAULT_3PH_MAX(Zs_max,Un_V,c_max)', 'B', 'example row', 'FAULT_3PH_MAX']] as const;

/** A designer's figures beside ours, and the sources of ours. */
export function addCheck(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Check', { properties: { tabColor: { argb: 'FF777777' } } });
  titleBlock(sheet, 'CHECK: a designer’s figures against ours', DOCUMENT, COLUMNS.length, BLOCK);
  const middle = addTable(sheet, { name: 'Check', at: { row: FIRST_FREE_ROW }, columns: COLUMNS, rows: starterRows(COLUMNS, CHECKS), inputLook: exampleLook(CHECKS.length) }, worked);
  const at = `I${FIRST_FREE_ROW + 2}`;
  sheet.addConditionalFormatting({
    ref: `${at}:I${middle}`,
    rules: [{ type: 'expression', priority: 1, formulae: [`OR(LEFT(${at},7)="DIFFERS",ISNUMBER(SEARCH("missing",${at})))`], style: { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF6D3D0' } }, font: { bold: true, color: { argb: 'FF8A1C12' } } } }],
  });
  const last = addTable(sheet, { name: 'Sources', at: { row: middle + 3 }, columns: SOURCE_COLUMNS, rows: starterRows(SOURCE_COLUMNS, SOURCES), inputLook: exampleLook(SOURCES.length) }, worked);
  printSetUp(sheet, DOCUMENT, { rows: last, columns: COLUMNS.length });
  return sheet;
}
