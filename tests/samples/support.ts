import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Argument, Cell, Matrix } from '../../src/functions/kernel/cell';
import { call } from '../../src/functions/kernel/call';
import { isOurName } from '../../src/functions/kernel/catalogue';
import { type Book, openBook } from '../../src/sheet/book';
import { catalogue } from '../../src/sheet/catalogue';
import { customFunctions } from '../../src/sheet/custom-functions';
import type { CustomFunctions } from '../../src/sheet/evaluate';
import { addressOf } from '../../src/sheet/xlsx/address';
import type { CellEdit } from '../../src/sheet/xlsx/edit';
import { patchWorkbook } from '../../src/sheet/xlsx/patch-workbook';
import { openWorkbook } from '../../src/sheet/xlsx/workbook';

export const SAMPLES = ['cable-schedule', 'estimator', 'engineer', 'checker', 'starter'] as const;
export type Sample = (typeof SAMPLES)[number];

export const fileOf = (sample: Sample): string => path.resolve(__dirname, '../../sample-workbooks', `${sample}.xlsx`);
export const bytesOf = (sample: Sample): Uint8Array => new Uint8Array(readFileSync(fileOf(sample)));
/** As stored; nothing is computed anew. */
export const bookOf = (sample: Sample): Book => openBook(bytesOf(sample), customFunctions);

const factsOf = (book: Book, name: string) => {
  const facts = book.workbook.facts.tables.find((one) => one.name === name);
  if (!facts) throw new Error(`no table ${name}`);
  return facts;
};

/** Rows of a table by its headings, as the book holds them. */
export function tableOf(book: Book, name: string): Record<string, Cell>[] {
  const { box, columns, sheet } = factsOf(book, name);
  return Array.from({ length: box.bottom - box.top }, (_, row) =>
    Object.fromEntries(columns.map((column, i) => [column.name, book.value(sheet, addressOf(box.top + 1 + row, box.left + i))])));
}

/** A cell of a table, by the first cell of its row and its heading. */
export function cellOf(book: Book, name: string, key: Cell, column: string): { sheet: string; address: string } {
  const { box, columns, sheet } = factsOf(book, name);
  const row = tableOf(book, name).findIndex((cells) => cells[columns[0]!.name] === key);
  const place = columns.findIndex((one) => one.name === column);
  if (row < 0 || place < 0) throw new Error(`${name} has no row ${String(key)} or no column ${column}`);
  return { sheet, address: addressOf(box.top + 1 + row, box.left + place) };
}

/** The file with a few typed cells changed, computed anew. */
export function changedBook(sample: Sample, edits: readonly { sheet: string; address: string; value: Cell }[]): Book {
  const bySheet = new Map<string, Map<string, CellEdit>>();
  for (const { sheet, address, value } of edits) bySheet.set(sheet, (bySheet.get(sheet) ?? new Map<string, CellEdit>()).set(address, { value }));
  const book = openBook(patchWorkbook(openWorkbook(bytesOf(sample)), bySheet), customFunctions);
  book.recalculate();
  return book;
}

const withZeros = (argument: Argument): Argument => (Array.isArray(argument) ? (argument as Matrix).map((row) => row.map((cell) => cell ?? 0)) : argument);

/** The functions as desktop Excel calls them: a blank cell arrives as the number 0. */
export const desktopFunctions: CustomFunctions = {
  find: (name) => {
    const entry = isOurName(name) ? catalogue.find(name) : undefined;
    return entry && ((args) => call(catalogue, entry, args.map((argument) => withZeros(argument ?? 0)), { blankArrivesAsZero: true }).value);
  },
};
