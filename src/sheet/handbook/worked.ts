import { CellError, type Cell } from '../../functions/kernel/cell';
import { customFunctions } from '../custom-functions';
import { compile, emptyWorkbook, evaluate } from '../evaluate';
import { roundedCell } from '../rounded-cell';
import type { Worked } from './content';

/** A page is read, not computed with: figures are rounded, which also keeps it the same on every machine. */
const DIGITS = 7;

const cellText = (cell: Cell): string => {
  if (cell instanceof CellError && cell.message !== '') return `${cell.code} ${cell.message}`;
  return roundedCell(cell, DIGITS) || '(empty)';
};

/** Works an example of a declaration out, as a cell without any sheet around it; a spill as its rows. */
export const worked: Worked = (formula) => {
  const value = evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions: customFunctions, sheet: '', row: 0, column: 0 });
  return Array.isArray(value) ? value.map((row) => row.map(cellText).join(' | ')).join('\n') : cellText(value);
};
