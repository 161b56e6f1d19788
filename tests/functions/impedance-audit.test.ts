import { expectPrinted, expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

/** What a run of large conductors leaves out: IEC 60228 gives direct-current resistances, and skin effect grows with the cross-section (IEC 60287-1-1, 2.1). */
test('large conductors say that their resistance is that of direct current', () => {
  for (const metal of ['cu', 'al']) {
    expect(outcomeOf('IMP_CABLE', [100, 300, metal]).cautions).toEqual([]);
    expect(outcomeOf('IMP_CABLE', [100, 400, metal]).cautions).toEqual([expect.stringMatching(/^direct-current resistance/)]);
  }
});

/** 1/(1/j5 + 1/j5) = j2.5: no resistance is no short circuit. */
test('parts without resistance stand in parallel', () => {
  expectPrinted('IMP_PARALLEL', ['5i', '5i'], '2.5i');
  expect(outcomeOf('IMP_PARALLEL', ['5i', '0']).error).toMatchObject({ code: '#NUM!', message: expect.stringMatching(/would short the others/) });
});

/** A zigzag winding blocks most of the zero-sequence flux, so Dyn's ratio of 1 does not hold for it (IEC 60909-0:2016, 6.3). */
test('only Dyn has ratios of its own', () => {
  expect(run('IMP_TRANSFORMER_ZERO', '2+9i', 'Dyn11')).toBe('2+9i');
  expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Dzn6'], '#N/A', 'missing: r0_over_r1');
  expectRefused('IMP_TRANSFORMER_ZERO', ['2+9i', 'Yyn0', 1], '#N/A', 'missing: x0_over_x1');
});
