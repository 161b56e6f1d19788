import type { Workbook, Worksheet } from 'exceljs';
import { fileFormula, orNone } from '../formula-text';
import { FIRST_FREE_ROW, printSetUp, titleBlock } from '../frame';
import { ANY_FIGURE, LABEL, REMARK, WORKED, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { CHECKS } from './checks';
import { CABLES, DESIGN, DEVICES, DOCUMENT, GIVEN, ROW, SOURCES } from './data';

const remark = (sheet: Worksheet, row: number, text: string): void => {
  dress(sheet.getCell(row, 1), REMARK).value = text;
  sheet.getCell(row, 1).alignment = { wrapText: false };
};

const SOURCE_COLUMNS: readonly Column[] = [
  { name: 'input', width: 20 },
  { name: 'value', width: 22 },
  { name: 'unit', width: 8 },
  { name: 'name', width: 11 },
  { name: 'origin', width: 24 },
  { name: 'issue', width: 8 },
  { name: 'comment', width: 44 },
];

const CABLE_COLUMNS: readonly Column[] = [
  { name: 'cable', width: 8 },
  { name: 'from', width: 9 },
  { name: 'length', unit: 'm', width: 8, format: '0' },
  { name: 'size', unit: 'mm²', width: 8, list: 'list_size' },
  { name: 'metal', width: 9, list: 'list_metal' },
  { name: 'insulation', width: 10, list: 'list_insulation' },
  { name: 'earth', unit: 'mm²', width: 8, list: 'list_size' },
  { name: 'load', unit: 'A', width: 8, format: '0' },
  { name: 'pf', unit: '–', width: 8, format: '0.00' },
  { name: 'loop to board', unit: 'mΩ', width: 22, note: 'Hot, least source; schedule TT-EL-014 rev C.' },
  { name: 'let-through', unit: 'A²s', width: 12, format: '#,##0' },
  { name: 'read at', unit: 'kA', width: 9, format: '0.00' },
  { name: 'Ik3 max', unit: 'kA', width: 9, format: '0.00' },
  { name: 'hot', unit: '°C', width: 7, format: '0', formula: 'IF([@insulation]="PVC",70,90)' },
  { name: 'k', unit: 'A√s/mm²', width: 9, format: '0', formula: 'JW.CABLE_K([@metal],[@insulation],[@size])' },
  { name: 'k²S²', unit: 'A²s', width: 13, format: '#,##0', formula: 'JW.CABLE_WITHSTAND([@k],[@size])' },
  { name: 'line hot', unit: 'mΩ', width: 18, carried: true, formula: 'JW.IMP_CABLE([@length],[@size],[@metal],1,[@hot])' },
  { name: 'loop', unit: 'mΩ', width: 18, carried: true, formula: 'JW.IMP_SERIES([@[loop to board]],[@[line hot]],JW.IMP_CABLE([@length],[@earth],[@metal],1,[@hot]))' },
];

const DEVICE_COLUMNS: readonly Column[] = [
  { name: 'device' },
  { name: 'rated', unit: 'A', format: '0' },
  { name: 'type' },
  { name: 'pre-arcing', unit: 'A²s', format: '#,##0' },
  { name: 'total', unit: 'A²s', format: '#,##0' },
  { name: 'at', unit: 'kA', format: '0.0' },
  { name: 'Icu', unit: 'kA', format: '0' },
  { name: 'Ics', unit: 'kA', format: '0' },
];

/** The checker's own inputs, each with its origin; a digest of them all. */
export function addSources(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Sources', { properties: { tabColor: { argb: 'FF34495A' } } });
  titleBlock(sheet, 'SOURCES of the check: not from the designer’s cells', DOCUMENT, CABLE_COLUMNS.length);
  let last = addTable(sheet, { name: 'Sources', at: { row: FIRST_FREE_ROW }, columns: SOURCE_COLUMNS, rows: SOURCES }, worked);
  SOURCES.forEach(([, , , name], i) => workbook.definedNames.add(`'Sources'!$B$${FIRST_FREE_ROW + 2 + i}`, name));
  remark(sheet, last + 2, 'Cables, list TT-CL-007 rev 1:');
  last = addTable(sheet, { name: 'SourceCables', at: { row: last + 3 }, columns: CABLE_COLUMNS, rows: CABLES }, worked);
  remark(sheet, last + 2, 'Devices, from their sheets:');
  last = addTable(sheet, { name: 'SourceDevices', at: { row: last + 3 }, columns: DEVICE_COLUMNS, rows: DEVICES }, worked);
  dress(sheet.getCell(last + 2, 1), LABEL).value = 'Digest of the inputs';
  dress(sheet.getCell(last + 2, 2), WORKED).value = { formula: fileFormula('JW.CHECK_DIGEST(Sources[[input]:[comment]],SourceCables[[cable]:[Ik3 max]],SourceDevices[[device]:[Ics]])', '') };
  printSetUp(sheet, DOCUMENT, { rows: last + 2, columns: CABLE_COLUMNS.length });
  return sheet;
}

const DESIGN_COLUMNS: readonly Column[] = [
  { name: 'cable', width: 9 },
  { name: 'length', unit: 'm', width: 9, format: '0' },
  { name: 'size', unit: 'mm²', width: 9, format: '0' },
  { name: 'insulation', width: 11 },
  { name: 'load', unit: 'A', width: 9, format: '0' },
  { name: 'pf', unit: '–', width: 9, format: '0.00' },
  { name: 'R 20 °C', unit: 'mΩ/m', width: 10, format: '0.000' },
  { name: 'k', unit: 'A√s/mm²', width: 10, format: '0' },
  { name: 'let-through', unit: 'A²s', width: 13, format: '#,##0' },
  { name: 'Ik1 min', unit: 'kA', width: 10, format: '0.000' },
  { name: 'R hot', unit: 'mΩ', width: 10, format: '0.00', formula: '[@[R 20 °C]]*[@length]*IF([@insulation]="PVC",1.2,1.28)', except: { [ROW.X1]: '=[@[R 20 °C]]*[@length]' } },
  { name: 'k²S²', unit: 'A²s', width: 14, format: '#,##0', formula: '([@k]*[@size])^2' },
  { name: 'drop', unit: 'V', width: 10, format: '0.00', formula: 'SQRT(3)*[@load]*([@[R hot]]*[@pf]+0.08*[@length]*SQRT(1-[@pf]^2))/1000', except: { [ROW.X4]: 6.2 } },
  { name: 'withstand', width: 11, verdict: true, formula: 'IF([@[let-through]]<=[@[k²S²]],"pass","FAIL")', except: { [ROW.X5]: 'pass' } },
];

/** The colleague's sheet as it was received. */
export function addDesigner(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Designer', { properties: { tabColor: { argb: 'FFB5792F' } } });
  titleBlock(sheet, 'DESIGNER: the sheet as received', DOCUMENT, DESIGN_COLUMNS.length, { remark: 'Invented, with mistakes made on purpose: a sample.' });
  let last = addTable(sheet, { name: 'Design', at: { row: FIRST_FREE_ROW }, columns: DESIGN_COLUMNS, rows: DESIGN }, worked);
  remark(sheet, last + 2, 'Other figures received:');
  last = addTable(sheet, { name: 'Given', at: { row: last + 3 }, columns: [{ name: 'item', width: 24 }, { name: 'value', width: 15 }], rows: GIVEN }, worked);
  printSetUp(sheet, DOCUMENT, { rows: last, columns: DESIGN_COLUMNS.length });
  return sheet;
}

const FIRST_CHECK = FIRST_FREE_ROW + 2;
/** Column letter of the running number and of the finding, for the running count. */
const NUMBER = 'A';
const AGREES = 'G';

const CHECK_COLUMNS: readonly Column[] = [
  { name: 'no', width: 6, note: 'Running number of the finding.' },
  { name: 'item', width: 22 },
  { name: 'unit', width: 8 },
  { name: 'designer', width: 15, format: ANY_FIGURE, wraps: true, note: 'From the sheet as received.' },
  { name: 'tolerance', unit: '%', width: 9, format: '0' },
  { name: 'checker', width: 20, format: ANY_FIGURE, wraps: true, note: 'Worked from the sources, not from the designer’s cells.' },
  { name: 'agrees?', width: 22, formula: 'JW.AGREE([@designer],[@checker],[@tolerance])' },
  { name: 'difference', unit: '%', width: 10, format: '0.00', formula: 'IF(AND(ISNUMBER([@designer]),ISNUMBER([@checker])),JW.AGREE_DIFFERENCE([@designer],[@checker]),"–")' },
  { name: 'why?', width: 26, words: true, formula: `IF(LEFT([@[agrees?]],7)="DIFFERS",${orNone('JW.AGREE_HINT([@designer],[@checker])')},"none")`, note: 'A guess from the ratio: look there first.' },
  { name: 'class', width: 7, list: 'list_class', note: 'A changes a verdict on safety; B is wrong and changes none; C is of form.' },
  { name: 'remark', width: 32, words: true },
  { name: 'caution', width: 28, words: true },
  { name: 'working', width: 46, words: true },
  { name: 'clause', width: 28, words: true },
];

const CHECK_ROWS = CHECKS.map((check, i) => {
  const [name, args] = check.call;
  const row = FIRST_CHECK + i;
  return [
    `=IF(${AGREES}${row}="agrees","–",MAX(${NUMBER}$${FIRST_CHECK - 1}:${NUMBER}${row - 1})+1)`,
    check.item, check.unit === '' ? '–' : check.unit, `=IF(${check.designer}=""," ",${check.designer})`, check.tolerance, `=JW.${name}(${args})`,
    check.class, check.remark, `=${orNone(`JW.CAUTION("${name}",${args})`)}`, `=JW.SHOW_WORKING("${name}",${args})`, `=JW.CLAUSE("${name}")`,
  ];
});

/** The designer's figures beside ours. */
export function addCheck(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Check', { properties: { tabColor: { argb: 'FF5C8A4A' } } });
  titleBlock(sheet, 'CHECK: the designer’s figures against ours', DOCUMENT, CHECK_COLUMNS.length);
  const last = addTable(sheet, { name: 'Check', at: { row: FIRST_FREE_ROW }, columns: CHECK_COLUMNS, rows: CHECK_ROWS }, worked);
  for (let row = FIRST_CHECK; row <= last; row += 1) sheet.getRow(row).height = 50;
  const found = { fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: 'FFF6D3D0' } }, font: { bold: true, color: { argb: 'FF8A1C12' } } } as const;
  sheet.addConditionalFormatting({ ref: `${AGREES}${FIRST_CHECK}:${AGREES}${last}`, rules: [{ type: 'expression', priority: 1, formulae: [`${AGREES}${FIRST_CHECK}<>"agrees"`], style: found }] });
  sheet.views = [{ state: 'frozen', xSplit: 2, ySplit: FIRST_FREE_ROW + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: CHECK_COLUMNS.length }, [FIRST_FREE_ROW, FIRST_FREE_ROW + 1]);
  return sheet;
}

