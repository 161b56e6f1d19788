import { type Cell, CellError, type ErrorCode, type Matrix } from '../../functions/kernel/cell';
import { NotSupported } from '../../sheet/evaluate/errors';
import { STORABLE_ERRORS } from '../../sheet/xlsx/read-cells';
import type { GridResult } from './library';

/**
 * Cells between the grid and the evaluator. The grid takes any error code that it knows of, so the codes of Excel
 * are made known to it and nothing is translated, save the few that the grid makes itself.
 */

const OWN_CODES: Readonly<Record<string, ErrorCode>> = { '#ERROR': '#VALUE!', '#REF': '#REF!', '#BAD_EXPR': '#NAME?', '#CYCLE': '#CYCLE!' };
const EXCEL_CODES: readonly ErrorCode[] = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A', '#SPILL!', '#CALC!', '#CYCLE!', '#UNSUPPORTED!'];

const errorCode = (value: string): ErrorCode | undefined => OWN_CODES[value] ?? EXCEL_CODES.find((code) => code === value);

/** Makes the error codes of Excel errors for the grid, too. */
export function teachErrorCodes(errorTypes: Set<string>): void {
  for (const code of EXCEL_CODES) errorTypes.add(code);
}

const CYCLE = 'the formula refers to itself, directly or over other cells';

/** So end the words of the evaluator for what it does not know, and only those. */
const NOT_SUPPORTED = /not supported here$/;

/** What cannot be worked out here stays that on its way over other cells: IFERROR there must not paper over it. */
function errorFrom(code: ErrorCode, message: string | undefined): CellError {
  if (code === '#UNSUPPORTED!' || (message !== undefined && NOT_SUPPORTED.test(message))) return new NotSupported(code, message);
  return new CellError(code, code === '#CYCLE!' ? CYCLE : message ?? '');
}

/** What a cell of the grid holds; `isError` tells an error from a text that looks like one. */
export function cellFromGrid({ value, message }: GridResult, isError: boolean): Cell {
  if (typeof value === 'string' && isError) return errorFrom(errorCode(value) ?? '#VALUE!', message);
  return value ?? null;
}

/** Whether a value is one that a file may store for a formula; false for all that is not worked out here. */
export const isWorkedOut = (cell: Cell): boolean => !(cell instanceof CellError) || (!(cell instanceof NotSupported) && STORABLE_ERRORS.has(cell.code));

/** What the grid takes for an error or a link though the cell holds a plain text; undefined for any other cell. */
export function plainText(shown: { type?: string; link?: unknown }, cell: { isFormula: boolean; content?: string } | undefined): string | undefined {
  if (cell === undefined || cell.isFormula || cell.content === undefined) return undefined;
  if (shown.link !== undefined) return cell.content.replace(/^'/, '');
  return shown.type === 'error' && cell.content.startsWith("'") ? cell.content.slice(1) : undefined;
}

/** Words for errors that come without any. */
const PLAIN_WORDS: Partial<Record<ErrorCode, string>> = {
  '#VALUE!': 'wrong kind of value', '#NUM!': 'a number is out of range', '#DIV/0!': 'division by zero', '#N/A': 'not available',
  '#REF!': 'the reference leads nowhere', '#NAME?': 'a name that is not known', '#NULL!': 'ranges without common cells', '#CALC!': 'an empty array',
};

function cellToGrid(cell: Cell): GridResult {
  if (cell instanceof CellError) return { value: cell.code, message: cell.message || PLAIN_WORDS[cell.code] || cell.code };
  if (typeof cell === 'number' && !Number.isFinite(cell)) return { value: '#NUM!', message: PLAIN_WORDS['#NUM!']! };
  return { value: cell };
}

/** Results as the grid takes them: columns of cells. */
export function resultToGrid(result: Cell | Matrix): GridResult | GridResult[][] {
  if (!Array.isArray(result)) return cellToGrid(result);
  const width = result[0]?.length ?? 0;
  return Array.from({ length: width }, (_, column) => result.map((row) => cellToGrid(row[column] ?? null)));
}
