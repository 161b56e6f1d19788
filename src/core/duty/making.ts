import { type Judgement, judged, notShown } from '../judgement';
import { BREAKER_TABLE_ABOVE } from '../standards/making-ratios';
import { type Working, silent } from '../working';
import { breakerBand } from './peak-ratio';

/**
 * Can a breaker close on to this fault? Against its making capacity; where that is not known, the least that goes with Icu.
 * Source: IEC 60947-2:2016, 4.3.6.3 and table 2 (from memory).
 * @param peak peak fault current, kA
 * @param icu  ultimate breaking capacity, kA r.m.s., where known
 * @param icm  making capacity, kA peak, where known
 */
export function judgeMaking(peak: number, icu: number | undefined, icm: number | undefined, work: Working = silent): Judgement {
  const allowed = icm ?? leastMaking(icu, work);
  if (typeof allowed === 'string') return notShown(allowed);
  const judgement = judged(peak, allowed);
  work.step('margin', '(Icm/ip − 1)·100', { Icm: [allowed, 'kA'], ip: [peak, 'kA'] }, [judgement.marginPct!, '%']);
  return judgement;
}

/** n·Icu, kA; or why it cannot be had. */
function leastMaking(icu: number | undefined, work: Working): number | string {
  if (icu === undefined) return 'missing: icu_kA or icm_kA';
  const n = breakerBand(icu)?.n;
  if (n === undefined) return `missing: icm_kA; no ratio stated for a breaker up to ${BREAKER_TABLE_ABOVE} kA`;
  work.step('Icm', 'n·Icu', { n, Icu: [icu, 'kA'] }, [n * icu, 'kA']);
  return n * icu;
}
