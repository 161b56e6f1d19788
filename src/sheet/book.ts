import { type Cell, CellError, type Matrix } from '../functions/kernel/cell';
import { BookSheet, type BookCell } from './calculate/cells';
import { Engine } from './calculate/engine';
import { BookNames } from './calculate/names';
import { refusalRule } from './calculate/refusal-rule';
import { FromCell, spread } from './calculate/results';
import { type CustomFunctions, NotSupported } from './evaluate';
import { oneCell, parseAddress } from './xlsx/address';
import { refuse } from './xlsx/refusal';
import { type HiddenBy, hiddenRows } from './xlsx/hidden-rows';
import { eachSheetCell, sheetNamed } from './xlsx/sheet';
import { type OpenWorkbook, openWorkbook } from './xlsx/workbook';

/** A cell whose computed value is not the stored one. */
export interface Change {
  readonly sheet: string;
  readonly address: string;
  /** null where the file holds no value. */
  readonly was: Cell;
  readonly now: Cell;
}

/** A formula that could not be worked out here, or hangs on one. */
export interface NotComputed {
  readonly sheet: string;
  readonly address: string;
  readonly formula: string;
  readonly reason: string;
}

/** What became of one formula by the stored values of the cells it reads. */
export interface StoredCheck {
  /** Value of the formula's own cell; an error with a reason where it could not be worked out. */
  readonly computed: Cell;
  /** Why nothing can be said; undefined where the formula was worked out. */
  readonly reason: string | undefined;
  /** Cells that store something else: the formula's own, and those its array fills. */
  readonly differs: readonly Change[];
}

export type FormulaCell = BookCell & { readonly formula: string };

/** Numbers that agree so far are one number in two writings: some programs store 15 digits, ours 17. */
const WRITINGS = 1e-12;

/** Equal but for how a file writes it. */
export function sameValue(a: Cell, b: Cell): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= WRITINGS * Math.max(Math.abs(a), Math.abs(b));
  if (a instanceof CellError) return b instanceof CellError && a.code === b.code;
  return a === b;
}

/** A workbook file with its formulas ready to be computed. */
export class Book {
  private readonly sheetsByName: ReadonlyMap<string, BookSheet>;
  /** In the order of the workbook; sheets without cells among them. */
  readonly sheets: readonly BookSheet[];
  private readonly engine: Engine;
  /** All cells with a formula, in the order of the file. */
  readonly formulaCells: readonly FormulaCell[];
  private recalculated = false;

  constructor(readonly workbook: OpenWorkbook, custom: CustomFunctions, now?: Date) {
    const sheets = workbook.facts.sheets.map((sheet) => new BookSheet(sheet.name, (visit) => eachSheetCell(workbook, sheet, visit)));
    this.sheets = sheets;
    this.sheetsByName = new Map(sheets.map((sheet) => [sheet.name.toLowerCase(), sheet]));
    this.formulaCells = sheets.flatMap((sheet) => sheet.formulas as FormulaCell[]);
    const parts = { sheets: this.sheetsByName, names: new BookNames(workbook.facts), functions: custom, refusalOf: refusalRule(workbook.facts), hiddenRow: hiddenRowOf(workbook) };
    this.engine = new Engine(now ? { ...parts, now } : parts);
  }

  /** Computes all formulas from the constants, each once, in whatever order they need one another. */
  recalculate(): void {
    this.engine.recalculate(this.formulaCells);
    this.recalculated = true;
  }

  /** Cells whose value by the last recalculation is not the stored one. */
  changes(): Change[] {
    if (!this.recalculated) this.recalculate();
    return this.formulaCells.flatMap((cell) => changed(cell, (place) => place.value));
  }

  /** Formulas that the last recalculation could not work out, and all that hang on them. */
  notComputed(): NotComputed[] {
    if (!this.recalculated) this.recalculate();
    return this.formulaCells.flatMap((cell) => {
      const reason = reasonOf(cell.value);
      return reason === undefined ? [] : [{ sheet: cell.sheet.name, address: cell.address, formula: cell.formula, reason }];
    });
  }

  /** One formula by the stored values of the cells it reads: what its author saw. */
  storedAgainstStored(cell: FormulaCell): StoredCheck {
    const result = this.engine.againstStored(cell);
    const valueOf = valuesOf(cell, result);
    const computed = valueOf(cell);
    const reason = reasonOf(computed);
    return { computed, reason, differs: reason === undefined ? changed(cell, valueOf) : [] };
  }

  /** Value of a cell: computed if the book was recalculated, else stored. */
  value(sheet: string, address: string): Cell {
    return this.cell(sheet, address)?.value ?? null;
  }

  cell(sheet: string, address: string): BookCell | undefined {
    const place = parseAddress(address) ?? refuse(`"${address}" is no cell of a sheet.`);
    const found = this.sheetsByName.get(sheet.toLowerCase()) ?? refuse(`The workbook has no sheet "${sheet}".`);
    return found.at(place.row, place.column);
  }

  /** Value of a formula in the form of files, as if it stood in the cell. */
  evaluate(formula: string, sheet: string, address = 'A1'): Cell | Matrix {
    const place = parseAddress(address) ?? refuse(`"${address}" is no cell of a sheet.`);
    return this.engine.evaluateText(formula, sheet, place.row, place.column);
  }
}

/** Tells of hidden rows; a sheet is looked through for them when it is first asked about. */
function hiddenRowOf(workbook: OpenWorkbook): (sheet: string, row: number) => HiddenBy | undefined {
  const known = new Map<string, ReadonlyMap<number, HiddenBy>>();
  return (name, row) => {
    let rows = known.get(name);
    if (!rows) known.set(name, (rows = hiddenRows(workbook, sheetNamed(workbook, name))));
    return rows.get(row);
  };
}

/** Opens a workbook file for computing. `now` is the clock of TODAY and NOW; without it formulas that use it are not computed. */
export const openBook = (bytes: Uint8Array, custom: CustomFunctions, now?: Date): Book => new Book(openWorkbook(bytes), custom, now);

/** Why a value was not computed; undefined where it was. */
function reasonOf(value: Cell): string | undefined {
  if (!(value instanceof NotSupported)) return undefined;
  return value instanceof FromCell ? `depends on ${value.cell.sheet.name}!${value.cell.address}: ${value.message}` : value.message;
}

function valuesOf(cell: BookCell, result: Cell | Matrix): (place: BookCell) => Cell {
  if (!cell.array) return () => (Array.isArray(result) ? result[0]![0]! : result);
  const values = spread(cell.array, result, cell.dynamic);
  return (place) => values(place.row - cell.row, place.column - cell.column);
}

/** Places of one formula whose stored value is another than the one given. */
function changed(cell: BookCell, valueOf: (place: BookCell) => Cell): Change[] {
  const changes: Change[] = [];
  const look = (place: BookCell): void => {
    const now = valueOf(place);
    if (!(now instanceof NotSupported) && !sameValue(place.stored, now)) changes.push({ sheet: place.sheet.name, address: place.address, was: place.stored, now });
  };
  if (!cell.array || oneCell(cell.array)) look(cell);
  else {
    const { top, left, bottom, right } = cell.array;
    cell.sheet.each(top, left, bottom, right, (place) => { if (place === cell || place.owner === cell) look(place); });
  }
  return changes;
}
