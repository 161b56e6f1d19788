import type { Cell, Matrix } from '../../src/functions/kernel/cell';
import { customFunctions } from '../../src/sheet/custom-functions';
import { compile, emptyWorkbook, evaluate } from '../../src/sheet/evaluate';

/** Value of a typed formula that refers to no sheet. */
export const valueOf = (formula: string): Cell | Matrix =>
  evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions: customFunctions, sheet: '', row: 0, column: 0 });
