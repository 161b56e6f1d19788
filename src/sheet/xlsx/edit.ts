import { type Cell, CellError } from '../../functions/kernel/cell';
import { STORABLE_ERRORS } from './read-cells';
import { refuse } from './refusal';

/**
 * What is to stand in a cell. Whatever is left out stays as it is: `{ value }` alone stores a computed value and touches no formula;
 * `{ value, formula: null }` puts a constant in place of a formula.
 */
export interface CellEdit {
  /** null empties the cell. */
  readonly value?: Cell;
  /** In the form of the file, without `=`; null takes the formula out. */
  readonly formula?: string | null;
  /** The place that an array formula fills, beginning at this cell. */
  readonly arrayRef?: string | null;
  /** The array spills (Excel's dynamic arrays) instead of being confined to its place. Taken with `arrayRef`. */
  readonly dynamic?: boolean;
  readonly style?: number;
}

/** Longest text and formula of a cell (Excel's specifications and limits). */
const LONGEST_TEXT = 32_767;
const LONGEST_FORMULA = 8_192;

/** Refuses what no workbook may hold, before anything is written. */
export function judgeEdit(where: string, { value, formula, style }: CellEdit): void {
  if (typeof value === 'number' && !Number.isFinite(value)) refuse(`${where}: the value is no number that a workbook can hold.`);
  if (typeof value === 'string' && value.length > LONGEST_TEXT) refuse(`${where}: the text has ${value.length} characters; a cell holds up to ${LONGEST_TEXT}.`);
  if (value instanceof CellError && !STORABLE_ERRORS.has(value.code)) refuse(`${where}: ${value.code} cannot be stored in a workbook.`);
  if (style !== undefined && !(Number.isInteger(style) && style >= 0)) refuse(`${where}: ${style} is no cell format.`);
  if (typeof formula !== 'string') return;
  if (formula.trim() === '') refuse(`${where}: the formula is empty.`);
  if (formula.startsWith('=')) refuse(`${where}: a formula is stored without its "=".`);
  if (formula.length > LONGEST_FORMULA) refuse(`${where}: the formula has ${formula.length} characters; a cell holds up to ${LONGEST_FORMULA}.`);
}

/** Whether the edit decides what computes the cell, not only which value is stored. */
export const editsFormula = (edit: CellEdit): boolean => edit.formula !== undefined;
