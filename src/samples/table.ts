import type { Style, Worksheet } from 'exceljs';
import { fileFormula } from './formula-text';
import { letters } from './frame';
import { CARRIED, FAILED, HEADING, INPUT, IN_ERROR, NOT_SHOWN, REMARK, UNIT, WORDS, WORKED, dress } from './look';

export interface Column {
  name: string;
  unit?: string;
  width?: number;
  format?: string;
  /** Typed formula of a worked column; a column without one is typed in. */
  formula?: string;
  /** Rows (from 0) of a worked column that hold something typed over the formula, or another formula. */
  except?: Readonly<Record<number, string | number>>;
  /** Name of the list that its cells choose from. */
  list?: string;
  /** Limits of a typed figure. */
  between?: [number, number];
  /** Remark on the heading. */
  note?: string;
  /** Holds a verdict: FAIL and not shown are marked. */
  verdict?: true;
  /** Holds running text. */
  words?: true;
  /** Text too long for the cell is made small. */
  shrink?: true;
  /** Text too long for the cell goes on in the next line, where rows are high enough. */
  wraps?: true;
  /** Carried on from cell to cell with all digits and not meant to be read: small, and right of the printed columns. */
  carried?: true;
}

export interface TableSource {
  name: string;
  /** Row of the units; the heading follows, then the rows. */
  at: { row: number; column?: number };
  columns: readonly Column[];
  /** Typed cells, in the order of the typed columns; a text that begins with = is a formula of this cell alone. */
  rows: readonly (readonly (string | number)[])[];
  /** Look of the typed cells of a row (from 0), where it is not the usual one. */
  inputLook?: (row: number) => Partial<Style>;
}

/** Formulas of the worked columns by table, in file form: what the pass over the parts writes into the table definitions. */
export type WorkedColumns = Map<string, Map<string, string>>;

/** Writes an Excel table with units above it, validation, formats and marks. Gives its last row. */
export function addTable(sheet: Worksheet, source: TableSource, worked: WorkedColumns): number {
  const { name, columns, rows } = source;
  const first = source.at.column ?? 1;
  const heading = source.at.row + 1;
  const last = heading + rows.length;
  const formulas = new Map(columns.flatMap(({ name: key, formula }) => (formula === undefined ? [] : [[key, fileFormula(formula, name)]])));
  worked.set(name, formulas);

  const cells = rows.map((row, i) => {
    const typed = [...row];
    return columns.map(({ name: key, formula, except }) =>
      formula === undefined ? entryOf(typed.shift(), name) : except?.[i] === undefined ? { formula: formulas.get(key)! } : entryOf(except[i], name));
  });
  sheet.addTable({
    name, ref: `${letters(first)}${heading}`, headerRow: true, totalsRow: false,
    style: { theme: 'TableStyleLight1', showRowStripes: false },
    columns: columns.map((column) => ({ name: column.name, filterButton: true })),
    rows: cells,
  });
  sheet.getRow(heading).height = 32;
  columns.forEach((column, i) => dressColumn(sheet, column, { at: first + i, heading, last }, source.inputLook ?? (() => INPUT)));
  return last;
}

/** Nothing typed: an empty cell, not an empty text. */
function entryOf(typed: string | number | undefined, table: string): string | number | null | { formula: string } {
  if (typed === undefined || typed === '') return null;
  return typeof typed === 'string' && typed.startsWith('=') ? { formula: fileFormula(typed.slice(1), table) } : typed;
}

/** Widths in characters of the sheet's font: headings are bold, and a cell with a list has the arrow of the list in it. */
const HEADING_CHARACTER = 1.15;
const CELL_CHARACTER = 1.05;
const EDGES = 0.9;
const ARROW = 2.6;

/** The longest line of a heading that takes two lines at most: no word is to be broken. */
function headingLine(name: string): number {
  const words = name.split(' ');
  const breaks = words.map((_, i) => Math.max(words.slice(0, i).join(' ').length, words.slice(i).join(' ').length));
  return Math.min(...breaks);
}

