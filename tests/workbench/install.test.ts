import { installInGrid } from '../../src/workbench/grid/install';
import { grid, quiet, typedGrid } from './support/grid';

/** Whether the grid uses our evaluator is proved on every start. */

beforeEach(quiet);

test('the grid that is here takes our evaluator, however often it is asked', () => {
  installInGrid(grid);
  installInGrid(grid);
  expect(typedGrid({ A1: '=-2^2' }).shown('A1').value).toBe(4);
});

test.each([
  ['of a workbook', 0],
  ['that are typed', 1],
])('a grid that works out formulas %s by itself is not started', (_, col) => {
  class Other extends grid.Model {
    constructor(...given: ConstructorParameters<typeof grid.Model>) {
      super(...given);
      const own = this.getters;
      const getEvaluatedCell: typeof own.getEvaluatedCell = (position) => (position.col === col ? { ...own.getEvaluatedCell(position), value: 4 } as ReturnType<typeof own.getEvaluatedCell> : own.getEvaluatedCell(position));
      Object.defineProperty(this, 'getters', { value: { ...own, getEvaluatedCell } });
    }
  }
  expect(() => installInGrid({ ...grid, Model: Other })).toThrow(/works formulas out by itself/);
});
