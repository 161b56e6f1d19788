import { type Cell, CellError, type ErrorCode, type Matrix } from '../functions/kernel/cell';

/** The part of Excel's runtime that errors need. It exists only after Excel's own script has loaded, so it is looked up at the call. */
export interface ExcelErrors {
  Error: new (code: string, message?: string) => Error;
  ErrorCode: Readonly<Record<'invalidValue' | 'notAvailable' | 'divisionByZero' | 'invalidNumber' | 'nullReference', string>>;
}

/** What may leave for Excel. */
export type Returned = number | string | boolean | Error;

/** Characters that a cell of Excel holds. */
const CELL_TEXT_LIMIT = 32767;

/**
 * Excel keeps the message of #VALUE! and #N/A only. Codes that it would turn into #VALUE! go out as #VALUE!
 * with the code in words, so that the reader knows which error stood in the argument.
 */
function errorOf({ code, message }: CellError, { Error: ExcelError, ErrorCode }: ExcelErrors): Error {
  const plain: Partial<Record<ErrorCode, string>> = { '#DIV/0!': ErrorCode.divisionByZero, '#NUM!': ErrorCode.invalidNumber, '#NULL!': ErrorCode.nullReference };
  if (code === '#VALUE!') return message === '' ? new ExcelError(ErrorCode.invalidValue) : new ExcelError(ErrorCode.invalidValue, message);
  if (code === '#N/A') return message === '' ? new ExcelError(ErrorCode.notAvailable) : new ExcelError(ErrorCode.notAvailable, message);
  const same = plain[code];
  if (same !== undefined) return new ExcelError(same);
  return new ExcelError(ErrorCode.invalidValue, message === '' ? `${code} in an argument` : `${code} in an argument: ${message}`);
}

/** One cell on its way out. A blank, NaN or infinity would show as 0 in Excel, so each becomes an error. */
function returnedCell(cell: Cell, errors: ExcelErrors): Returned {
  if (cell instanceof CellError) return errorOf(cell, errors);
  if (typeof cell === 'number') return Number.isFinite(cell) ? cell : errorOf(new CellError('#NUM!'), errors);
  if (typeof cell === 'boolean') return cell;
  if (typeof cell !== 'string') return errorOf(new CellError('#VALUE!', 'internal fault: no result; please report the call'), errors);
  if (cell.length > CELL_TEXT_LIMIT) return errorOf(new CellError('#VALUE!', `the text has ${cell.length} characters, a cell holds ${CELL_TEXT_LIMIT}`), errors);
  return cell;
}

/** The gate that every result passes. Throws the error of a single cell, as Excel expects; errors inside a spill stay in their cells. */
export function toExcel(value: Cell | Matrix, errors: ExcelErrors, spill: boolean): Returned | Returned[][] {
  if (!Array.isArray(value)) {
    const returned = returnedCell(value, errors);
    if (returned instanceof Error) throw returned;
    return spill ? [[returned]] : returned;
  }
  const width = Math.max(0, ...value.map((row) => row.length));
  if (width === 0) throw errorOf(new CellError('#N/A', 'the table is empty'), errors);
  return value.map((row) => Array.from({ length: width }, (_, i) => returnedCell(i < row.length ? row[i]! : '', errors)));
}
