import type { Cell } from '../../../functions/kernel/cell';
import { raise } from '../errors';
import { toNumber, toText, toWhole } from '../values';
import { type FunctionTable, cells } from './definition';

/** Number systems of the BIN2DEC family: ten digits, two's complement. */
const SYSTEMS = { BIN: 2, OCT: 8, HEX: 16 } as const;
const PLACES = 10;

const digitsOf = (base: number): RegExp => new RegExp(`^[${'0123456789ABCDEF'.slice(0, base)}]{0,${PLACES}}$`, 'i');

function read(cell: Cell | undefined, base: number): number {
  if (typeof cell === 'boolean') return raise('#VALUE!', 'takes digits, not a truth value');
  const text = toText(cell);
  if (!digitsOf(base).test(text)) return raise('#NUM!', `"${text}" is not a number of base ${base} with up to ${PLACES} digits`);
  const value = text === '' ? 0 : parseInt(text, base);
  const span = base ** PLACES;
  return value >= span / 2 ? value - span : value;
}

function write(value: number, base: number, places: Cell | undefined): string {
  const span = base ** PLACES;
  if (!(value >= -span / 2 && value < span / 2)) return raise('#NUM!', `${value} does not fit ${PLACES} digits of base ${base}`);
  const digits = (value < 0 ? value + span : value).toString(base).toUpperCase();
  if (value < 0 || places === undefined) return digits;
  const width = toWhole(places);
  return width >= digits.length && width <= PLACES ? digits.padStart(width, '0') : raise('#NUM!', `${width} places do not hold ${digits}`);
}

function conversions(): FunctionTable {
  const table: Record<string, FunctionTable[string]> = {};
  const names = Object.entries(SYSTEMS);
  for (const [name, base] of names) {
    table[`${name}2DEC`] = cells([1, 1], (cell) => read(cell, base));
    table[`DEC2${name}`] = cells([1, 2], (cell, places) => write(toWhole(cell), base, places));
    for (const [other, otherBase] of names) {
      if (other !== name) table[`${name}2${other}`] = cells([1, 2], (cell, places) => write(read(cell, base), otherBase, places));
    }
  }
  return table;
}

const BITS = 2 ** 48;

function bits(cell: Cell | undefined): bigint {
  const value = toNumber(cell);
  return Number.isInteger(value) && value >= 0 && value < BITS ? BigInt(value) : raise('#NUM!', `${value} is not a whole number from 0 to 2^48`);
}

function shifted(cell: Cell | undefined, by: number): number {
  const value = bits(cell);
  if (Math.abs(by) > 53) return raise('#NUM!', 'shifts by 53 bits at most');
  const result = by >= 0 ? value << BigInt(by) : value >> BigInt(-by);
  return result < BigInt(BITS) ? Number(result) : raise('#NUM!', 'the result does not fit 48 bits');
}

const ofBits = (combine: (a: bigint, b: bigint) => bigint) => cells([2, 2], (a, b) => Number(combine(bits(a), bits(b))));

const radix = (cell: Cell | undefined): number => {
  const base = toWhole(cell);
  return base >= 2 && base <= 36 ? base : raise('#NUM!', `the base must be 2 to 36, got ${base}`);
};

function decimal(text: string, base: number): number {
  const digits = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'.slice(0, base);
  let value = 0;
  for (const digit of text.trim().toUpperCase()) {
    const place = digits.indexOf(digit);
    if (place < 0) return raise('#NUM!', `"${text}" is not a number of base ${base}`);
    value = value * base + place;
  }
  return value < 2 ** 53 ? value : raise('#NUM!', 'the number is too large');
}

function inBase(value: number, base: number, least: number): string {
  if (!(value >= 0 && value < 2 ** 53)) return raise('#NUM!', 'takes 0 to 2^53');
  if (!(least >= 0 && least <= 255)) return raise('#NUM!', 'the least length must be 0 to 255');
  return value.toString(base).toUpperCase().padStart(least, '0');
}

export const radixFunctions: FunctionTable = {
  ...conversions(),
  BITAND: ofBits((a, b) => a & b),
  BITOR: ofBits((a, b) => a | b),
  BITXOR: ofBits((a, b) => a ^ b),
  BITLSHIFT: cells([2, 2], (value, by) => shifted(value, toWhole(by))),
  BITRSHIFT: cells([2, 2], (value, by) => shifted(value, -toWhole(by))),
  BASE: cells([2, 3], (value, base, least = 0) => inBase(toWhole(value), radix(base), toWhole(least))),
  DECIMAL: cells([2, 2], (text, base) => decimal(toText(text), radix(base))),
};
