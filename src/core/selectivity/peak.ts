import { type Judgement, judged, notShown } from '../judgement';
import { type Working, silent } from '../working';

/**
 * Does the peak let through by the minor device stay under the instantaneous release of the breaker upstream?
 * Source: IEC 60947-2:2016, 8.3.3.1 (±20 %; from memory).
 * @param cutoff       peak let through, kA
 * @param ii           instantaneous setting upstream, A, or off
 * @param tolerancePct tolerance of the release, %
 */
export function judgePeak(cutoff: number, ii: number | 'off', tolerancePct: number, work: Working = silent): Judgement {
  if (ii === 'off') return notShown('ii_A is off: show SELECT_TIME_TEST and SHORTTIME_TEST instead');
  const limit = (Math.SQRT2 * ii * (1 - tolerancePct / 100)) / 1000;
  work.step('limit', '√2·Ii·(1 − tolerance)', { Ii: [ii, 'A'], tolerance: [tolerancePct, '%'] }, [limit, 'kA']);
  return judged(cutoff, limit);
}
