import type { FormulaForms } from '../../sheet/formula/forms';
import { addressOf, parseBox } from '../../sheet/xlsx/address';
import { sheetCells } from '../../sheet/xlsx/sheet';
import type { StoredCell } from '../../sheet/xlsx/read-cells';
import type { OpenWorkbook, SheetFacts } from '../../sheet/xlsx/workbook';
import { parseXml } from '../../sheet/xlsx/xml/tree';
import type { StoredFormula } from '../grid/book';
import { type CellLook, type GridStyle, cellLooks, ruleLooks } from './cell-looks';
import { type Colors, colorReader } from './colors';
import { conditionalFormats } from './conditional-formats';
import { type ReadsAsOther, type SheetContents, sheetContents } from './contents';
import { type Layout, layoutOf } from './layout';
import type { FormatCheck } from './number-formats';
import { type SheetFrame, sheetFrame } from './sheet-frame';
import { validationsOf } from './validations';

/** What the grid itself must be asked. */
export interface GridChecks {
  readonly isFormatShown: FormatCheck;
  readonly readsAsOther: ReadsAsOther;
}

/** One sheet of the file, read. */
export interface ReadSheet {
  readonly facts: SheetFacts;
  readonly stored: readonly StoredCell[];
  readonly frame: SheetFrame;
  readonly contents: SheetContents;
}

export interface ImportedWorkbook {
  readonly sheets: readonly ReadSheet[];
  readonly formulas: ReadonlyMap<string, StoredFormula>;
  /** Sheets as the grid's own data describes them. */
  readonly gridSheets: object[];
  readonly styles: Record<number, GridStyle>;
  readonly formats: Record<number, string>;
  readonly borders: Record<number, object>;
  /** Names that mean one range, as the grid proposes them. */
  readonly namedRanges: Record<string, string>;
  readonly rulesNotDrawn: number;
  readonly rulesNotChecked: number;
}

