/** Numbers as words: messages, working and labels write figures in one way only. */

const inWords = (value: number): string => (Number.isNaN(value) ? 'no number' : 'beyond all numbers');

const plain = (value: number): string => {
  if (!Number.isFinite(value)) return inWords(value);
  const size = Math.abs(value);
  if (value === 0 || (size >= 1e-4 && size < 1e15)) return String(value);
  return String(value).replace(/e([+-])(\d+)$/, (_, sign: string, digits: string) => `E${sign}${digits.padStart(2, '0')}`);
};

/** The figure as people write it: whole numbers in full, others to 6 digits, which is more than any was measured to. */
export const figure = (value: number): string => plain(Number(value.toPrecision(Number.isInteger(value) ? 15 : 6)));

/** All digits of a number that stands for a name, as they were typed: no two names become one. */
export const digits = (value: number): string => plain(Number(value.toPrecision(15)));

/** Rounded to significant figures; above a million, and below a ten-thousandth, with an exponent as spreadsheets write it. */
export const rounded = (value: number, digits = 4): string => {
  const size = Math.abs(value);
  if (!Number.isFinite(value)) return inWords(value);
  if (value !== 0 && (size >= 1e6 || size < 1e-4)) {
    const [mantissa, exponent] = value.toExponential(digits - 1).split('e') as [string, string];
    return `${Number(mantissa)}E${exponent[0]}${exponent.slice(1).padStart(2, '0')}`;
  }
  return plain(Number(value.toPrecision(digits)));
};
