import { type Judgement, atMost, marginPct, notShown } from '../judgement';
import { type Working, silent } from '../working';

/**
 * Does a device upstream back up a breaker beyond its own breaking capacity? Above Icu only a tested pair counts.
 * Source: IEC 60947-2:2016, annex A; IEC 60364-4-43:2023, 434.5.1.
 * @param fault    fault level at the breaker, kA
 * @param icu      its ultimate breaking capacity, kA
 * @param takeover current above which the device upstream clears first, kA, if known
 * @param tested   breaking capacity of the tested pair, kA, if there is one
 */
export function judgeBackup(fault: number, icu: number, takeover: number | undefined, tested: number | undefined, work: Working = silent): Judgement {
  const alone = atMost(fault, icu);
  const allowed = tested === undefined ? icu : alone ? Math.max(icu, tested) : tested;
  const margin = marginPct(allowed, fault);
  work.step('margin', '(allowed/fault − 1)·100', { allowed: [allowed, 'kA'], fault: [fault, 'kA'], Icu: [icu, 'kA'] }, [margin, '%']);
  if (alone) return { verdict: 'pass', marginPct: margin };
  if (tested !== undefined) return { verdict: atMost(fault, tested) ? 'pass' : 'FAIL', marginPct: margin };
  if (takeover !== undefined && !atMost(takeover, icu)) return { verdict: 'FAIL', marginPct: margin };
  return notShown('above icu_kA only a tested pair counts: tested_kA is blank', margin);
}
