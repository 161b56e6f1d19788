import { counted, digits, figure, rounded } from '../../src/core/figure';

/** Figures of messages, working and labels. */
test.each<[number, string]>([
  [0, '0'], [-0, '0'], [63, '63'], [-12345678, '-12345678'], [123456789012345, '123456789012345'], [1 / 3, '0.333333'], [1234.5678, '1234.57'], [-0.00001234, '-0.00001234'],
  [1e-7, '1E-07'], [-1.23456789e-9, '-1.23457E-09'], [1e21, '1E+21'], [1e-100, '1E-100'], [NaN, 'no number'], [Infinity, 'beyond all numbers'], [-Infinity, 'beyond all numbers'],
])('%p in words: %s', (value, words) => expect(figure(value)).toBe(words));

test.each<[number, number | undefined, string]>([
  [0, undefined, '0'], [8265625, undefined, '8.266E+06'], [8265625, 6, '8.26563E+06'], [1e6, undefined, '1E+06'], [-1e6, undefined, '-1E+06'], [654321, 6, '654321'], [12.34567, undefined, '12.35'],
  [1e-4, undefined, '0.0001'], [0.000099, undefined, '9.9E-05'], [-0.000012345, 3, '-1.23E-05'], [1e-300, undefined, '1E-300'],
  [NaN, undefined, 'no number'], [Infinity, undefined, 'beyond all numbers'], [-Infinity, 6, 'beyond all numbers'],
])('%p to %p digits: %s', (value, digits, words) => expect(rounded(value, digits)).toBe(words));

test('one is one, all else are several', () => {
  expect([0, 1, 2].map((count) => counted(count, 'row'))).toEqual(['0 rows', '1 row', '2 rows']);
  expect([1, 2].map((count) => counted(count, 'other book', 'other books'))).toEqual(['1 other book', '2 other books']);
});

test('a number that stands for a name keeps the digits that were typed, and no more', () => {
  expect([2024.001, 0.1 + 0.2, 12, 1.5e-7].map(digits)).toEqual(['2024.001', '0.3', '12', '1.5E-07']);
});
