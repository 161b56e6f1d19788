import type { Matrix } from '../../src/functions/kernel/cell';
import { settledReading } from '../../src/functions/kernel/kind';
import { quantity } from '../../src/functions/kernel/kinds';
import { column, points } from '../../src/functions/kernel/range-kinds';
import { expectRefused } from '../support/expect';
import { run } from '../support/run';

/** Curves out of cells: what is taken for a point, and what is not. */

const refused = (rows: Matrix, code: '#N/A' | '#VALUE!', words: string): void => expectRefused('CURVE_TIME', [rows, 150, 0, 'slow'], code, words);

test('a last row that is half blank is no blank row', () => {
  refused([[100, 10], [200, 1], [300, null]], '#N/A', 'missing: points row 3');
  expect(run('CURVE_TIME', [[100, 10], [200, 1], [null, '']], 200, 0, 'slow')).toBe(1);
});

test('a heading stands over both columns', () => {
  refused([['A', 10], [100, 10], [200, 1]], '#VALUE!', 'points row 1: got "A", takes a number');
});

test('numbers that arrive as text are numbers', () => {
  expect(run('CURVE_TIME', [['100', '10'], ['200', ' 1 ']], 200, 0, 'slow')).toBe(1);
});

test('two points may share a current where the time falls there, three or equal ones may not', () => {
  expect(run('CURVE_TIME', [[100, 10], [100, 5], [200, 1]], 200, 0, 'slow')).toBe(1);
  refused([[100, 10], [100, 10], [200, 1]], '#VALUE!', 'points row 2: first column must rise');
  refused([[100, 10], [100, 5], [100, 2], [200, 1]], '#VALUE!', 'points row 3: first column must rise');
});

test('a cut-off current may stay level and may not fall', () => {
  const cutOff = points('cut-off', 'points', {});
  expect(cutOff.read([[5, 6], [50, 20], [100, 20]], 'points', settledReading)).toEqual({ x: [5, 50, 100], y: [6, 20, 20] });
  expect(() => cutOff.read([[5, 6], [50, 20], [100, 19]], 'points', settledReading)).toThrow('points row 3: cut-off may not fall');
});

test('a limit that is excluded is refused itself', () => {
  const below = quantity('A', 'current', { below: 5 });
  expect(below.read(4.999, 'current_A', settledReading)).toBe(4.999);
  expect(() => below.read(5, 'current_A', settledReading)).toThrow('current_A: 5 is outside above 0, below 5 A');
});

test('where a blank may arrive as 0, a column with a 0 in it is refused, and no other', () => {
  const figures = column('figures', {});
  const desktop = { ...settledReading, blankArrivesAsZero: true };
  expect(figures.read([[0], [1]], 'figures', settledReading)).toEqual([0, 1]);
  expect(figures.read([[2], [1]], 'figures', desktop)).toEqual([2, 1]);
  expect(() => figures.read([[0], [1]], 'figures', desktop)).toThrow('figures: a cell is blank or zero');
});
