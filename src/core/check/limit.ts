import { type Judgement, atLeast, judged, marginPct } from '../judgement';
import { type Working, silent } from '../working';

export type Sense = 'at most' | 'at least';

/**
 * A value against a limit, both in one unit.
 * The margin is stated only where both are above 0; of others a per cent says nothing.
 * @param sense whether the value may be the limit at most, or must be the limit at least
 */
export function againstLimit(value: number, limit: number, sense: Sense, work: Working = silent): Judgement {
  const { verdict } = sense === 'at most' ? judged(value, limit) : { verdict: atLeast(value, limit) ? 'pass' as const : 'FAIL' as const };
  if (!(value > 0) || !(limit > 0)) return { verdict };
  const margin = sense === 'at most' ? marginPct(limit, value) : marginPct(value, limit);
  work.step('margin', sense === 'at most' ? '100·(limit/value − 1)' : '100·(value/limit − 1)', { value, limit }, [margin, '%']);
  return { verdict, marginPct: margin };
}
