import { opened } from '../workbench/support/opened';
import { SAMPLES, bytesOf } from './support';

describe('the grid of the workbench', () => {
  test.each(SAMPLES)('works out every formula of %s to its stored value', (sample) => {
    const { formulas, differing, notWorked } = opened(bytesOf(sample)).agreement();
    expect(formulas).toBeGreaterThan(100);
    expect(differing).toEqual([]);
    expect(notWorked).toEqual([]);
  }, 60_000);
});
