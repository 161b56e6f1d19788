import { readFileSync } from 'node:fs';
import path from 'node:path';
import { checked, told } from '../../support/checked';

/** The sample workbooks as a checker would read them: right but for the sheet of one designer, which is wrong on purpose. */
const sample = (name: string) => checked(new Uint8Array(readFileSync(path.resolve(__dirname, `../../../sample-workbooks/${name}.xlsx`))));

test.each(['cable-schedule', 'engineer', 'estimator', 'starter'])('%s: nothing to find, all checked', (name) => {
  const { findings, notChecked, changes } = sample(name);
  expect(told(findings)).toEqual([]);
  expect([notChecked, changes.length]).toEqual([0, 0]);
});

test('checker: the designer’s mistakes that a look at the sheet can show, and none on the sheets of the checker', () => {
  const { findings, notChecked } = sample('checker');
  expect(findings.filter(({ class: of }) => of !== 'C').map(({ kind, sheet }) => `${sheet} ${kind}`).sort()).toEqual(['Designer constant-over-formula', 'Designer other-k', 'Designer unlike-neighbours', 'Designer verdict-by-hand']);
  expect(findings.filter(({ class: of }) => of === 'C').map(({ kind }) => kind)).toEqual(['ratio-across-types']);
  expect(notChecked).toBe(0);
});
