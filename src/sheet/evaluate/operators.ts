import type { Cell, Matrix } from '../../functions/kernel/cell';
import { broadcast } from './broadcast';
import { compare } from './compare';
import { raise } from './errors';
import { boundedText } from './limits';
import { type Value, dereference, finite, isArray, toNumber, toText } from './values';

/** A sum whose terms cancel but for the last bits is zero in Excel. */
const CANCELLED = 2 ** -49.5;
const settled = (sum: number, a: number, b: number): number =>
  Math.abs(sum) < Math.max(Math.abs(a), Math.abs(b)) * CANCELLED ? 0 : finite(sum);

export const add = (a: number, b: number): number => settled(a + b, a, b);

export function power(base: number, exponent: number): number {
  if (base === 0 && exponent === 0) return raise('#NUM!', '0^0 has no value');
  if (base === 0 && exponent < 0) return raise('#DIV/0!', 'zero to a negative power');
  return finite(base ** exponent);
}

export function divide(a: number, b: number): number {
  return b === 0 ? raise('#DIV/0!', 'division by zero') : finite(a / b);
}

type Operation = (a: Cell, b: Cell) => Cell;

export const OPERATIONS: Readonly<Record<string, Operation>> = {
  '+': (a, b) => add(toNumber(a), toNumber(b)),
  '-': (a, b) => add(toNumber(a), -toNumber(b)),
  '*': (a, b) => finite(toNumber(a) * toNumber(b)),
  '/': (a, b) => divide(toNumber(a), toNumber(b)),
  '^': (a, b) => power(toNumber(a), toNumber(b)),
  '&': (a, b) => boundedText(toText(a) + toText(b)),
  '=': (a, b) => compare(a, b) === 0,
  '<>': (a, b) => compare(a, b) !== 0,
  '<': (a, b) => compare(a, b) < 0,
  '>': (a, b) => compare(a, b) > 0,
  '<=': (a, b) => compare(a, b) <= 0,
  '>=': (a, b) => compare(a, b) >= 0,
};

/** Two operands, each a cell, an array or a reference. */
export function binary(operation: Operation, left: Value, right: Value): Cell | Matrix {
  const a = dereference(left);
  const b = dereference(right);
  if (!isArray(a) && !isArray(b)) return operation(a, b);
  return broadcast(([x, y]) => operation(x!, y!), [a, b]);
}

export function unary(operation: (cell: Cell) => Cell, operand: Value): Cell | Matrix {
  const value = dereference(operand);
  return isArray(value) ? broadcast(([cell]) => operation(cell!), [value]) : operation(value);
}

export const negate = (cell: Cell): number => -toNumber(cell);
export const percent = (cell: Cell): number => toNumber(cell) / 100;
