import type { Cell } from '../../../functions/kernel/cell';
import { attempt, isError, raise } from '../errors';
import { Lambda, type Value, dereference, isArray, isReferenceLike, toNumber } from '../values';
import { type CellFunction, type FunctionTable, cells, whole } from './definition';

/** A question about a cell: errors are looked at, not passed on. */
const question = (answer: (cell: Cell) => boolean): CellFunction => cells([1, 1], (cell) => answer(cell ?? null), { takesErrors: true });

const ERROR_NUMBERS: Readonly<Record<string, number>> = {
  '#NULL!': 1, '#DIV/0!': 2, '#VALUE!': 3, '#REF!': 4, '#NAME?': 5, '#NUM!': 6, '#N/A': 7, '#SPILL!': 9, '#CALC!': 14,
};

function errorNumber(cell: Cell | undefined): number {
  return (isError(cell) ? ERROR_NUMBERS[cell.code] : undefined) ?? raise('#N/A', 'not an error');
}

function typeOf(value: Value): number {
  if (value instanceof Lambda) return 128;
  const read = attempt(() => dereference(value));
  if (isArray(read)) return 64;
  if (isError(read)) return 16;
  return typeof read === 'boolean' ? 4 : typeof read === 'string' ? 2 : 1;
}

const isWholeParity = (cell: Cell | undefined, parity: 0 | 1): boolean => {
  if (typeof cell === 'boolean') return raise('#VALUE!', 'takes a number');
  return Math.abs(Math.trunc(toNumber(cell)) % 2) === parity;
};

function asNumber(cell: Cell | undefined): number {
  if (isError(cell)) throw cell;
  return typeof cell === 'number' ? cell : cell === true ? 1 : 0;
}

export const informationFunctions: FunctionTable = {
  NA: cells([0, 0], () => raise('#N/A')),
  ISBLANK: question((cell) => cell === null),
  ISNUMBER: question((cell) => typeof cell === 'number'),
  ISTEXT: question((cell) => typeof cell === 'string'),
  ISNONTEXT: question((cell) => typeof cell !== 'string'),
  ISLOGICAL: question((cell) => typeof cell === 'boolean'),
  ISERROR: question(isError),
  ISERR: question((cell) => isError(cell) && cell.code !== '#N/A'),
  ISNA: question((cell) => isError(cell) && cell.code === '#N/A'),
  ISEVEN: cells([1, 1], (cell) => isWholeParity(cell, 0)),
  ISODD: cells([1, 1], (cell) => isWholeParity(cell, 1)),
  ISREF: whole([1, 1], ([value]) => isReferenceLike(value), { takesErrors: true }),
  'ERROR.TYPE': cells([1, 1], errorNumber, { takesErrors: true }),
  TYPE: whole([1, 1], ([value]) => typeOf(value), { takesErrors: true }),
  N: cells([1, 1], asNumber),
};