const ofFinding = (column: string): string => `IF([@no]>MAX(Check[no]),"–",XLOOKUP([@no],Check[no],Check[${column}]))`;

const FINDING_COLUMNS: readonly Column[] = [
  { name: 'no', width: 8 },
  { name: 'item', width: 26, formula: ofFinding('item') },
  { name: 'class', width: 10, formula: ofFinding('class') },
  { name: 'unit', width: 10, formula: ofFinding('unit') },
  { name: 'designer', width: 20, format: ANY_FIGURE, formula: ofFinding('designer') },
  { name: 'checker', width: 20, format: ANY_FIGURE, formula: ofFinding('checker') },
  { name: 'finding', width: 22, formula: ofFinding('agrees?') },
  { name: 'why?', width: 46, words: true, formula: ofFinding('why?') },
  { name: 'remark', width: 56, words: true, formula: ofFinding('remark') },
  { name: 'answer', width: 30, words: true, note: 'Of the designer.' },
];

/** What disagrees, in the order of the check, and how many of each class. */
export function addFindings(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Findings', { properties: { tabColor: { argb: 'FFA04848' } } });
  titleBlock(sheet, 'FINDINGS', DOCUMENT, FINDING_COLUMNS.length);
  ['A', 'B', 'C'].forEach((letter, i) => {
    dress(sheet.getCell(FIRST_FREE_ROW, 2 + i), WORKED).value = { formula: fileFormula(`"class ${letter}: "&COUNTIFS(Check[class],"${letter}",Check[agrees?],"<>agrees")`, '') };
  });
  dress(sheet.getCell(FIRST_FREE_ROW, 1), LABEL).value = { formula: fileFormula('MAX(Check[no])&" found"', '') };
  const top = FIRST_FREE_ROW + 2;
  const last = addTable(sheet, { name: 'Findings', at: { row: top }, columns: FINDING_COLUMNS, rows: CHECKS.map((_, i) => [i + 1, '']) }, worked);
  sheet.views = [{ state: 'frozen', ySplit: top + 1 }];
  printSetUp(sheet, DOCUMENT, { rows: last, columns: FINDING_COLUMNS.length }, [top, top + 1]);
  return sheet;
}
