import type { Cell, Style, Workbook, Worksheet } from 'exceljs';
import type { Look, PlannedCell, PrintSetUp, SheetPlan, Validation } from '../pane/sheet-plan';
import { catalogue } from '../sheet/catalogue';
import { callsInFormula, typedFormula } from '../sheet/explain/calls-in-formula';
import { parseBox } from '../sheet/xlsx/address';
import { letters } from './frame';
import { CARRIED, EXAMPLE, HEADING, INPUT, LABEL, PLAIN, REMARK, TITLE, UNIT, WORDS } from './look';

/** A workbook of ours as plans, so that the pane inserts the very sheets that its file holds. */

const LOOKS: readonly (readonly [Look, Partial<Style>])[] = [
  ['title', TITLE], ['heading', HEADING], ['unit', UNIT], ['example', EXAMPLE], ['input', INPUT], ['words', WORDS], ['carried', CARRIED], ['label', LABEL], ['plain', PLAIN], ['remark', REMARK],
];

/** Looks differ by font and ground; alignment is a matter of the cell. */
const same = (cell: Cell, style: Partial<Style>): boolean =>
  JSON.stringify([cell.font, cell.fill ?? null, cell.border === undefined]) === JSON.stringify([style.font, style.fill ?? null, style.border === undefined]);

function lookOf(cell: Cell): Look | undefined {
  const found = LOOKS.find(([, style]) => same(cell, style))?.[0];
  return found === 'plain' && cell.formula !== undefined ? 'worked' : found;
}

/** Days since the end of 1899, as cells hold dates. */
const serial = (date: Date): number => date.getTime() / 86_400_000 + 25_569;

function plannedCell(cell: Cell): Omit<PlannedCell, 'range'> {
  const { value } = cell;
  const look = lookOf(cell);
  const content = cell.formula !== undefined ? { formula: `=${typedFormula(cell.formula)}` }
    : value instanceof Date ? { value: serial(value) }
      : typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? { value } : {};
  // A format that keeps texts as texts would keep a formula from being one.
  const format = cell.numFmt === undefined || cell.numFmt === 'General' || (cell.formula !== undefined && cell.numFmt === '@') ? {} : { format: cell.numFmt };
  return { ...content, ...(look === undefined ? {} : { look }), ...format };
}

/** A formula that may be filled on: it names columns of tables and names, no cells that would move along. */
const fillsOn = ({ formula, value }: Omit<PlannedCell, 'range'>): boolean => value === undefined && (formula === undefined || callsInFormula(formula, catalogue).areas.length === 0);

/** Cells of a column that are alike and hold no value of their own are one entry. */
function columnCells(sheet: Worksheet, column: number): PlannedCell[] {
  const runs: { first: number; last: number; planned: Omit<PlannedCell, 'range'> }[] = [];
  for (let row = 1; row <= sheet.rowCount; row += 1) {
    const cell = sheet.getCell(row, column);
    if (cell.isMerged && cell.master !== cell) continue;
    const planned = plannedCell(cell);
    if (Object.keys(planned).length === 0) continue;
    const last = runs.at(-1);
    if (last && last.last === row - 1 && fillsOn(planned) && JSON.stringify(planned) === JSON.stringify(last.planned)) last.last = row;
    else runs.push({ first: row, last: row, planned });
  }
  const letter = letters(column);
  return runs.map(({ first, last, planned }) => ({ range: first === last ? `${letter}${first}` : `${letter}${first}:${letter}${last}`, ...planned }));
}

/** Parts of a sheet that the library's declarations leave out. */
interface Undeclared {
  readonly dataValidations: { readonly model: Readonly<Record<string, { type: string; formulae: readonly unknown[]; error?: string }>> };
  readonly conditionalFormattings: readonly { ref: string; rules: readonly { formulae?: readonly string[] }[] }[];
  readonly tables: Readonly<Record<string, { readonly table: { name: string; tableRef: string } }>>;
  readonly model: { readonly merges: readonly string[] };
}

function validationsOf({ dataValidations }: Undeclared): Validation[] {
  return Object.entries(dataValidations.model).map(([key, { type, formulae, error = '' }]) => {
    const range = key.replace(/^range:/, '');
    if (type === 'list') return { range, allows: { listFrom: String(formulae[0]) }, message: error };
    return { range, allows: { between: [Number(formulae[0]), Number(formulae[1])] }, message: `Takes ${error}.` };
  });
}

const A3 = 8;

function printOf({ pageSetup, headerFooter }: Worksheet): PrintSetUp {
  const [, first, last] = /^(\d+):(\d+)$/.exec(pageSetup.printTitlesRow ?? '') ?? [];
  const [, left = '', right = ''] = /^&L(?:&"[^"]*")?(.*)&R(.*)$/.exec(headerFooter.oddHeader ?? '') ?? [];
  return {
    paper: Number(pageSetup.paperSize) === A3 ? 'A3' : 'A4', orientation: pageSetup.orientation ?? 'landscape', area: String(pageSetup.printArea),
    ...(first === undefined || last === undefined ? {} : { titleRows: [Number(first), Number(last)] as const }), header: { left, right },
  };
}

function planOf(workbook: Workbook, sheet: Worksheet): SheetPlan {
  const parts = sheet as unknown as Undeclared;
  const columns = Array.from({ length: sheet.columnCount }, (_, i) => i + 1);
  const heights = Object.fromEntries(Array.from({ length: sheet.rowCount }, (_, i) => [i + 1, sheet.getRow(i + 1).height] as const).filter(([, height]) => height !== undefined));
  const named = workbook.definedNames.model.flatMap(({ name, ranges }) => ranges.flatMap((range) => {
    const [, of, cells] = /^'?((?:[^']|'')+?)'?!(.+)$/.exec(range) ?? [];
    return of === sheet.name && cells !== undefined ? [{ name, range: cells.replace(/\$/g, '') }] : [];
  }));
  const frozen = sheet.views[0]?.state === 'frozen' ? sheet.views[0] : undefined;
  return {
    name: sheet.name,
    widths: columns.map((column) => Math.round((sheet.getColumn(column).width ?? 10.7) * 10) / 10),
    cells: columns.flatMap((column) => columnCells(sheet, column)),
    heights, merges: parts.model.merges,
    tables: Object.values(parts.tables).map(({ table }) => ({ name: table.name, range: table.tableRef })),
    names: named,
    validations: validationsOf(parts),
    verdicts: parts.conditionalFormattings.filter(({ rules }) => rules[0]?.formulae?.[0] === '"FAIL"').map(({ ref }) => ref),
    ...(frozen ? { freeze: { rows: frozen.ySplit ?? 0, columns: frozen.xSplit ?? 0 } } : {}),
    print: printOf(sheet),
  };
}

/** All sheets of a workbook as plans, in their order. */
export function sheetPlans(workbook: Workbook): SheetPlan[] {
  const plans = workbook.worksheets.map((sheet) => planOf(workbook, sheet));
  for (const { tables = [] } of plans) for (const { range } of tables) if (!parseBox(range)) throw new Error(`no range of a table: ${range}`);
  return plans;
}
