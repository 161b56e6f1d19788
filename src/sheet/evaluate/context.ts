import type { Argument, Cell, CellError, Matrix } from '../../functions/kernel/cell';
import type { Reference } from './references';
import type { Value } from './values';

/** The sheets a formula refers to. Rows and columns count from 0. What it throws other than a CellError passes through the evaluator untouched. */
export interface Workbook {
  /** Value of a cell; null where it is blank, an error with its words where there is no such sheet. */
  get(sheet: string, row: number, column: number): Cell;
  /** Last row and column that hold anything; an error with its words where there is no such sheet. */
  used(sheet: string): readonly [lastRow: number, lastColumn: number] | CellError;
  /** A defined name (`Vn`, `Sheet1!Vn`): reference, value, or LAMBDA; `#NAME?` where it is not defined. */
  named(context: Context, name: string): Value;
  /** A structured reference (`cables[csa_mm2]`, `[@In]`). */
  structured(context: Context, text: string): Value;
  /** The range that the formula in the cell spills over (`A1#`). */
  spill(reference: Reference): Value;
  /** Formula text of a cell, if it has one: SUBTOTAL leaves out cells that are subtotals themselves. */
  formula?(sheet: string, row: number, column: number): string | undefined;
  /** Whether a row is out of sight, and by what: SUBTOTAL leaves out filtered rows. Without it no row is hidden. */
  hidden?(sheet: string, row: number): 'filter' | 'hand' | undefined;
}

/** What a custom function is given: left out → undefined, blank cell → null, several cells → rows of cells, errors as they are. */
export type CustomFunction = (args: Argument[]) => Cell | Matrix;

export interface CustomFunctions {
  /** The function of this name as it stands in the formula, in any form and case that the host knows. */
  find(name: string): CustomFunction | undefined;
}

/** Where a formula stands and what it may use. */
export interface Context {
  readonly workbook: Workbook;
  readonly functions: CustomFunctions;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** The cell that the formula's text was written for, where this one shares it: references without $ move along. */
  readonly writtenFor?: { readonly row: number; readonly column: number } | undefined;
  /** Clock of TODAY and NOW, local time. Without it both are refused. */
  readonly now?: Date | undefined;
}
