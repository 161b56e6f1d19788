/** Numbers as words: messages, working and labels write figures in one way only. */

const inWords = (value: number): string => (Number.isNaN(value) ? 'no number' : 'beyond all numbers');

/** An exponent as spreadsheets write it: E-07 for e-7. */
const sheetExponent = (text: string): string => text.replace(/e([+-])(\d+)/, (_, sign: string, digits: string) => `E${sign}${digits.padStart(2, '0')}`);

/** The figure with all its digits. */
export const inFull = (value: number): string => (Number.isFinite(value) ? sheetExponent(String(value)) : inWords(value));

/** The figure as people write it: whole numbers in full, others to 6 digits, which is more than any was measured to. */
export const figure = (value: number): string => inFull(Number(value.toPrecision(Number.isInteger(value) ? 15 : 6)));

/** All digits of a number that stands for a name, as they were typed: no two names become one. */
export const digits = (value: number): string => inFull(Number(value.toPrecision(15)));

/** How many of something, in words: "1 row", "2 rows". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** Rounded to significant figures; above a million, and below a ten-thousandth, with an exponent as spreadsheets write it. */
export const rounded = (value: number, digits = 4): string => {
  const size = Math.abs(value);
  if (!Number.isFinite(value)) return inWords(value);
  if (value !== 0 && (size >= 1e6 || size < 1e-4)) {
    const [mantissa, exponent] = value.toExponential(digits - 1).split('e') as [string, string];
    return sheetExponent(`${Number(mantissa)}e${exponent}`);
  }
  return inFull(Number(value.toPrecision(digits)));
};
