import reference from '../fixtures/reference-functions.json';
import { parseComplex } from '../../src/core/complex';
import { type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';
import { bareName } from '../../src/functions/kernel/catalogue';
import { catalogue } from '../../src/sheet/catalogue';
import { valueOf } from '../support/evaluate';

/** Check figures of a reference calculation that shares no code with this project, through the evaluator as a sheet would. */
type Expected = number | string | boolean | { error: string; message?: string } | Expected[][];
interface Check { formula: string; value: Expected }

const declared = (formula: string): boolean => [...formula.matchAll(/JW\.([A-Z0-9_]+)\(/g)].every(([, name]) => catalogue.find(name!));
const checks = (reference.declarations as unknown as { checks: Check[] }[]).flatMap((declaration) => declaration.checks);

/** Text may tell more than the reference records: working, digest of editions. The figures in it may not change. */
const tellsMore = (formula: string): boolean => ['SHOW_STEPS', 'CORE_VERSION'].includes(bareName(/^=([A-Z0-9_.]+)/.exec(formula)![1]!));

/** The reference stands aside of a break point by a small step where we take its limit. */
const toleranceOf = (formula: string): number => (formula.includes('SELECT_RANGES(') ? 1e-8 : 1e-9);

function agrees(value: Cell, expected: Exclude<Expected, Expected[][]>, tolerance = 1e-9): void {
  if (typeof expected === 'object') {
    expect(value).toBeInstanceOf(CellError);
    expect((value as CellError).code).toBe(expected.error);
    if (expected.message !== undefined) expect((value as CellError).message).toBe(expected.message);
    return;
  }
  if (typeof expected === 'number') {
    expect(typeof value).toBe('number');
    expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(Math.abs(expected) * tolerance);
    return;
  }
  const z = typeof expected === 'string' && /\di$/.test(expected) ? parseComplex(expected) : undefined;
  if (!z) return void expect(value).toBe(expected);
  const got = parseComplex(String(value))!;
  expect(Math.abs(got.re - z.re)).toBeLessThanOrEqual(Math.abs(z.re) * 1e-9);
  expect(Math.abs(got.im - z.im)).toBeLessThanOrEqual(Math.abs(z.im) * 1e-9);
}

describe('check figures of the reference calculation', () => {
  const runnable = checks.filter(({ formula }) => declared(formula) && !formula.includes('CORE_VERSION'));
  test('there are as many as functions declared, and more', () => expect(runnable.length).toBeGreaterThan(catalogue.declarations.length));
  test.each(runnable.map(({ formula, value }) => [formula, value] as const))('%s', (formula, expected) => {
    const value = valueOf(formula);
    if (!Array.isArray(expected)) return agrees(value as Cell, expected);
    const rows = value as Matrix;
    if (tellsMore(formula)) {
      expect(rows.slice(0, expected.length - 1)).toEqual(expected.slice(0, -1));
      return agrees(rows[rows.length - 1]![1]!, expected[expected.length - 1]![1] as number);
    }
    expect(rows.length).toBe(expected.length);
    expected.forEach((row, r) => row.forEach((cell, c) => agrees(rows[r]![c]!, cell as number, toleranceOf(formula))));
  });
});
