import { CellError, type Matrix } from '../../src/functions/kernel/cell';
import { settledReading } from '../../src/functions/kernel/kind';
import { quantity } from '../../src/functions/kernel/kinds';
import { column, headingRows, points } from '../../src/functions/kernel/range-kinds';
import { expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

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

test('a last row of nothing but zeros is blank where a blank may arrive as 0, and refused where it may not', () => {
  const rows = [[100, 10], [200, 1], [0, 0]];
  expect(outcomeOf('CURVE_TIME', [rows, 200, '0', 'slow'], { blankArrivesAsZero: true }).value).toBe(1);
  refused(rows, '#VALUE!', 'points row 3: got 0, takes numbers above 0');
  expect(outcomeOf('CURVE_TIME', [[[100, 10], [200, 1], [300, 0]], 200, '0', 'slow'], { blankArrivesAsZero: true }).value).toMatchObject({ message: 'points row 3: got 0, takes numbers above 0' });
  for (const name of ['CURVE_TIME', 'CURVE_CHECK']) expect(outcomeOf(name, [[[0, 0], [0, 0]], 200, '0', 'slow'].slice(0, name === 'CURVE_CHECK' ? 1 : 4), { blankArrivesAsZero: true }).value).toMatchObject({ code: '#N/A', message: 'missing: points' });
  expect(outcomeOf('NET_RADIAL', [[[0, 0, 0], [0, 0, 0]], '1i', 415], { blankArrivesAsZero: true }).value).toMatchObject({ code: '#N/A', message: 'missing: boards' });
});

test('a point is two numbers: no truth values, no other bases, nothing below 0, and an error cell stays itself', () => {
  refused([[100, 10], [200, true]], '#VALUE!', 'points row 2: got TRUE, takes a number');
  refused([[100, 10], ['0x100', 1]], '#VALUE!', 'points row 2: got "0x100", takes a number');
  refused([[100, 10], ['1e999', 1]], '#VALUE!', 'points row 2: got "1e999", takes a number');
  refused([[100, 10], ['-200', 1]], '#VALUE!', 'points row 2: got -200, takes numbers above 0');
  const error = new CellError('#REF!');
  expect(run('CURVE_TIME', [[100, 10], [200, error]], 150, 0, 'slow')).toBe(error);
});

test('two points make a curve', () => {
  refused([['A', 's']], '#VALUE!', 'points: got no points, takes two or more');
  refused([['A', 's'], [100, 10]], '#VALUE!', 'points: got one point, takes two or more');
  refused([[100, 10, 1], [200, 1, 1]], '#VALUE!', 'points: got 3 columns, takes two: A and s');
});

test('nothing is a heading where nothing stands, or where a blank stands beside it', () => {
  expect(headingRows([])).toBe(0);
  expect(headingRows([['A', ' '], [100, 10]])).toBe(0);
  expect(headingRows([['A', 's'], [100, 10]])).toBe(1);
});

test('spaces about a heading hide no unit', () => {
  refused([[' I (kA) ', 't'], [100, 10], [200, 1]], '#VALUE!', 'points row 1: heading says kA, the column is taken in A');
  refused([['I', 'ms '], [100, 10], [200, 1]], '#VALUE!', 'points row 1: heading says ms, the column is taken in s');
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

test('let-through at one fault level is one figure', () => {
  const joule = points('joule', 'points', {});
  expect(() => joule.read([[5, 60], [5, 20]], 'points', settledReading)).toThrow('points row 2: first column must rise');
  expect(joule.read([[5, 60], [10, 20]], 'points', settledReading)).toEqual({ x: [5, 10], y: [60, 20] });
  expect(joule.show({ x: [5, 10], y: [60, 20] })).toBe('2 points, 5 to 10 kA');
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

test('a column may lie along a row, and is one wide', () => {
  const figures = column('figures', {});
  expect(figures.read([[1, 2]], 'figures', settledReading)).toEqual([1, 2]);
  expect(figures.read([[1], [2]], 'figures', settledReading)).toEqual([1, 2]);
  expect(figures.read(5, 'figures', settledReading)).toEqual([5]);
  expect(() => figures.read([[1, 2], [3, 4]], 'figures', settledReading)).toThrow('figures: got 2 columns, takes one');
});
