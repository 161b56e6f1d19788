import { isStackOverflow } from '../../core/stack';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { NotSupported } from '../../sheet/evaluate';
import type { Area } from '../../sheet/evaluate/area';
import { cellFromGrid, resultToGrid, plainText } from './cell-values';
import type { CellPosition, EvalContext, EvaluatedCell, GridResult, Range } from './library';
import { DEEP, Settling, TOO_DEEP } from './settle';

/** Reads cells of the grid while a formula runs. Rows and columns count from 0. */
export interface GridCells {
  get(sheet: string, row: number, column: number): Cell;
  /** Last row and column of the grid's sheet; undefined where there is no such sheet. */
  last(sheet: string): readonly [row: number, column: number] | undefined;
  /** The cells that the formula of a cell spills over, that cell included; undefined where it does not spill. */
  spill(sheet: string, row: number, column: number): { bottom: number; right: number } | undefined;
  formula(sheet: string, row: number, column: number): string | undefined;
  isRowHidden(sheet: string, row: number): boolean;
  /** Notes cells that the formula depends on though its text does not name them. */
  depends(sheet: string, top: number, left: number, bottom: number, right: number): void;
}

export interface FormulaPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** The open workbook, as formulas in the grid see it. */
export interface GridBook {
  evaluate(formula: string, place: FormulaPlace, cells: GridCells): Cell | Matrix;
  /** Areas that a formula names, by address, name or table. */
  areas(formula: string, place: FormulaPlace, cells: GridCells): readonly Area[];
  /** Formulas that are running within one another. */
  running: number;
}

/** Under this name the open workbook stands in the grid's settings. */
export const BOOK = 'joulewright';

class RunningCells implements GridCells {
  readonly needed: Range[] = [];

  constructor(private readonly context: EvalContext) {}

  get(sheet: string, row: number, column: number): Cell {
    const sheetId = this.sheetId(sheet);
    if (sheetId === undefined) return new CellError('#REF!', `there is no sheet ${sheet}`);
    const read = this.context.getFormulaResult({ sheetId, row, col: column }) as GridResult & Partial<EvaluatedCell>;
    if (read.type !== 'error' && read.link === undefined) return cellFromGrid(read, false);
    return plainText(read, this.context.getters.getCell({ sheetId, row, col: column })) ?? cellFromGrid(read, read.type === 'error');
  }

  last(sheet: string): readonly [number, number] | undefined {
    const sheetId = this.sheetId(sheet);
    return sheetId === undefined ? undefined : [this.context.getters.getNumberRows(sheetId) - 1, this.context.getters.getNumberCols(sheetId) - 1];
  }

  spill(sheet: string, row: number, column: number): { bottom: number; right: number } | undefined {
    const sheetId = this.sheetId(sheet);
    if (sheetId === undefined) return undefined;
    const position: CellPosition = { sheetId, row, col: column };
    this.context.getFormulaResult(position);
    return this.context.getters.getSpreadZone(position);
  }

  formula(sheet: string, row: number, column: number): string | undefined {
    const sheetId = this.sheetId(sheet);
    const cell = sheetId === undefined ? undefined : this.context.getters.getCell({ sheetId, row, col: column });
    return cell?.isFormula ? cell.compiledFormula.toFormulaString(this.context.getters) : undefined;
  }

  isRowHidden(sheet: string, row: number): boolean {
    const sheetId = this.sheetId(sheet);
    return sheetId !== undefined && this.context.getters.isRowHidden(sheetId, row);
  }

  depends(sheet: string, top: number, left: number, bottom: number, right: number): void {
    const sheetId = this.sheetId(sheet);
    if (sheetId !== undefined) this.needed.push(this.context.getters.getRangeFromZone(sheetId, { top, left, bottom, right }));
  }

  private sheetId(sheet: string): string | undefined {
    return this.context.getters.getSheetIdByName(sheet);
  }
}

const TOO_LONG = 'too many cells depend on each other in one chain for the workbench';
const tooLong = (): Cell => new NotSupported('#UNSUPPORTED!', TOO_LONG);

/** Puts the cells below a formula in order where calls have got deep. */
function settle(book: GridBook, start: CellPosition, context: EvalContext, cells: RunningCells): void {
  const { getters } = context;
  const areasOf = (position: CellPosition) => {
    const cell = getters.getCell(position);
    if (!cell?.isFormula) return [];
    const place = { sheet: getters.getSheetName(position.sheetId), row: position.row, column: position.col };
    return book.areas(cell.compiledFormula.toFormulaString(getters), place, cells).flatMap((area) => {
      const sheetId = getters.getSheetIdByName(area.sheet || place.sheet);
      return sheetId === undefined ? [] : [{ ...area, sheetId }];
    });
  };
  new Settling(context, areasOf).below(start);
}

function evaluated(formula: string, context: EvalContext, cells: RunningCells): Cell | Matrix {
  const book = (context as unknown as Record<string, GridBook | undefined>)[BOOK];
  if (!book) return new CellError('#VALUE!', 'no workbook is open');
  const position = context.__originCellPosition;
  const place = { sheet: context.getters.getSheetName(context.__originSheetId), row: position?.row ?? 0, column: position?.col ?? 0 };
  if (book.running >= TOO_DEEP) return tooLong();
  book.running += 1;
  try {
    if (book.running > DEEP && position) settle(book, position, context, cells);
    return book.evaluate(formula, place, cells);
  } catch (thrown) {
    if (isStackOverflow(thrown)) return tooLong();
    return new CellError('#VALUE!', 'internal fault: no result; please report the formula');
  } finally {
    book.running -= 1;
  }
}

/** Runs a formula of the grid. Never throws: what cannot be worked out is an error cell with words. */
export function runInGrid(formula: string, context: EvalContext): ReturnType<typeof resultToGrid> {
  const cells = new RunningCells(context);
  const result = resultToGrid(evaluated(formula, context, cells));
  // Told at the end: telling makes the grid work these cells out, which this formula has already asked for.
  if (cells.needed.length > 0 && context.__originCellPosition) context.addDependencies?.(context.__originCellPosition, cells.needed);
  return result;
}
