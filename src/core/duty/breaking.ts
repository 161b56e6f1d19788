import { figure } from '../figure';
import { type Judgement, atLeast, judged, notShown } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { breakerBand } from './peak-ratio';

/** May the breaker be out of service after the fault, or must it carry its rating again? */
export type BreakingNeed = 'service' | 'once';

/**
 * Can a breaker break this fault? Against Ics where it must serve again, against Icu where once is enough; the one never stands in
 * for the other. A network of lower power factor than the test circuit's shows nothing by a pass.
 * Source: IEC 60947-2:2016, 8.3, test sequences II and III, table 11 (from memory).
 * @param fault     prospective r.m.s. current, kA
 * @param icu       ultimate breaking capacity, kA, where known
 * @param ics       service breaking capacity, kA, where known; at most icu
 * @param networkPf R/Z of the fault; left out: not compared
 */
export function judgeBreaking(fault: number, icu: number | undefined, ics: number | undefined, need: BreakingNeed, networkPf: number | undefined, work: Working = silent): Judgement {
  if (icu !== undefined && ics !== undefined && !atLeast(icu, ics)) throw outOfRange('ics_kA', `${figure(ics)} kA is above icu_kA, ${figure(icu)} kA`);
  const [name, symbol, rating] = need === 'service' ? (['ics_kA', 'Ics', ics] as const) : (['icu_kA', 'Icu', icu] as const);
  if (rating === undefined) return notShown(`missing: ${name}`);
  const judgement = judged(fault, rating);
  work.step('margin', `(${symbol}/Ik − 1)·100`, { [symbol]: [rating, 'kA'], Ik: [fault, 'kA'] }, [judgement.marginPct!, '%']);
  const testPf = breakerBand(rating)?.pf;
  if (networkPf === undefined || testPf === undefined) return judgement;
  work.step('cos φ test', `table 11 for ${symbol}`, { [symbol]: [rating, 'kA'] }, testPf);
  if (judgement.verdict === 'FAIL' || atLeast(networkPf, testPf)) return judgement;
  return notShown(`network power factor ${figure(networkPf)} is below the ${figure(testPf)} at which ${figure(rating)} kA is tested`, judgement.marginPct);
}
