import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { type Compiled, compile, evaluate } from '../../sheet/evaluate';
import { addressOf } from '../../sheet/xlsx/address';
import type { Box } from '../../sheet/xlsx/address';
import { type BookFacts, GridWorkbook } from './grid-workbook';
import { customFunctions } from '../../sheet/custom-functions';
import type { FormulaPlace, GridBook, GridCells } from './run';

/** How a formula of the file stands in its cell. It holds as long as the cell's formula is the one that was read. */
export interface StoredFormula {
  /** As typed, `=` included. */
  readonly formula: string;
  /** plain: one cell, ranges mean the cell in line; fixed: an array confined to its place; spilling: as if typed today. */
  readonly mode: 'plain' | 'fixed' | 'spilling';
  readonly box: Box;
}

export const cellKey = (sheet: string, row: number, column: number): string => `${sheet.toLowerCase()}!${addressOf(row, column)}`;

const COMPILED_AT_MOST = 50_000;

/** An array cut or filled up to the place that it is confined to, as Excel does. */
export function confined(result: Cell | Matrix, { top, left, bottom, right }: Box): Cell | Matrix {
  const rows = Array.isArray(result) ? result : [[result]];
  const cell = (row: number, column: number): Cell => {
    const line = rows.length === 1 ? rows[0] : rows[row];
    const found = line?.length === 1 ? line[0] : line?.[column];
    return found === undefined ? new CellError('#N/A', 'the array is smaller than its place') : found;
  };
  if (top === bottom && left === right) return cell(0, 0);
  return Array.from({ length: bottom - top + 1 }, (_, row) => Array.from({ length: right - left + 1 }, (__, column) => cell(row, column)));
}

/** The open workbook behind the grid: its names and tables, and the one evaluator for all formulas. */
export class Book implements GridBook {
  private readonly compiled = new Map<string, Compiled>();

  constructor(private readonly facts: BookFacts, private readonly stored: ReadonlyMap<string, StoredFormula>) {}

  /** Formula of a cell that the file brought along, if it is still there. */
  private storedFormula(formula: string, { sheet, row, column }: FormulaPlace): StoredFormula | undefined {
    const found = this.stored.get(cellKey(sheet, row, column));
    return found?.formula === formula ? found : undefined;
  }

  private readonly ready = (formula: string, oneCell = false): Compiled => {
    const key = `${oneCell ? '1' : '*'}${formula}`;
    let found = this.compiled.get(key);
    if (!found) {
      found = compile(formula, { oneCell });
      if (this.compiled.size >= COMPILED_AT_MOST) this.compiled.clear();
      this.compiled.set(key, found);
    }
    return found;
  };

  evaluate(formula: string, place: FormulaPlace, cells: GridCells): Cell | Matrix {
    const stored = this.storedFormula(formula, place);
    const compiled = this.ready(formula.replace(/^=/, ''), stored?.mode === 'plain');
    const workbook = new GridWorkbook(cells, this.facts, this.ready, place, compiled.volatile);
    const result = evaluate(compiled, { workbook, functions: customFunctions, sheet: place.sheet, row: place.row, column: place.column, now: new Date() });
    if (compiled.volatile) workbook.noteReads();
    return stored?.mode === 'fixed' ? confined(result, stored.box) : result;
  }
}
