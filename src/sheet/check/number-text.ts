import { parseComplex } from '../../core/complex';
import { unitOf } from '../../core/units';

/** A figure in plain writing, with a decimal comma, or with marks between the thousands. */
const NUMBER = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+|\d{1,3}(?:[ .,'’\u00a0\u202f]\d{3})+(?:[.,]\d+)?)(?:e[+-]?\d+)?$/i;

/** Whether a text would be a number if it were not text. */
export const looksLikeNumber = (text: string): boolean => NUMBER.test(text.trim());

/** Whether a text stands for a value: a number, a number with its unit, an impedance. */
export function looksLikeValue(text: string): boolean {
  const [, number = '', unit = ''] = /^([+-]?[\d.,]+)\s*([A-Za-zµΩ°%²³·√/]+)$/.exec(text.trim()) ?? [];
  return looksLikeNumber(text) || (looksLikeNumber(number) && unitOf(unit) !== undefined) || (/\d[ij]\s*$/.test(text) && parseComplex(text) !== undefined);
}
