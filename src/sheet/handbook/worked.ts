import { complex, complexText, parseComplex } from '../../core/complex';
import { rounded } from '../../core/figure';
import { CellError, type Cell } from '../../functions/kernel/cell';
import { customFunctions } from '../custom-functions';
import { compile, emptyWorkbook, evaluate } from '../evaluate';
import type { Worked } from './content';

/** A page is read, not computed with: figures are rounded, which also keeps it the same on every machine. */
const DIGITS = 7;

function textOf(text: string): string {
  const z = /[ij]$/.test(text) ? parseComplex(text) : undefined;
  return z ? complexText(complex(Number(z.re.toPrecision(DIGITS)), Number(z.im.toPrecision(DIGITS)))) : text;
}

const cellText = (cell: Cell): string => {
  if (cell instanceof CellError) return cell.message === '' ? cell.code : `${cell.code} ${cell.message}`;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (typeof cell === 'number') return Number.isInteger(cell) ? String(cell) : rounded(cell, DIGITS);
  return cell === null || cell === '' ? '(empty)' : textOf(cell);
};

/** Works an example of a declaration out, as a cell without any sheet around it; a spill as its rows. */
export const worked: Worked = (formula) => {
  const value = evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions: customFunctions, sheet: '', row: 0, column: 0 });
  return Array.isArray(value) ? value.map((row) => row.map(cellText).join(' | ')).join('\n') : cellText(value);
};
