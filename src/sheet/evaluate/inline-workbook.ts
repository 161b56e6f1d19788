import { CellError } from '../../functions/kernel/cell';
import type { Workbook } from './context';
import { raise } from './errors';
import { columnLetters } from './references';

const noWorkbook = (what: string): CellError => new CellError('#REF!', `no workbook: ${what} cannot be read`);

/** For a formula on its own: whatever refers to a cell, name or table is an error that says so. */
export const emptyWorkbook: Workbook = {
  get: (_sheet, row, column) => noWorkbook(`${columnLetters(column)}${row + 1}`),
  used: () => new CellError('#REF!', 'no workbook'),
  named: (_context, name) => raise('#NAME?', `no workbook: the name ${name} is not defined`),
  structured: (_context, text) => raise('#REF!', `no workbook: ${text} cannot be read`),
  spill: (reference) => raise('#REF!', `no workbook: ${reference.address}# cannot be read`),
};
