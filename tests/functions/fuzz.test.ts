import { catalogue } from '../../src/sheet/catalogue';
import { FUZZ_SEED, fuzz } from '../support/fuzz';

/** Every function with hostile arguments: a value of its declared kind or a refusal in words, and nothing else. `npm run fuzz` does it at length. */
describe(`hostile tuples, seed ${FUZZ_SEED}`, () => {
  test.each(catalogue.entries.map((entry) => [entry.member.name, entry] as const))('%s', (_name, entry) => {
    expect(fuzz(entry, 300, FUZZ_SEED).faults).toEqual([]);
  });

  test('a seed brings the same calls again, another seed others', () => {
    const entry = catalogue.find('FAULT_3PH_MAX')!;
    expect(fuzz(entry, 500, 1)).toEqual(fuzz(entry, 500, 1));
    expect(fuzz(entry, 500, 1).refused).not.toBe(fuzz(entry, 500, 2).refused);
  });
});
