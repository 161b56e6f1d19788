import { Complex, complex } from '../../../core/complex';
import type { Cell } from '../../../functions/kernel/cell';
import { isError, raise } from '../errors';
import { textOfNumber } from '../number-text';
import { type Value, finite, toNumber, toText } from '../values';
import { forEachCell } from './collect';
import { ANY, type CellFunction, type FunctionTable, cells, whole } from './definition';

type Suffix = 'i' | 'j';

interface Read {
  z: Complex;
  /** Undefined where the text has no imaginary part: it joins either. */
  suffix: Suffix | undefined;
}

const DIGITS = String.raw`(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const FORM = new RegExp(String.raw`^(?:([+-]?${DIGITS})(?=[+-]|$))?(?:([+-]?(?:${DIGITS})?)([ij]))?$`);

/** Excel's own reading of complex text is stricter than that of impedances: no spaces, no capitals. */
function read(cell: Cell | undefined): Read {
  if (typeof cell === 'boolean') return raise('#VALUE!', 'a truth value is no complex number');
  if (typeof cell === 'number') return { z: complex(cell, 0), suffix: undefined };
  if (cell === null || cell === undefined) return { z: complex(0, 0), suffix: undefined };
  if (isError(cell)) throw cell;
  const match = cell === '' ? null : FORM.exec(cell);
  if (!match) return raise('#NUM!', `"${cell}" is no complex number`);
  const [, re, im, suffix] = match as unknown as [string, string | undefined, string | undefined, Suffix | undefined];
  const size = im === undefined ? 0 : im === '' || im === '+' ? 1 : im === '-' ? -1 : Number(im);
  return { z: complex(re === undefined ? 0 : Number(re), size), suffix };
}

/** As COMPLEX writes it: 15 digits, no part that is zero, no 1 before i. */
function write(z: Complex, suffix: Suffix | undefined): string {
  const [re, im] = [textOfNumber(finite(z.re)), textOfNumber(finite(z.im))];
  if (im === '0') return re;
  const size = im === '1' ? '' : im === '-1' ? '-' : im;
  const imaginary = `${size}${suffix ?? 'i'}`;
  if (re === '0') return imaginary;
  return re + (im.startsWith('-') ? '' : '+') + imaginary;
}

const isZero = (z: Complex): boolean => z.re === 0 && z.im === 0;
const size = (z: Complex): number => Math.hypot(z.re, z.im);

const toReal = (compute: (z: Complex) => number): CellFunction => cells([1, 1], (cell) => finite(compute(read(cell).z)));
const toComplex = (compute: (z: Complex) => Complex): CellFunction => cells([1, 1], (cell) => {
  const { z, suffix } = read(cell);
  return write(compute(z), suffix);
});

function joint(a: Suffix | undefined, b: Suffix | undefined): Suffix | undefined {
  if (a && b && a !== b) return raise('#VALUE!', 'i and j are mixed');
  return a ?? b;
}

const ofTwo = (combine: (a: Complex, b: Complex) => Complex): CellFunction => cells([2, 2], (first, second) => {
  const [a, b] = [read(first), read(second)];
  return write(combine(a.z, b.z), joint(a.suffix, b.suffix));
});

/** Sum or product of any number of cells; blanks in ranges do not count. */
const ofMany = (combine: (a: Complex, b: Complex) => Complex, start: Complex) => whole([1, ANY], (args: Value[]) => {
  let result = start;
  let suffix: Suffix | undefined;
  for (const arg of args) {
    forEachCell(arg, (cell) => {
      if (cell === null) return;
      const next = read(cell);
      result = combine(result, next.z);
      suffix = joint(suffix, next.suffix);
    });
  }
  return write(result, suffix);
});

function quotient(a: Complex, b: Complex): Complex {
  return isZero(b) ? raise('#NUM!', 'division by zero') : a.div(b);
}

function logarithm(z: Complex, base: number): Complex {
  if (isZero(z)) return raise('#NUM!', 'the logarithm of zero');
  return complex(Math.log(size(z)) / base, Math.atan2(z.im, z.re) / base);
}

/** Whole powers by multiplying, so that (2+3i)³ comes out whole; others by modulus and angle. */
function power(z: Complex, exponent: number): Complex {
  if (isZero(z)) return exponent > 0 ? z : raise('#NUM!', 'zero to this power has no value');
  if (Number.isInteger(exponent) && Math.abs(exponent) <= 1024) {
    let result = complex(1, 0);
    for (let step = Math.abs(exponent); step > 0; step--) result = result.mul(z);
    return exponent >= 0 ? result : complex(1, 0).div(result);
  }
  const [modulus, angle] = [size(z) ** exponent, Math.atan2(z.im, z.re) * exponent];
  return complex(modulus * Math.cos(angle), modulus * Math.sin(angle));
}

function compose(re: number, im: number, suffix: string): string {
  return suffix === 'i' || suffix === 'j' ? write(complex(re, im), suffix) : raise('#VALUE!', `the suffix is i or j, got "${suffix}"`);
}

export const complexFunctions: FunctionTable = {
  COMPLEX: cells([2, 3], (re, im, suffix = 'i') => compose(toNumber(re), toNumber(im), toText(suffix))),
  IMREAL: toReal((z) => z.re),
  IMAGINARY: toReal((z) => z.im),
  IMABS: toReal(size),
  IMARGUMENT: toReal((z) => (isZero(z) ? raise('#DIV/0!', 'zero has no angle') : Math.atan2(z.im, z.re))),
  IMCONJUGATE: toComplex((z) => complex(z.re, -z.im)),
  IMSUM: ofMany((a, b) => a.add(b), complex(0, 0)),
  IMPRODUCT: ofMany((a, b) => a.mul(b), complex(1, 0)),
  IMSUB: ofTwo((a, b) => a.sub(b)),
  IMDIV: ofTwo(quotient),
  IMPOWER: cells([2, 2], (cell, exponent) => {
    const { z, suffix } = read(cell);
    return write(power(z, toNumber(exponent)), suffix);
  }),
  IMSQRT: toComplex((z) => (isZero(z) ? z : power(z, 0.5))),
  IMEXP: toComplex((z) => z.exp()),
  IMLN: toComplex((z) => logarithm(z, 1)),
  IMLOG10: toComplex((z) => logarithm(z, Math.LN10)),
  IMLOG2: toComplex((z) => logarithm(z, Math.LN2)),
  IMSIN: toComplex((z) => z.sin()),
  IMCOS: toComplex((z) => z.cos()),
  IMTAN: toComplex((z) => z.tan()),
  IMSINH: toComplex((z) => z.sinh()),
  IMCOSH: toComplex((z) => z.cosh()),
};
