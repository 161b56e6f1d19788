import fc from 'fast-check';
import type { Kind } from '../../src/functions/kernel/kind';
import { catalogue } from '../../src/sheet/catalogue';
import { takerOf } from '../support/taken-unread';

const numeric = catalogue.entries.flatMap(({ member }) => member.order
  .filter(([, { plain }]) => plain.least <= plain.most)
  .map(([name, kind]) => ({ place: `${member.name} ${name}`, kind: kind as Kind<number> })));

/** Numbers of every size on both sides of the limits of an argument, and the limits themselves with their neighbours. */
const about = ({ plain: { least, most, whole }, bounds }: Kind<number>): fc.Arbitrary<number> => {
  const edges = [least, most, ...Object.values(bounds ?? {}).filter((limit) => typeof limit === 'number')] as number[];
  const near = edges.flatMap((edge) => [-2, -1, 0, 1, 2].map((steps) => edge * (1 + steps * Number.EPSILON)));
  const range = fc.double({ min: Math.max(least, -1e9), max: Math.min(most, 1e9), noNaN: true });
  return fc.oneof(fc.constantFrom(...near), whole ? range.map(Math.round) : range, range, fc.double());
};

test('numbers with a range are most of what functions take', () => {
  expect(numeric.length).toBeGreaterThan(250);
});

test.each(numeric)('$place: a number that is taken as it is would be read as itself', ({ kind }) => {
  const isTaken = takerOf(kind.plain);
  let taken = 0;
  fc.assert(fc.property(about(kind), fc.boolean(), (value, blankArrivesAsZero) => {
    if (!isTaken(value, blankArrivesAsZero)) return;
    taken += 1;
    expect(kind.read(value, 'it', { blankArrivesAsZero, remark: (text) => { throw new Error(text); } })).toBe(value);
  }), { numRuns: 200 });
  expect(taken).toBeGreaterThan(20);
});

test('nothing but a number other than 0 is taken unread', () => {
  for (const { kind } of numeric) for (const other of [0, -0, NaN, Infinity, -Infinity, '25', true, [[25]]]) expect(takerOf(kind.plain)(other)).toBe(false);
});
