import { tokenize } from '@borgar/fx/xlsx';
import type { Cell, Matrix } from '../../functions/kernel/cell';
import { spread } from '../../sheet/calculate/results';
import { BookNames } from '../../sheet/calculate/names';
import { referencesIn } from '../../sheet/calculate/references-in';
import { refusalRule } from '../../sheet/calculate/refusal-rule';
import { customFunctions } from '../../sheet/custom-functions';
import type { Area } from '../../sheet/evaluate/area';
import { type Compiled, NotSupported, compile, evaluate } from '../../sheet/evaluate';
import { TOKENS } from '../../sheet/formula/shift';
import { type Box, addressOf, oneCell } from '../../sheet/xlsx/address';
import type { WorkbookFacts } from '../../sheet/xlsx/workbook';
import { GridWorkbook } from './grid-workbook';
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
function confined(result: Cell | Matrix, box: Box): Cell | Matrix {
  const cell = spread(box, result, false);
  if (oneCell(box)) return cell(0, 0);
  return Array.from({ length: box.bottom - box.top + 1 }, (_, row) => Array.from({ length: box.right - box.left + 1 }, (__, column) => cell(row, column)));
}

/** The open workbook behind the grid: its names and tables, and the one evaluator for all formulas. */
export class Book implements GridBook {
  running = 0;
  private readonly compiled = new Map<string, Ready>();
  private readonly names: BookNames;
  private readonly refusalOf: (formula: string) => string | undefined;

  constructor(facts: WorkbookFacts, private readonly stored: ReadonlyMap<string, StoredFormula>, private readonly filters: ReadonlyMap<string, readonly Box[]> = new Map()) {
    this.names = new BookNames(facts);
    this.refusalOf = refusalRule(facts);
  }

  /** How the formula of a cell stands there, if it is still the one of the file. */
  storedFormula(formula: string, { sheet, row, column }: FormulaPlace): StoredFormula | undefined {
    const found = this.stored.get(cellKey(sheet, row, column));
    return found?.formula === formula ? found : undefined;
  }

  evaluate(formula: string, place: FormulaPlace, cells: GridCells): Cell | Matrix {
    const text = formula.replace(/^=/, '');
    const refusal = this.refusalOf(text);
    if (refusal !== undefined) return new NotSupported('#UNSUPPORTED!', refusal);
    const stored = this.storedFormula(formula, place);
    const { compiled, readsMore } = this.ready(text, stored?.mode === 'plain');
    const workbook = new GridWorkbook(cells, this.names, place, readsMore, this.filters);
    const result = evaluate(compiled, { workbook, functions: customFunctions, sheet: place.sheet, row: place.row, column: place.column, now: new Date() });
    workbook.noteReads();
    return stored?.mode === 'fixed' ? confined(result, stored.box) : result;
  }

  areas(formula: string, { sheet, row, column }: FormulaPlace, cells: GridCells): readonly Area[] {
    const workbook = new GridWorkbook(cells, this.names, { sheet, row, column }, false, this.filters);
    return referencesIn(formula.replace(/^=/, ''), { workbook, functions: customFunctions, sheet, row, column });
  }

  private ready(formula: string, oneCellOnly: boolean): Ready {
    const key = `${oneCellOnly ? '1' : '*'}${formula}`;
    let found = this.compiled.get(key);
    if (!found) {
      const compiled = compile(formula, { oneCell: oneCellOnly });
      found = { compiled, readsMore: compiled.volatile || makesRanges(formula) };
      if (this.compiled.size >= COMPILED_AT_MOST) this.compiled.clear();
      this.compiled.set(key, found);
    }
    return found;
  }
}

interface Ready {
  readonly compiled: Compiled;
  /** It can read cells that its text does not name. */
  readonly readsMore: boolean;
}

/** These read as many cells from their last argument as from their first, however many it names. */
const STRETCHING = /\b(?:SUMIF|AVERAGEIF)\s*\(/i;

/** Whether a formula makes ranges while it runs, as `A1:INDEX(C:C,5)` does. */
const makesRanges = (formula: string): boolean =>
  STRETCHING.test(formula) || (formula.includes(':') && tokenize(`=${formula}`, TOKENS).some(({ type, value }) => type === 'operator' && value === ':'));
