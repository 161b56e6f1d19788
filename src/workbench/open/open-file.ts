import { catalogue } from '../../sheet/catalogue';
import { FormulaForms } from '../../sheet/formula/forms';
import { refuse } from '../../sheet/xlsx/refusal';
import { type OpenWorkbook, openWorkbook } from '../../sheet/xlsx/workbook';
import { Book } from '../grid/book';
import { GUARD, type GuardRules } from '../grid/guard';
import type { GridLibrary, Model } from '../grid/library';
import { BOOK } from '../grid/run';
import { SheetStyles, type WhyFixed, fixedCells } from './fixed-cells';
import { filtersOf } from './filters';
import { noticesOf } from './notices';
import { gridChecks } from './grid-checks';
import { type ReadSheet, importWorkbook } from './workbook-data';

/** A workbook file that is open in the grid. */
export interface OpenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly workbook: OpenWorkbook;
  readonly book: Book;
  readonly model: Model;
  readonly sheets: readonly ReadSheet[];
  readonly styles: ReadonlyMap<string, SheetStyles>;
  readonly whyFixed: WhyFixed;
  /** Number format that the file gives a cell, as the grid shows it. */
  readonly formatOf: (sheet: string, row: number, column: number) => string | undefined;
  readonly notices: readonly string[];
}

/** Between the form of formulas that is typed and the form of files. */
export const formulaForms = new FormulaForms(catalogue.entries.map(({ member }) => member.name));

/** Opens a file, or refuses it in words (WorkbookRefusal). `refused` hears of edits that Save could not write. */
export function openFile(grid: GridLibrary, name: string, bytes: Uint8Array, refused: GuardRules['refused']): OpenFile {
  const workbook = openWorkbook(bytes);
  const imported = importWorkbook(workbook, formulaForms, gridChecks(grid));
  if (imported.sheets.length === 0) refuse('The file has no sheet with cells, only charts or dialogs.');
  const { sheets, gridSheets, styles, formats, borders, namedRanges } = imported;
  const sheetStyles = new Map(sheets.map((sheet) => [sheet.facts.name, new SheetStyles(sheet)]));
  const whyFixed = fixedCells(sheets, sheetStyles, workbook);
  const book = new Book(workbook.facts, imported.formulas, filtersOf(workbook, sheets));
  const data = { ...grid.helpers.createEmptyWorkbookData(), sheets: gridSheets, styles, formats, borders, namedRanges };
  const rules: GuardRules = { whyFixed, refused };
  const model = new grid.Model(data, { custom: { [BOOK]: book, [GUARD]: rules } }, [], undefined, false);
  const formatOf: OpenFile['formatOf'] = (sheet, row, column) => formats[(sheetStyles.get(sheet)?.of(row, column) ?? 0) + 1];
  return { name, bytes, workbook, book, model, sheets, styles: sheetStyles, whyFixed, formatOf, notices: noticesOf(workbook, imported) };
}
