import { atMost } from '../judgement';
import { missing } from '../refusal';
import { type Working, silent } from '../working';

/**
 * Selectivity limit current of a pair of breakers: the tested one where the maker gives it, else what the settings alone assure.
 * Source: IEC 60947-2:2016, 2.17 and annex A (Is; from memory).
 * @param ii           instantaneous setting of the major device, A, or off
 * @param icw          its rated short-time withstand current, kA, if stated
 * @param tested       limit of the maker's table for the pair, kA, if there is one
 * @param tolerancePct tolerance of the release, %
 * @returns limit, kA
 */
export function selectivityLimit(ii: number | 'off', icw: number | undefined, tested: number | undefined, tolerancePct: number, work: Working = silent): number {
  if (tested !== undefined) {
    work.step('Is', 'tested pair', { tested: [tested, 'kA'] }, [tested, 'kA']);
    return tested;
  }
  if (ii === 'off') {
    if (icw === undefined) throw missing('icw_kA');
    work.step('Is', 'Icw, instantaneous off', { Icw: [icw, 'kA'] }, [icw, 'kA']);
    return icw;
  }
  const bySetting = (ii * (1 - tolerancePct / 100)) / 1000;
  const limit = icw === undefined ? bySetting : Math.min(bySetting, icw);
  work.step('Ii fast', 'Ii·(1 − tolerance)', { Ii: [ii, 'A'], tolerance: [tolerancePct, '%'] }, [bySetting, 'kA']);
  work.step('Is', icw === undefined ? 'Ii fast' : 'min(Ii fast, Icw)', { 'Ii fast': [bySetting, 'kA'], ...(icw === undefined ? {} : { Icw: [icw, 'kA'] }) }, [limit, 'kA']);
  return limit;
}

/** Total where the fault level stays within the selectivity limit, partial beyond. IEC 60947-2:2016, 2.17 (from memory). Both in kA. */
export const selectivityExtent = (fault: number, limit: number): 'total' | 'partial' => (atMost(fault, limit) ? 'total' : 'partial');
