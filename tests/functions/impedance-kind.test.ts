import { complex } from '../../src/core/complex';
import type { Argument } from '../../src/functions/kernel/cell';
import { impedance, impedances } from '../../src/functions/kernel/impedance-kinds';
import { settledReading } from '../../src/functions/kernel/kind';
import { expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

/** Impedances out of cells: what is read, and what is not guessed at. */

const TAKES = 'takes an impedance in mΩ: complex text such as 1.05+5.68i, a number, text with a unit, or two cells R, X';
const DESKTOP = { blankArrivesAsZero: true };
const refused = (z: Argument, code: '#N/A' | '#VALUE!' | '#NUM!', words: string): void => expectRefused('FAULT_3PH_MAX', [z, 415], code, words);

test.each<[Argument, number, number]>([
  ['1.05+5.68i', 1.05, 5.68], [' 1.05 + 5.68 j ', 1.05, 5.68], ['1.05\u00a0+\u202f5.68i', 1.05, 5.68], ['5.68i', 0, 5.68],
  [5, 5, 0], ['5', 5, 0], [' 5 ', 5, 0], ['0.005 Ω', 5, 0], ['5000 µΩ', 5, 0],
  [[[1.05, 5.68]], 1.05, 5.68], [[[1.05], [5.68]], 1.05, 5.68], [[['0.00105 Ω', '5.68 mohm']], 1.05, 5.68], [[['1.05+5.68i']], 1.05, 5.68],
])('%p is read', (cell, r, x) => expect(impedance('z', {}).read(cell, 'z_mohm', settledReading)).toEqual(complex(r, x)));

test('a space inside of a figure may part R from X, or thousands: it is not closed up', () => {
  refused('5 68', '#VALUE!', 'z_mohm: got "5 68", takes one number with a decimal point and no thousands marks');
  for (const text of ['1 050+5.68i', '1.05+5 68i', '1.05 5.68i', '1.05+5. 68i', '1.05+5 .68i', '1e 1+5i', '1 e1+5i', '1e- 1+5i', '1\u202f050+5i']) refused(text, '#VALUE!', `z_mohm: got "${text}", ${TAKES}`);
  expect(run('AGREE', '5 68', 568, 1)).toBe('DIFFERS in kind');
});

test('decimal commas, truth values and other texts are refused with what is taken', () => {
  for (const text of ['1,05+5,68i', '1,05+5,68j ', 'low i']) refused(text, '#VALUE!', `z_mohm: got "${text.trim()}", ${TAKES}`);
  refused(true, '#VALUE!', `z_mohm: got TRUE, ${TAKES}`);
  refused('low', '#VALUE!', 'z_mohm: got "low", takes a number in mΩ');
  refused('5 mV', '#VALUE!', 'z_mohm: got "5 mV": mV is voltage, takes mΩ');
  refused('1e999+1i', '#NUM!', 'z_mohm: got "1e999+1i", which is not a finite number');
  refused('1+1e999i', '#NUM!', 'z_mohm: got "1+1e999i", which is not a finite number');
});

test.each<[Argument, string]>([
  [-5, '-5'], ['-5', '"-5"'], ['-5 mΩ', '"-5 mΩ"'], ['5-1i', '"5-1i"'], ['-5+1i', '"-5+1i"'], [[[5, -1]], '5, -1'], [[['-5 mΩ', 1]], '-5, 1'],
])('%p: neither R nor X is below 0', (cell, shown) => refused(cell, '#VALUE!', `z_mohm: got ${shown}, takes R and X of 0 or more`));

test('the least size is met to 1 part in 10⁹', () => {
  expect(run('FAULT_3PH_MAX', 0.1, 415)).toBeCloseTo((1.05 * 415) / Math.sqrt(3) / 0.1, 6);
  expect(typeof run('FAULT_3PH_MAX', 0.1 * (1 - 9e-10), 415)).toBe('number');
  expect(run('FAULT_3PH_MAX', 0.1 * (1 - 2e-9), 415)).toMatchObject({ code: '#NUM!' });
  refused(0.099, '#NUM!', 'z_mohm: size 0.099 mΩ is below 0.1 mΩ');
});

test('where a blank may arrive as 0, a 0 is asked for as text, in each of two cells', () => {
  const desktop = (z: Argument) => outcomeOf('FAULT_3PH_MAX', [z, 415], DESKTOP).value;
  expect(desktop(0)).toMatchObject({ message: 'z_mohm is blank or zero: write 0 as text' });
  expect(desktop([[0, 5]])).toMatchObject({ message: 'z_mohm (R) is blank or zero: write 0 as text' });
  expect(desktop([[5, 0]])).toMatchObject({ message: 'z_mohm (X) is blank or zero: write 0 as text' });
  expect(desktop([['0', 5]])).toBe(run('FAULT_3PH_MAX', '5i', 415));
  expect(desktop(5)).toBe(run('FAULT_3PH_MAX', 5, 415));
  refused([[5, '']], '#N/A', 'missing: z_mohm (X)');
});

test('in a list the blank one is named by its place', () => {
  expectRefused('IMP_SERIES', [], '#N/A', 'missing: z_mohm');
  expectRefused('IMP_SERIES', [null], '#N/A', 'missing: z_mohm 1');
  expectRefused('IMP_SERIES', [5, ''], '#N/A', 'missing: z_mohm 2');
  expectRefused('IMP_SERIES', [[[5], [null], [6]], 7], '#N/A', 'missing: z_mohm 2');
  expectRefused('IMP_SERIES', [[[5], [6], [null]], 'low'], '#VALUE!', 'z_mohm 3: got "low", takes a number in mΩ');
  expect(run('IMP_SERIES', [[5], ['2i'], [null], ['']], 2)).toBe('7+2i');
});

test('a range of impedances is one argument, a cell to each', () => {
  const legs = impedances('legs', 'range');
  expect(legs.read([[1], ['2i'], [null]], 'z_legs_mohm', settledReading)).toEqual([complex(1, 0), complex(0, 2)]);
  expect(legs.show([complex(1, 0), complex(0, 2)])).toBe('1 mΩ, 2i mΩ');
});

test('a sum beyond all numbers is refused', () => {
  for (const huge of ['1e308', '1e308i']) expectRefused('IMP_SERIES', [huge, huge], '#NUM!', 'the result is not a finite number');
});
