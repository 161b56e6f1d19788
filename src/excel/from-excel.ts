import { type Argument, type Cell, CellError, type ErrorCode, type Matrix } from '../functions/kernel/cell';
import type { Member } from '../functions/kernel/declaration';

/**
 * Values as Excel hands them to a custom function. Platforms differ: a blank is null, an empty text, an object of
 * type Empty or, on desktop, the number 0 (the functions know that); an error is an instance of CustomFunctions.Error
 * or a plain object; a number with a format is an object with basicValue.
 */

const CODES: readonly ErrorCode[] = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A', '#SPILL!', '#CALC!'];
const errorCode = (value: unknown): ErrorCode => CODES.find((code) => code === value) ?? '#VALUE!';

interface DataType {
  type?: unknown;
  basicType?: unknown;
  basicValue?: unknown;
  code?: unknown;
  message?: unknown;
}

function ofDataType(value: DataType): Cell {
  const types = [value.type, value.basicType];
  if (value instanceof Error || types.includes('Error') || types.includes('CustomFunctionError')) {
    return new CellError(errorCode(value.basicValue ?? value.code), typeof value.message === 'string' ? value.message : '');
  }
  if (types.includes('Empty')) return null;
  const { basicValue } = value;
  if (typeof basicValue === 'number' || typeof basicValue === 'string' || typeof basicValue === 'boolean') return cellOf(basicValue);
  return new CellError('#VALUE!', 'the cell holds a data type, takes a number, text or truth value');
}

/** One cell. */
export function cellOf(value: unknown): Cell {
  switch (typeof value) {
    case 'number':
      return Number.isFinite(value) ? value : new CellError('#NUM!', 'the cell holds no finite number');
    case 'string':
    case 'boolean':
      return value;
    case 'undefined':
      return null;
    case 'object':
      return value === null ? null : ofDataType(value);
    default:
      return new CellError('#VALUE!', 'the cell holds no number, text or truth value');
  }
}

const matrixOf = (rows: readonly unknown[]): Matrix => rows.map((row) => (Array.isArray(row) ? row.map(cellOf) : [cellOf(row)]));

/** One argument: a single cell, or rows of cells. Left out, it arrives as null. */
export const argumentOf = (value: unknown): Argument => {
  if (!Array.isArray(value)) return cellOf(value);
  return value.length === 0 ? null : matrixOf(value);
};

const isInvocation = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !(value instanceof Error) && !('type' in value) && !('basicType' in value);

/** All arguments behind the fixed ones, which Excel hands over as one array of them. */
function repeatingOf(value: unknown): Argument[] {
  if (value === null || value === undefined) return [];
  if (!Array.isArray(value)) return [cellOf(value)];
  // Nothing typed for it arrives as one null on some platforms; a blank cell arrives as a range of one.
  return value.length === 1 && value[0] === null ? [] : value.map(argumentOf);
}

/**
 * The arguments of a call. The last that Excel hands over is its invocation object, whatever was typed.
 */
export function argumentsOf(member: Member, handed: readonly unknown[]): Argument[] {
  const kinds = Object.values(member.parameters);
  const shown = handed.length > kinds.length || isInvocation(handed[handed.length - 1]) ? handed.slice(0, -1) : handed;
  const argv = kinds.flatMap((kind, place) => (kind.shape === 'repeating' ? repeatingOf(shown[place]) : [argumentOf(shown[place])]));
  return [...argv, ...shown.slice(kinds.length).map(argumentOf)];
}
