import { parseValue } from 'numfmt';

const PLAIN = /^[-+]?(\d+(?:\.\d*)?|\.\d+)(e[-+]?\d{1,4})?$/i;

const LONGEST = 255;

/** Built-in format d-mmm: what a text like "1/2" would be shown in. */
const DAY_AND_MONTH = 16;

const ENGLISH = /^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d*)?$/;
const OTHER_MARKS = /^[-+]?\d[\d.,'’ \u00a0\u202f]*$/;
const DAY_FIRST = /^(\d{1,2})[/-](\d{1,2})[/-](?:\d{2}|\d{4})$/;

/**
 * Whether the number that a text stands for hangs on the language of the program: "12,5", "1 000", "15.01.2024", "1/2", and
 * "1/2/2024", which is a day of January or of February. A file does not tell its language.
 */
export function dependsOnLanguage(text: string): boolean {
  const trimmed = text.trim();
  if (PLAIN.test(trimmed) || ENGLISH.test(trimmed) || trimmed.length > LONGEST) return false;
  if (OTHER_MARKS.test(trimmed) || /^\d{1,2}\/\d{1,2}$/.test(trimmed)) return true;
  const [, a, b] = DAY_FIRST.exec(trimmed) ?? [];
  return a !== undefined && a !== b && Number(b) <= 12;
}

/**
 * The number that Excel sees in a text ("5", "1,234.5", "50%", "2025-01-15"), undefined where it sees none, and
 * where what it sees hangs on its language. A day and month without a year ("1/2") is a date of whatever year it is, which
 * no check could repeat.
 */
export function numberInText(text: string): number | undefined {
  const trimmed = text.trim();
  if (PLAIN.test(trimmed)) {
    const value = Number(trimmed);
    return Number.isFinite(value) ? value : undefined;
  }
  if (trimmed === '' || trimmed.length > LONGEST || dependsOnLanguage(trimmed)) return undefined;
  const parsed = parseValue(trimmed);
  if (!parsed || typeof parsed.value !== 'number' || !Number.isFinite(parsed.value)) return undefined;
  return parsed.formatId === DAY_AND_MONTH ? undefined : parsed.value;
}

const SIGNIFICANT = 15;
const WIDEST = 20;

/** Rounded to the 15 significant digits that Excel shows and compares with. */
export const to15Digits = (value: number): number => Number(value.toPrecision(SIGNIFICANT));

/**
 * A number as it is joined to text: 15 significant digits, written out where that takes 20 characters at most,
 * else as 1.5E-07.
 */
export function textOfNumber(value: number): string {
  const rounded = to15Digits(value);
  if (rounded === 0) return '0';
  const short = String(rounded);
  if (!short.includes('e') && short.length <= WIDEST) return short;
  const [mantissa, power] = Math.abs(rounded).toExponential().split('e') as [string, string];
  const sign = rounded < 0 ? '-' : '';
  const exponent = Number(power);
  const digits = mantissa.replace('.', '');
  const width = exponent < 0 ? 1 - exponent + digits.length : Math.max(exponent + 1, digits.length + 1);
  if (width <= WIDEST) {
    return sign + (exponent < 0 ? `0.${'0'.repeat(-exponent - 1)}${digits}` : digits.padEnd(exponent + 1, '0'));
  }
  return `${sign}${mantissa}E${exponent < 0 ? '-' : '+'}${String(Math.abs(exponent)).padStart(2, '0')}`;
}
