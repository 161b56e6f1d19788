import { raise } from '../errors';
import { to15Digits } from '../number-text';
import { divide } from '../operators';
import { finite, toNumber, toTruth, toWhole } from '../values';
import { type FunctionTable, cells } from './definition';

/**
 * Rounds the size of a number to a count of decimals, as Excel does: on the 15 digits it shows, so that 1.005 to two
 * decimals is 1.01, though its binary value lies a little below.
 */
export function roundSize(value: number, decimals: number, round: (size: number) => number): number {
  const size = Math.abs(value);
  if (size === 0) return 0;
  if (Math.floor(Math.log10(size)) + decimals >= 15) return value;
  if (decimals < -308) return round === Math.ceil ? raise('#NUM!', 'rounded up the result is too large') : 0;
  const scale = 10 ** Math.abs(decimals);
  const shifted = round(to15Digits(decimals >= 0 ? scaledUp(size, decimals) : size / scale));
  const rounded = decimals < 0 ? shifted * scale : decimals <= 22 ? shifted / scale : Number(`${shifted}e-${decimals}`);
  return finite(value < 0 ? -rounded : rounded);
}

/** Beyond 10^308 the scale itself is no number, though the product may be. */
const scaledUp = (size: number, decimals: number): number => (decimals <= 300 ? size * 10 ** decimals : size * 1e300 * 10 ** (decimals - 300));

/** How often a step fits, free of the binary dust that would push 0.3/0.1 under 3. */
const steps = (value: number, step: number): number => to15Digits(value / step);

function ceilingLike(round: (steps: number) => number) {
  return (value: number, step: number): number => {
    if (value > 0 && step < 0) return raise('#NUM!', 'a positive number with a negative step');
    return step === 0 ? 0 : round(steps(value, step)) * step;
  };
}

const ceiling = ceilingLike(Math.ceil);
const floor = (value: number, step: number): number => {
  if (step === 0 && value !== 0) return raise('#DIV/0!', 'a step of zero');
  return ceilingLike(Math.floor)(value, step);
};

/** The .MATH forms: the sign of the step does not matter, and a mode turns negatives the other way. */
const mathForm = (usual: (steps: number) => number, turned: (steps: number) => number) => (value: number, step: number, mode: boolean): number => {
  const size = Math.abs(step);
  return size === 0 ? 0 : (mode && value < 0 ? turned : usual)(steps(value, size)) * size;
};

const ceilingMath = mathForm(Math.ceil, Math.floor);
const floorMath = mathForm(Math.floor, Math.ceil);

function toMultiple(value: number, multiple: number): number {
  if (value * multiple < 0) return raise('#NUM!', 'the number and the multiple differ in sign');
  return multiple === 0 ? 0 : Math.round(steps(value, multiple)) * multiple;
}

const awayToParity = (value: number, odd: 0 | 1): number => {
  const size = Math.ceil((to15Digits(Math.abs(value)) - odd) / 2) * 2 + odd;
  return value < 0 ? -Math.abs(size) : Math.abs(size);
};

function modulo(value: number, divisor: number): number {
  if (divisor === 0) return raise('#DIV/0!', 'division by zero');
  const quotient = Math.floor(value / divisor);
  if (Math.abs(quotient) > 2 ** 50) return raise('#NUM!', 'the quotient is too large');
  return value - divisor * quotient;
}

export const roundingFunctions: FunctionTable = {
  ROUND: cells([2, 2], (value, decimals) => roundSize(toNumber(value), toWhole(decimals), Math.round)),
  ROUNDUP: cells([2, 2], (value, decimals) => roundSize(toNumber(value), toWhole(decimals), Math.ceil)),
  ROUNDDOWN: cells([2, 2], (value, decimals) => roundSize(toNumber(value), toWhole(decimals), Math.floor)),
  TRUNC: cells([1, 2], (value, decimals) => roundSize(toNumber(value), toWhole(decimals), Math.floor)),
  INT: cells([1, 1], (value) => Math.floor(toNumber(value))),
  MROUND: cells([2, 2], (value, multiple) => toMultiple(toNumber(value), toNumber(multiple))),
  CEILING: cells([2, 2], (value, step) => ceiling(toNumber(value), toNumber(step))),
  FLOOR: cells([2, 2], (value, step) => floor(toNumber(value), toNumber(step))),
  'CEILING.MATH': cells([1, 3], (value, step = 1, mode = null) => ceilingMath(toNumber(value), toNumber(step), toTruth(mode))),
  'FLOOR.MATH': cells([1, 3], (value, step = 1, mode = null) => floorMath(toNumber(value), toNumber(step), toTruth(mode))),
  'CEILING.PRECISE': cells([1, 2], (value, step = 1) => ceilingMath(toNumber(value), toNumber(step), false)),
  'ISO.CEILING': cells([1, 2], (value, step = 1) => ceilingMath(toNumber(value), toNumber(step), false)),
  'FLOOR.PRECISE': cells([1, 2], (value, step = 1) => floorMath(toNumber(value), toNumber(step), false)),
  EVEN: cells([1, 1], (value) => awayToParity(toNumber(value), 0)),
  ODD: cells([1, 1], (value) => (toNumber(value) === 0 ? 1 : awayToParity(toNumber(value), 1))),
  MOD: cells([2, 2], (value, divisor) => modulo(toNumber(value), toNumber(divisor))),
  QUOTIENT: cells([2, 2], (value, divisor) => Math.trunc(divide(toNumber(value), toNumber(divisor)))),
};
