import { missing, wrongValue } from '../../core/refusal';
import { type Argument, type Cell, CellError, isMatrix } from './cell';
import { PassedError } from './kind';

/** Blank as people mean it: an empty cell, an argument left out, empty text or spaces. */
export const isBlankCell = (cell: Cell | undefined): boolean =>
  cell === null || cell === undefined || (typeof cell === 'string' && cell.trim() === '');

export const isBlank = (argument: Argument): boolean =>
  isMatrix(argument) ? argument.every((row) => row.every(isBlankCell)) : isBlankCell(argument);

/** The one cell of an argument; error cells pass through. */
export function oneCell(argument: Argument, name: string): Cell {
  const cell = onlyCell(argument, name);
  if (cell instanceof CellError) throw new PassedError(cell);
  return cell;
}

/** The one cell of an argument, error cells included. */
export function onlyCell(argument: Argument, name: string): Cell {
  if (!isMatrix(argument)) return argument ?? null;
  const count = argument.length * (argument[0]?.length ?? 0);
  if (count !== 1) throw wrongValue(name, `got a range of ${count} cells, takes one cell`);
  return argument[0]![0]!;
}

/** Text as a message shows it: by code points, so that no character is cut in half. */
export const shortened = (text: string): string => (text.length > 40 ? `${[...text.slice(0, 80)].slice(0, 37).join('')}…` : text);

/** A cell as a message shows it. */
export function shownCell(cell: Cell): string {
  if (cell === null) return 'a blank';
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : 'a number that is not finite';
  return `"${shortened(cell.trim())}"`;
}

/** A cell of a range that must hold something. */
export function neededCell(cell: Cell | undefined, name: string): Exclude<Cell, null | CellError> {
  if (cell instanceof CellError) throw new PassedError(cell);
  if (isBlankCell(cell)) throw missing(name);
  return cell as Exclude<Cell, null | CellError>;
}
