import type { Cell, Matrix } from '../../functions/kernel/cell';
import { isError, raise, refuse } from './errors';
import { dependsOnLanguage, numberInText, textOfNumber } from './number-text';
import { Reference, Union } from './references';

/** A function value: what LAMBDA makes, called with its arguments. */
export class Lambda {
  constructor(readonly parameters: number, readonly call: (args: Value[]) => Value) {}
}

/** What an expression gives: a cell value, an array, a live reference, a function; undefined is an argument left out. */
export type Value = Cell | Matrix | Reference | Union | Lambda | undefined;

export const isArray = (value: Value): value is Matrix => Array.isArray(value);

/** References read: a cell, or rows of cells. */
export function dereference(value: Value): Cell | Matrix {
  if (value instanceof Reference) return value.value();
  if (typeof value !== 'object') return value ?? null;
  if (value instanceof Union) return raise('#VALUE!', 'several areas where one is taken');
  if (value instanceof Lambda) return raise('#CALC!', 'a LAMBDA that is not called');
  return value;
}

/** Rows of cells, whatever it was. */
export function matrixOf(value: Value): Matrix {
  const cells = dereference(value);
  return isArray(cells) ? cells : [[cells]];
}

/** A single cell; of an array its first. */
export function cellOf(value: Value): Cell {
  const cells = dereference(value);
  return isArray(cells) ? cells[0]?.[0] ?? null : cells;
}

const quoted = (text: string): string => `"${text.length > 40 ? `${text.slice(0, 37)}…` : text}"`;

export function toNumber(cell: Cell | undefined): number {
  if (typeof cell === 'number') return cell;
  if (cell === null || cell === undefined) return 0;
  if (typeof cell === 'boolean') return cell ? 1 : 0;
  if (isError(cell)) throw cell;
  return numberOf(cell, 'a number');
}

/** The number that a text stands for; `what` says what it should have been. */
export function numberOf(text: string, what: string): number {
  return numberInText(text) ?? (dependsOnLanguage(text)
    ? refuse(`whether ${quoted(text)} is ${what}, and which, hangs on the language of the program: not supported here`)
    : raise('#VALUE!', `${quoted(text)} is not ${what}`));
}

/** A number cut to a whole one, as most positions and counts are read. */
export const toWhole = (cell: Cell | undefined): number => Math.trunc(toNumber(cell));

export function toText(cell: Cell | undefined): string {
  if (typeof cell === 'string') return cell;
  if (cell === null || cell === undefined) return '';
  if (typeof cell === 'number') return textOfNumber(cell);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  throw cell;
}

export function toTruth(cell: Cell | undefined): boolean {
  if (typeof cell === 'boolean') return cell;
  if (typeof cell === 'number') return cell !== 0;
  if (cell === null || cell === undefined) return false;
  if (isError(cell)) throw cell;
  const upper = cell.toUpperCase();
  if (upper === 'TRUE') return true;
  return upper === 'FALSE' ? false : raise('#VALUE!', `${quoted(cell)} is not TRUE or FALSE`);
}

/** A result that must be a number a cell can hold. */
export function finite(value: number): number {
  return Number.isFinite(value) ? value : raise('#NUM!', 'the result is not a number or too large');
}

/** Every cell of a value, row by row; blanks included. */
export function cellsOf(value: Value): Cell[] {
  if (value instanceof Union) return value.areas.flatMap((area) => cellsOf(area));
  const cells = dereference(value);
  return isArray(cells) ? cells.flat() : [cells];
}

/** Declared size: a whole column counts all its rows, whatever is filled. */
export function sizeOf(value: Value): { rows: number; columns: number } {
  if (value instanceof Reference) return { rows: value.rows, columns: value.columns };
  if (isArray(value)) return { rows: value.length, columns: value[0]?.length ?? 0 };
  return { rows: 1, columns: 1 };
}

export function isReferenceLike(value: Value): value is Reference | Union {
  return value instanceof Reference || value instanceof Union;
}
