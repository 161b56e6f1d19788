import { type Cell, CellError, type ErrorCode } from '../../../src/functions/kernel/cell';
import semantics from '../../fixtures/excel-semantics.json';
import { SmallWorkbook, run } from './sheet';

type Stated = number | string | boolean | { text: string } | { error: string } | { formula: string };

const cellOf = (stated: Stated): Cell => {
  if (typeof stated !== 'object') return stated;
  if ('text' in stated) return stated.text;
  if ('error' in stated) return new CellError(stated.error as ErrorCode);
  return run(stated.formula) as Cell;
};

const workbook = new SmallWorkbook(Object.fromEntries(Object.entries(semantics.cells as Record<string, Stated>).map(([address, stated]) => [address, cellOf(stated)])));

describe("Excel's own results", () => {
  it('has all of the cases', () => {
    expect(semantics.cases).toHaveLength(215);
  });

  it.each(semantics.cases.map(({ formula, expected }) => [formula, expected as Stated] as const))('%s', (formula, expected) => {
    const got = run(formula, workbook);
    if (typeof expected === 'object' && 'error' in expected) expect(got).toMatchObject({ code: expected.error });
    else expect(got).toBe(expected);
  });

  // A formula that does not spill must agree wherever its result is one cell anyway; those that work on arrays are stored as arrays.
  const spilling = /FILTER|SORT|UNIQUE|SEQUENCE|SUM\(B1:B5%\)/;
  it.each(semantics.cases.filter(({ formula }) => !spilling.test(formula)).map(({ formula, expected }) => [formula, expected as Stated] as const))(
    '%s in a cell that does not spill',
    (formula, expected) => {
      const got = run(formula, workbook, { oneCell: true });
      if (typeof expected === 'object' && 'error' in expected) expect(got).toMatchObject({ code: expected.error });
      else expect(got).toBe(expected);
    },
  );
});
