import { published } from '../../src/sheet/published';
import { type Published, isAgreement } from '../../src/sheet/published/entry';
import { tally } from '../../src/sheet/published/tally';

const entry = (over: Partial<Published>): Published => ({
  id: 'x', function: 'CABLE_WITHSTAND', args: [115, 25], printed: '8.27·10⁶ A²s', expected: 8265625, tolerance: 5000, source: 'a book', edition: '1st', seen: 'read', kind: 'printed', ...over,
});

test('only printed figures and mathematics count as agreement; memory is told apart', () => {
  const found = tally({
    cable: [entry({}), entry({ kind: 'maths', seen: 'from memory' }), entry({ expected: 8300000 }), entry({ kind: 'constant' }), entry({ kind: 'inferred', expected: 1 })],
    life: [entry({ kind: 'rule', seen: 'from memory' })],
  });
  expect(found).toMatchObject({ agreement: { agree: 2, of: 3 }, read: { agree: 1, of: 2 }, fromMemory: { agree: 1, of: 1 }, weaker: { agree: 2, of: 3 } });
  expect(found.differing.map(({ entry: { expected, kind } }) => [expected, kind])).toEqual([[8300000, 'printed'], [1, 'inferred']]);
});

test('all that is published is counted once', () => {
  const entries = Object.values(published).flat();
  const found = tally(published);
  expect(found.agreement.of).toBe(entries.filter(isAgreement).length);
  expect(found.agreement.of + found.weaker.of).toBe(entries.length);
  expect(found.read.of + found.fromMemory.of).toBe(found.agreement.of);
  expect(found.differing).toEqual([]);
});
