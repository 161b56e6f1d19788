import { complex, complexText, parseComplex } from '../../src/core/complex';
import { expectRefused } from '../support/expect';
import { run } from '../support/run';

/** Written as COMPLEX of spreadsheets writes it: no digit lost, no 1 before i, exponents of two digits. */
test.each([
  [2, 9, '2+9i'], [2, -9, '2-9i'], [2, 1, '2+i'], [2, -1, '2-i'], [0, 1, 'i'], [0, -1, '-i'], [0, 0.5, '0.5i'], [0, -0.5, '-0.5i'], [7, 0, '7'], [-7, -0, '-7'], [-0, 0, '0'],
  [0.1 + 0.2, 1 / 3, '0.30000000000000004+0.3333333333333333i'], [1e-7, 2.5e-9, '1E-07+2.5E-09i'], [1.5e21, -1e-10, '1.5E+21-1E-10i'], [0, 1e-100, '1E-100i'],
])('%p and %p: %s', (re, im, text) => {
  expect(complexText(complex(re, im))).toBe(text);
  const back = parseComplex(text)!;
  expect([back.re + 0, back.im + 0]).toEqual([re + 0, im + 0]);
});

test.each<[string, number, number]>([
  ['i', 0, 1], ['-j', 0, -1], ['+i', 0, 1], ['3', 3, 0], ['-.5', -0.5, 0], ['2.+.5i', 2, 0.5], ['1e-3+2E2j', 0.001, 200], ['  2 + 9 i ', 2, 9], ['- 2 - i', -2, -1], ['2\u22129i', 2, -9], ['2\u00a0+\u202f9i', 2, 9],
])('%p is read', (text, re, im) => expect(parseComplex(text)).toMatchObject({ re, im }));

test.each(['', ' ', '+', '-', 'e5', '2+', '2+9', '2++9i', '9i+2', 'i2', '2i9', '2ij', '2+9I', '1,5+2i', '2.5.1i', '2+9i mΩ', '0x10', 'Infinity', 'NaN+i'])('%p is no complex text', (text) => expect(parseComplex(text)).toBeUndefined());

// With its sign lost "2 9i" would be 29i, another impedance altogether; and marks between thousands are refused in plain numbers too.
test.each(['2 9i', '2   9i', '1 234+5i', '1.05 5i', '2+9 .5i', '2+1\u202f000i', '1 e3i', '1e 3i', '1e- 3i', '1 234'])('%p is not put together to one number', (text) => expect(parseComplex(text)).toBeUndefined());
test('nor where an impedance is asked', () => {
  const takes = 'takes an impedance in mΩ: complex text such as 1.05+5.68i, a number, text with a unit, or two cells R, X';
  expectRefused('FAULT_3PH_MAX', ['2 9i', 400], '#VALUE!', `z_mohm: got "2 9i", ${takes}`);
  expectRefused('IMP_SERIES', ['1 234', '2+9i'], '#VALUE!', 'z_mohm 1: got "1 234", takes one number with a decimal point and no thousands marks');
  expect(run('IMP_SERIES', '2 + 9 i', ' 1 ')).toBe('3+9i');
});