/** What the heading, and a cell to choose in, need at least. */
function leastWidth({ name, list }: Column, longest: number): number {
  const heading = HEADING_CHARACTER * headingLine(name) + EDGES;
  return list === undefined ? heading : Math.max(heading, CELL_CHARACTER * longest + EDGES + ARROW);
}

/** Room for two lines of running text. */
const TWO_LINES = 26;

function dressColumn(sheet: Worksheet, column: Column, { at, heading, last }: { at: number; heading: number; last: number }, inputLook: (row: number) => Partial<Style>): void {
  const letter = letters(at);
  const range = `${letter}${heading + 1}:${letter}${last}`;
  dress(sheet.getCell(heading - 1, at), UNIT).value = column.unit ?? null;
  const head = dress(sheet.getCell(heading, at), HEADING);
  if (column.note !== undefined) head.note = { texts: [{ font: { size: 9 }, text: column.note }], margins: { insetmode: 'auto' } };
  const longest = Math.max(0, ...Array.from({ length: last - heading }, (_, i) => sheet.getCell(heading + 1 + i, at).text.length));
  // exceljs drops a width of exactly 9
  sheet.getColumn(at).width = Math.max((column.width ?? 10) + 0.7, leastWidth(column, longest), sheet.getColumn(at).width ?? 0);
  for (let row = heading + 1; row <= last; row += 1) {
    const cell = sheet.getCell(row, at);
    const isWorked = column.formula !== undefined || cell.formula !== undefined;
    const typed = inputLook(row - heading - 1);
    const style = column.carried ? CARRIED : column.words ? (isWorked ? WORDS : { ...WORDS, ...typed, alignment: WORDS.alignment! }) : isWorked ? WORKED : typed;
    dress(cell, style, column.format);
    // Words stand clear of the figures to their left; verdicts stand out.
    if (!column.words && !column.carried) cell.alignment = column.verdict ? { ...style.alignment, horizontal: 'center' } : column.format === undefined && column.unit === undefined ? { ...style.alignment, horizontal: 'left', indent: 1 } : { ...style.alignment, horizontal: 'right' };
    if (column.shrink) cell.alignment = { ...cell.alignment, shrinkToFit: true };
    if (column.wraps) cell.alignment = { ...cell.alignment, wrapText: true };
    if (column.words) sheet.getRow(row).height = TWO_LINES;
  }
  validate(sheet, column, range);
  if (column.verdict) {
    sheet.addConditionalFormatting({
      ref: range,
      rules: [
        { type: 'cellIs', operator: 'equal', priority: 1, formulae: ['"FAIL"'], style: FAILED },
        { type: 'cellIs', operator: 'equal', priority: 2, formulae: ['"not shown"'], style: NOT_SHOWN },
        { type: 'expression', priority: 3, formulae: [`ISERROR(${letter}${heading + 1})`], style: IN_ERROR },
      ],
    });
  }
}

/** `dataValidations.add` takes a range; its type is missing from the library's declarations. */
interface Validations { dataValidations: { add(range: string, rule: object): void } }

function validate(sheet: Worksheet, { name, unit, list, between }: Column, range: string): void {
  const add = (rule: object): void => (sheet as unknown as Validations).dataValidations.add(range, { allowBlank: true, showErrorMessage: true, errorStyle: 'stop', errorTitle: name.slice(0, 32), ...rule });
  if (list !== undefined) add({ type: 'list', formulae: [list], error: 'Choose from the list' });
  if (between) add({ type: 'decimal', operator: 'between', formulae: [...between], error: `${between[0]} to ${between[1]}${unit === undefined ? '' : ` ${unit}`}` });
}

/** Says above the carried columns what they are. */
export function carriedHeading(sheet: Worksheet, row: number, column: number, text = 'Impedances as complex text, carried with all digits; not printed:'): void {
  const cell = dress(sheet.getCell(row, column), REMARK);
  cell.value = text;
  cell.alignment = { wrapText: false };
}
