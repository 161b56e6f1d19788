import type { Style } from 'exceljs';
import { EXAMPLE, INPUT } from '../look';
import type { Column } from '../table';

/** A reference to the row's cell of a column. */
export const own = (column: string): string => `[@${/[^A-Za-z0-9_]/.test(column) ? `[${column}]` : column}]`;

/** An argument that may be left blank: handed on as blank, never as 0. */
export const given = (column: string): string => `IF(${own(column)}="","",${own(column)})`;

/** The formula where the cell is filled; a space else, which reads as a blank row and as a blank to the functions. */
export const where = (column: string, formula: string): string => `IF(${own(column)}=""," ",${formula})`;

/** Worked columns that keep still until the row's key is filled. */
export const whereFilled = (key: string, columns: readonly Column[]): Column[] =>
  columns.map((column) => (column.formula === undefined ? column : { ...column, formula: where(key, column.formula) }));

/** Blank rows behind the examples. */
export const BLANK_ROWS = 8;

/** The examples and blank rows for all typed columns. */
export function starterRows(columns: readonly Column[], examples: readonly (readonly (string | number)[])[], blank = BLANK_ROWS): (string | number)[][] {
  const typed = columns.filter(({ formula }) => formula === undefined).length;
  for (const row of examples) if (row.length !== typed) throw new Error(`an example has ${row.length} cells, its table takes ${typed}`);
  return [...examples.map((row) => [...row]), ...Array.from({ length: blank }, () => Array<string>(typed).fill(''))];
}

export const exampleLook = (examples: number) => (row: number): Partial<Style> => (row < examples ? EXAMPLE : INPUT);
