import { type Judgement, atMost, judged } from '../judgement';
import { type Working, silent } from '../working';

/**
 * Does a breaker, switch or busbar carry this fault for the delay? For longer times than the rated one by equal joule integral;
 * for shorter ones no gain.
 * Source: IEC 61439-1:2020, 3.8.10.3; IEC 60947-2:2016, 4.3.6.4 (from memory).
 * @param fault r.m.s. fault current, kA
 * @param time  delay, s, up to 3
 * @param icw   rated short-time withstand current, kA
 * @param icwTime its time, s
 */
export function judgeShortTime(fault: number, time: number, icw: number, icwTime: number, work: Working = silent): Judgement {
  const rated = { Icw: [icw, 'kA'], 'its time': [icwTime, 's'], t: [time, 's'] } as const;
  const longer = !atMost(time, icwTime);
  const allowed = longer ? icw * Math.sqrt(icwTime / time) : icw;
  work.step('allowed', longer ? 'Icw·√(its time/t)' : 'Icw', rated, [allowed, 'kA']);
  const judgement = judged(fault, allowed);
  work.step('margin', '(allowed/Ik − 1)·100', { allowed: [allowed, 'kA'], Ik: [fault, 'kA'] }, [judgement.marginPct!, '%']);
  return judgement;
}
