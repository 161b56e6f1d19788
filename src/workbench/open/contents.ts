import { CellError } from '../../functions/kernel/cell';
import type { FormulaForms } from '../../sheet/formula/forms';
import { type Box, addressOf, inBox, oneCell, parseBox } from '../../sheet/xlsx/address';
import type { StoredCell } from '../../sheet/xlsx/read-cells';
import { type StoredFormula, cellKey } from '../grid/book';

/** Whether a text, typed into the grid, would become something else: a number, a date, a formula … */
export type ReadsAsOther = (text: string) => boolean;

/** Contents of a sheet as they would be typed into the grid. */
export interface SheetContents {
  readonly cells: Record<string, string>;
  /** How the formulas stand in their cells, by the key of the cell. */
  readonly formulas: Map<string, StoredFormula>;
  /** Places that array formulas fill beyond their own cell. */
  readonly arrays: { readonly anchor: string; readonly box: Box; readonly spills: boolean }[];
}

function constant({ value }: StoredCell, readsAsOther: ReadsAsOther): string | undefined {
  if (value === null) return undefined;
  if (typeof value === 'string') return readsAsOther(value) ? `'${value}` : value;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return value instanceof CellError ? value.code : String(value).toUpperCase();
}

function storedFormula({ formula, arrayRef, dynamic, row, column }: StoredCell, forms: FormulaForms): StoredFormula {
  const box = (arrayRef === null ? undefined : parseBox(arrayRef)) ?? { top: row, left: column, bottom: row, right: column };
  return { formula: `=${forms.toTyped(formula!)}`, mode: arrayRef === null ? 'plain' : dynamic ? 'spilling' : 'fixed', box };
}

export function sheetContents(sheet: string, stored: readonly StoredCell[], forms: FormulaForms, readsAsOther: ReadsAsOther): SheetContents {
  const contents: SheetContents = { cells: {}, formulas: new Map(), arrays: [] };
  for (const cell of stored) {
    if (cell.formula === null) continue;
    const formula = storedFormula(cell, forms);
    contents.formulas.set(cellKey(sheet, cell.row, cell.column), formula);
    if (!oneCell(formula.box)) contents.arrays.push({ anchor: cell.address, box: formula.box, spills: formula.mode === 'spilling' });
  }
  const filledByArray = ({ row, column, address }: StoredCell): boolean => contents.arrays.some(({ box, anchor }) => anchor !== address && inBox(box, row, column));
  for (const cell of stored) {
    const formula = cell.formula === null ? undefined : contents.formulas.get(cellKey(sheet, cell.row, cell.column));
    const content = formula?.formula ?? (filledByArray(cell) ? undefined : constant(cell, readsAsOther));
    if (content !== undefined) contents.cells[addressOf(cell.row, cell.column)] = content;
  }
  return contents;
}
