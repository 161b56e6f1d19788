import { Refusal, type RefusalCode } from '../refusal';

/** What is wrong with a row of a table: the note that stands on it, and what a question about that row answers with. */
export interface RowFault {
  readonly note: string;
  /** A refusal, or an error that a cell of the row brought with it. */
  readonly error: Error;
}

export const rowFault = (code: RefusalCode, note: string): RowFault => ({ note, error: new Refusal({ code, problem: note }) });

/** The fault as the answer to a question: its table and row named, errors of cells as they are. */
export function faultOfRow(table: string, row: number, { error }: RowFault): Error {
  if (!(error instanceof Refusal)) return error;
  return new Refusal({ code: error.code, problem: `${table} row ${row}: ${error.message}` });
}
