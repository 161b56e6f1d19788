import { outcomeOf } from '../support/run';

/** What a run of large conductors leaves out: IEC 60228 gives direct-current resistances, and skin effect grows with the cross-section (IEC 60287-1-1, 2.1). */
test('large conductors say that their resistance is that of direct current', () => {
  for (const metal of ['cu', 'al']) {
    expect(outcomeOf('IMP_CABLE', [100, 300, metal]).cautions).toEqual([]);
    expect(outcomeOf('IMP_CABLE', [100, 400, metal]).cautions).toEqual([expect.stringMatching(/^direct-current resistance/)]);
  }
});
