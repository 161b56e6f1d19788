import { columnLetters } from '../evaluate/references';

/** A rectangle of cells; rows and columns count from 0, both ends belong to it. */
export interface Box {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

/** `C5` for row 4, column 2. */
export const addressOf = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** Row and column of `C5` or `$C$5`; undefined where the text is no cell of a sheet. */
export function parseAddress(text: string): { row: number; column: number } | undefined {
  let at = 0;
  let column = 0;
  if (text.charCodeAt(at) === 36) at++;
  const letters = at;
  for (let code = text.charCodeAt(at) & ~32; code >= 65 && code <= 90; code = text.charCodeAt(++at) & ~32) column = column * 26 + code - 64;
  if (at === letters || at - letters > 3) return undefined;
  if (text.charCodeAt(at) === 36) at++;
  const digits = at;
  let row = 0;
  for (let code = text.charCodeAt(at); code >= 48 && code <= 57; code = text.charCodeAt(++at)) row = row * 10 + code - 48;
  if (at === digits || at !== text.length || at - digits > 7 || row === 0) return undefined;
  return row - 1 <= LAST_ROW && column - 1 <= LAST_COLUMN ? { row: row - 1, column: column - 1 } : undefined;
}

/** The rectangle of `A1:C5` or `A1`; undefined where the text is none. */
export function parseBox(text: string): Box | undefined {
  const [first, second = first, ...more] = text.split(':');
  const [a, b] = [parseAddress(first ?? ''), parseAddress(second ?? '')];
  if (!a || !b || more.length > 0) return undefined;
  return { top: Math.min(a.row, b.row), left: Math.min(a.column, b.column), bottom: Math.max(a.row, b.row), right: Math.max(a.column, b.column) };
}

export function boxText({ top, left, bottom, right }: Box): string {
  const first = addressOf(top, left);
  return top === bottom && left === right ? first : `${first}:${addressOf(bottom, right)}`;
}

export const inBox = (box: Box, row: number, column: number): boolean => row >= box.top && row <= box.bottom && column >= box.left && column <= box.right;

export const oneCell = (box: Box): boolean => box.top === box.bottom && box.left === box.right;
