import { schedule } from '../../support/checked';
import { FUZZ_SEED } from '../../support/fuzz';
import { fuzzWorkbooks } from '../../support/fuzz-workbooks';

/** Spoiled workbooks are refused in words, or checked and recomputed soundly. `npm run fuzz` does it at length. */
test(`spoiled workbooks, seed ${FUZZ_SEED}`, () => {
  const { faults, refused, tried } = fuzzWorkbooks([schedule()], 150, FUZZ_SEED);
  expect(faults).toEqual([]);
  // Both outcomes occur, so that neither is left untried.
  expect(refused).toBeGreaterThan(20);
  expect(tried - refused).toBeGreaterThan(20);
}, 120_000);

test('an untouched workbook is neither refused nor at fault; number and seed bring the same file again', () => {
  expect(fuzzWorkbooks([schedule()], 5, 7)).toEqual(fuzzWorkbooks([schedule()], 5, 7));
});
