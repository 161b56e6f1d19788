/** Numbers as words: messages, working and labels write figures in one way only. */

const plain = (value: number): string => {
  const size = Math.abs(value);
  if (value === 0 || (size >= 1e-4 && size < 1e15)) return String(value);
  return String(value).replace(/e([+-])(\d+)$/, (_, sign: string, digits: string) => `E${sign}${digits.padStart(2, '0')}`);
};

/** The figure as it was given, without the noise of binary fractions (12 digits). */
export const figure = (value: number): string => plain(Number(value.toPrecision(12)));

/** Rounded to significant figures; above a million, and below a ten-thousandth, with an exponent as spreadsheets write it. */
export const rounded = (value: number, digits = 4): string => {
  const size = Math.abs(value);
  if (value !== 0 && (size >= 1e6 || size < 1e-4)) {
    const [mantissa, exponent] = value.toExponential(digits - 1).split('e') as [string, string];
    return `${Number(mantissa)}E${exponent[0]}${exponent.slice(1).padStart(2, '0')}`;
  }
  return plain(Number(value.toPrecision(digits)));
};