/** Room beyond the last filled cell, for rows and columns to be added by typing. */
const ROOM = { rows: 60, columns: 6 };
const LEAST = { rows: 100, columns: 26 };
const SIMPLE_RANGE = /^(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/u;

interface Looks {
  readonly colors: Colors;
  readonly cells: readonly CellLook[];
  readonly rules: readonly GridStyle[];
}

function readLooks({ package: parts, part }: OpenWorkbook, isFormatShown: FormatCheck): Looks {
  const read = (kind: string) => {
    const place = parts.related(part, kind);
    return place === undefined ? undefined : parseXml(parts.text(place), place);
  };
  const colors = colorReader(read('theme'));
  const styles = read('styles');
  return { colors, cells: styles ? cellLooks(styles, colors, isFormatShown) : [], rules: styles ? ruleLooks(styles, colors) : [] };
}

const rangeOfName = (workbook: OpenWorkbook) => (name: string): string | undefined => {
  const found = workbook.facts.names.find((each) => each.sheet === undefined && each.name.toLowerCase() === name.toLowerCase());
  return found && SIMPLE_RANGE.test(found.text) ? found.text : undefined;
};

function size(stored: readonly StoredCell[], contents: SheetContents): { rows: number; columns: number } {
  let [rows, columns] = [0, 0];
  for (const { row, column } of stored) [rows, columns] = [Math.max(rows, row + 1), Math.max(columns, column + 1)];
  for (const { box } of contents.arrays) [rows, columns] = [Math.max(rows, box.bottom + 1), Math.max(columns, box.right + 1)];
  return { rows: Math.max(LEAST.rows, rows + ROOM.rows), columns: Math.max(LEAST.columns, columns + ROOM.columns) };
}

/** Numbers of the grid's lists start at 1; a text format is left away where it would turn a number into text. */
function looksOfCells(stored: readonly StoredCell[], looks: readonly CellLook[]): { styles: Record<string, number>; formats: Record<string, number>; borders: Record<string, number> } {
  const made = { styles: {} as Record<string, number>, formats: {} as Record<string, number>, borders: {} as Record<string, number> };
  for (const { address, style, type, formula } of stored) {
    const look = looks[style];
    if (!look) continue;
    made.styles[address] = style + 1;
    if (look.format !== undefined && !(look.format === '@' && (formula !== null || type !== 'text'))) made.formats[address] = style + 1;
    if (Object.keys(look.border).length > 0) made.borders[address] = style + 1;
  }
  return made;
}

/** The grid would make room for wrapped text in the first column of a merged cell alone; spreadsheet programs leave such rows as they are. */
const USUAL_ROW = { size: 20 };

function rowsWithMerges(rows: Layout['rows'], merges: readonly string[], stored: readonly StoredCell[], looks: readonly CellLook[]): Layout['rows'] {
  const wide = new Set(merges.flatMap((ref) => { const box = parseBox(ref); return box && box.right > box.left ? [addressOf(box.top, box.left)] : []; }));
  const made = { ...rows };
  for (const { address, row, style } of stored) if (wide.has(address) && looks[style]?.style.wrapping === 'wrap' && made[row]?.size === undefined) made[row] = { ...made[row], ...USUAL_ROW };
  return made;
}

/** Merged cells keep the part of a cell at their top left; what the file stores below them is not shown. */
function withoutCovered(contents: SheetContents, merges: readonly string[]): Record<string, string> {
  const cells = { ...contents.cells };
  for (const box of merges.flatMap((ref) => parseBox(ref) ?? [])) {
    for (let row = box.top; row <= box.bottom; row++) {
      for (let column = box.left; column <= box.right; column++) if (row !== box.top || column !== box.left) delete cells[addressOf(row, column)];
    }
  }
  return cells;
}

export function importWorkbook(workbook: OpenWorkbook, forms: FormulaForms, { isFormatShown, readsAsOther }: GridChecks): ImportedWorkbook {
  const looks = readLooks(workbook, isFormatShown);
  const nameToRange = rangeOfName(workbook);
  const formulas = new Map<string, StoredFormula>();
  let [rulesNotDrawn, rulesNotChecked] = [0, 0];
  const sheets: ReadSheet[] = [];
  const gridSheets: object[] = [];
  workbook.facts.sheets.filter(({ kind }) => kind === 'worksheet').forEach((facts, place) => {
    const stored = sheetCells(workbook, facts);
    const frame = sheetFrame(workbook.package.text(facts.part), facts.part);
    const contents = sheetContents(facts.name, stored, forms, readsAsOther);
    const { rows, columns } = size(stored, contents);
    const layout = layoutOf(frame, columns, looks.colors);
    const conditional = conditionalFormats(frame.root, looks.rules, looks.colors, forms);
    const validations = validationsOf(frame.root, forms, nameToRange);
    rulesNotDrawn += conditional.notDrawn;
    rulesNotChecked += validations.notChecked;
    for (const [key, formula] of contents.formulas) formulas.set(key, formula);
    sheets.push({ facts, stored, frame, contents });
    const { color, ...laidOut } = layout;
    gridSheets.push({
      id: `sheet-${place + 1}`, name: facts.name, colNumber: columns, rowNumber: rows, cells: withoutCovered(contents, layout.merges),
      ...looksOfCells(stored, looks.cells), ...laidOut, rows: rowsWithMerges(layout.rows, layout.merges, stored, looks.cells), ...(color === undefined ? {} : { color }),
      conditionalFormats: conditional.formats, dataValidationRules: validations.rules,
      figures: [], tables: [], isVisible: facts.state === 'visible',
    });
  });
  return {
    sheets, formulas, gridSheets, rulesNotDrawn, rulesNotChecked,
    styles: Object.fromEntries(looks.cells.map(({ style }, place) => [place + 1, style])),
    formats: Object.fromEntries(looks.cells.flatMap(({ format }, place) => (format === undefined ? [] : [[place + 1, format]]))),
    borders: Object.fromEntries(looks.cells.map(({ border }, place) => [place + 1, border])),
    namedRanges: Object.fromEntries(workbook.facts.names.filter(({ sheet, hidden, text, name }) => sheet === undefined && !hidden && SIMPLE_RANGE.test(text) && /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name)).map(({ name, text }) => [name, text.replace(/\$/g, '')])),
  };
}
