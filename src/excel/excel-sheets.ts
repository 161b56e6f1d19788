import { DONE, type Done, type Refused, refused } from '../pane/host';
import type { PlannedCell, PrintSetUp, SheetPlan, Validation } from '../pane/sheet-plan';
import { parseBox } from '../sheet/xlsx/address';
import { changing } from './excel-edits';
import { dress, markVerdicts } from './excel-looks';
import { isKnown, troubleOf } from './excel-trouble';

/** New sheets after a plan. */

const inPoints = (characters: number): number => (characters * 7 + 5) * 0.75;

/** Tables need their headings and formulas their tables, so cells go in two passes. */
function putCells(worksheet: Excel.Worksheet, cells: readonly PlannedCell[], formulas: boolean): void {
  for (const { range: address, value, formula, look, format } of cells) {
    const range = worksheet.getRange(address);
    if (formulas) {
      if (formula === undefined) continue;
      const first = range.getCell(0, 0);
      first.formulas = [[formula]];
      if (address.includes(':')) range.copyFrom(first, 'Formulas');
      continue;
    }
    if (look !== undefined) dress(range, look, parseBox(address)!);
    if (format !== undefined) range.numberFormat = filled(address, format);
    if (value !== undefined) range.values = filled(address, value);
  }
}

function filled<T>(address: string, one: T): T[][] {
  const { top, left, bottom, right } = parseBox(address)!;
  return Array.from({ length: bottom - top + 1 }, () => Array.from({ length: right - left + 1 }, () => one));
}

function validate(worksheet: Excel.Worksheet, { range, allows, message }: Validation): void {
  const { dataValidation } = worksheet.getRange(range);
  if ('between' in allows) {
    const basic: Excel.BasicDataValidation = { formula1: allows.between[0], formula2: allows.between[1], operator: 'Between' };
    dataValidation.rule = allows.whole ? { wholeNumber: basic } : { decimal: basic };
  } else dataValidation.rule = { list: { inCellDropDown: true, source: 'list' in allows ? allows.list.join(',') : `=${allows.listFrom}` } };
  dataValidation.errorAlert = { message, showAlert: true, style: 'Stop', title: 'Joulewright' };
  dataValidation.ignoreBlanks = true;
}

function print(worksheet: Excel.Worksheet, { paper, orientation, area, titleRows, header }: PrintSetUp): void {
  const { pageLayout } = worksheet;
  pageLayout.paperSize = paper;
  pageLayout.orientation = orientation === 'portrait' ? 'Portrait' : 'Landscape';
  pageLayout.setPrintArea(area);
  pageLayout.zoom = { horizontalFitToPages: 1 };
  pageLayout.centerHorizontally = true;
  if (titleRows) pageLayout.setPrintTitleRows(`$${titleRows[0]}:$${titleRows[1]}`);
  const texts = pageLayout.headersFooters.defaultForAllPages;
  if (header?.left !== undefined) texts.leftHeader = header.left;
  if (header?.right !== undefined) texts.rightHeader = header.right;
  texts.leftFooter = '&F / &A';
  texts.centerFooter = 'Page &P of &N';
  texts.rightFooter = 'Printed &D &T';
}

function insert(context: Excel.RequestContext, plan: SheetPlan): Excel.Worksheet {
  const worksheet = context.workbook.worksheets.add(plan.name);
  worksheet.showGridlines = false;
  plan.widths.forEach((width, place) => void (worksheet.getRangeByIndexes(0, place, 1, 1).format.columnWidth = inPoints(width)));
  for (const [row, height] of Object.entries(plan.heights ?? {})) worksheet.getRangeByIndexes(Number(row) - 1, 0, 1, 1).format.rowHeight = height;
  putCells(worksheet, plan.cells, false);
  for (const range of plan.merges ?? []) worksheet.getRange(range).merge(false);
  for (const { name, range } of plan.tables ?? []) {
    const table = worksheet.tables.add(range, true);
    table.name = name;
    table.style = 'TableStyleLight1';
    table.showBandedRows = false;
  }
  for (const { name, range } of plan.names ?? []) context.workbook.names.add(name, worksheet.getRange(range));
  return worksheet;
}

function finish(worksheet: Excel.Worksheet, plan: SheetPlan): void {
  putCells(worksheet, plan.cells, true);
  for (const validation of plan.validations ?? []) validate(worksheet, validation);
  for (const range of plan.verdicts ?? []) markVerdicts(worksheet.getRange(range), parseBox(range)!);
  if (plan.freeze) worksheet.freezePanes.freezeAt(worksheet.getRangeByIndexes(0, 0, Math.max(1, plan.freeze.rows), Math.max(1, plan.freeze.columns)));
  if (plan.print) print(worksheet, plan.print);
}

/** A sheet, table or name of the plans that the workbook has already. */
async function taken(context: Excel.RequestContext, plans: readonly SheetPlan[]): Promise<Refused | undefined> {
  const { worksheets, tables, names, protection } = context.workbook;
  worksheets.load('items/name');
  tables.load('items/name');
  names.load('items/name');
  protection.load('protected');
  await context.sync();
  if (protection.protected) return refused('The workbook’s structure is protected, so no sheets can be added. Unprotect it in Excel first.');
  const found = (items: readonly { name: string }[], wanted: readonly string[]): string | undefined => wanted.find((name) => items.some((item) => item.name.toLowerCase() === name.toLowerCase()));
  const sheet = found(worksheets.items, plans.map(({ name }) => name));
  if (sheet !== undefined) return refused(`A sheet named ${sheet} is there already. Rename it, or use it as it is.`);
  const table = found(tables.items, plans.flatMap((plan) => (plan.tables ?? []).map(({ name }) => name)));
  if (table !== undefined) return refused(`A table named ${table} is there already. Rename it, or use it as it is.`);
  const name = found(names.items, plans.flatMap((plan) => (plan.names ?? []).map((each) => each.name)));
  return name === undefined ? undefined : refused(`The name ${name} is defined already. Rename it, or use it as it is.`);
}

export async function insertSheets(plans: readonly SheetPlan[]): Promise<Done> {
  if (!isKnown('1.9')) return refused('This version of Excel cannot set up sheets for add-ins. Start from a sample workbook.');
  return changing(async (context): Promise<Done> => {
    const why = await taken(context, plans);
    if (why) return why;
    // Formulas may read any of the new sheets, so all stand before the first formula.
    const made = plans.map((plan) => insert(context, plan));
    await context.sync();
    plans.forEach((plan, place) => finish(made[place]!, plan));
    made[0]?.activate();
    await context.sync();
    return DONE;
  }).catch(troubleOf);
}
