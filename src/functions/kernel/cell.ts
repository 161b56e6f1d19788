/**
 * What a worksheet hands to a function and takes back from it. Every host maps its own cell values to these
 * before it calls a function, so that the functions see one shape only.
 */

export type ErrorCode =
  | '#NULL!' | '#DIV/0!' | '#VALUE!' | '#REF!' | '#NAME?' | '#NUM!' | '#N/A' | '#SPILL!' | '#CALC!' | '#CYCLE!' | '#UNSUPPORTED!';

/** An error in a cell, with the reason where the host keeps one. */
export class CellError {
  constructor(readonly code: ErrorCode, readonly message = '') {}
}

/** One cell. `null` is a blank cell; an empty text is not blank for the host, though our functions read it as one. */
export type Cell = number | string | boolean | null | CellError;

/** Rows of cells, all of one length. */
export type Matrix = Cell[][];

/** One argument of a call; `undefined` where it was left out. */
export type Argument = Cell | Matrix | undefined;

export const isMatrix = (value: Argument): value is Matrix => Array.isArray(value);
