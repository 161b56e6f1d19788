import { type Judgement, atLeast, marginPct } from '../judgement';
import { type Working, silent } from '../working';

/**
 * Is there time enough between the minor and the major device?
 * Source: practice.
 * @param minorSlow time of the minor device at its slow edge, breaking included, s
 * @param majorFast time of the major device at its fast edge, s
 * @param gap       least difference, s
 */
export function judgeTimeGap(minorSlow: number, majorFast: number, gap: number, work: Working = silent): Judgement {
  const difference = majorFast - minorSlow;
  work.step('gap', 't major fast − t minor slow', { 't major fast': [majorFast, 's'], 't minor slow': [minorSlow, 's'] }, [difference, 's']);
  return { verdict: atLeast(difference, gap) ? 'pass' : 'FAIL', marginPct: marginPct(difference, gap) };
}
