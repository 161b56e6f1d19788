import Complex from 'complex.js';

/**
 * Impedances as complex numbers, and as the text that spreadsheets use for them (`1.05+5.68i`).
 * Arithmetic is complex.js; the text form is our own because it must lose no digit and accept no nonsense.
 */
export { Complex };

export const complex = (re: number, im: number): Complex => new Complex(re, im);

const number = (value: number): string => String(Object.is(value, -0) ? 0 : value).replace(/e([+-])(\d)$/, 'E$10$2').replace('e', 'E');

/** Complex text with all figures, written as the COMPLEX function of spreadsheets writes it. */
export function complexText(z: Complex): string {
  if (z.im === 0) return number(z.re);
  const size = Math.abs(z.im);
  const imaginary = `${size === 1 ? '' : number(size)}i`;
  if (z.re === 0) return z.im < 0 ? `-${imaginary}` : imaginary;
  return `${number(z.re)}${z.im < 0 ? '-' : '+'}${imaginary}`;
}

const DIGITS = String.raw`(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`;
const FORM = new RegExp(String.raw`^(?:([+-]?${DIGITS})(?![\dij.]))?(?:([+-]?)(${DIGITS})?([ij]))?$`);
const SPACES_AND_MINUS = /[\s\u2212]/;
/** A space inside of a figure: two figures, or thousands set apart, and nobody can tell which. */
const SPLIT_FIGURE = /[\d.]\s+[\d.eE]|[eE][+-]?\s/;

/** Without spaces, and with the minus of keyboards for that of typesetters; most texts need neither. Empty where a space splits a figure. */
function compacted(text: string): string {
  if (!SPACES_AND_MINUS.test(text)) return text;
  return SPLIT_FIGURE.test(text) ? '' : text.replace(/\s/g, '').replace(/\u2212/g, '-');
}

/** Reads complex text: `a+bi`, `bi`, `i`, `a`, with i or j and spaces between the parts allowed; undefined where it is none. */
export function parseComplex(text: string): Complex | undefined {
  const match = FORM.exec(compacted(text));
  if (!match || match[0] === '') return undefined;
  const [, re, sign, im, unit] = match;
  if (unit === undefined) return complex(Number(re), 0);
  if (re !== undefined && sign === '') return undefined;
  const size = im === undefined ? 1 : Number(im);
  return complex(re === undefined ? 0 : Number(re), sign === '-' ? -size : size);
}
