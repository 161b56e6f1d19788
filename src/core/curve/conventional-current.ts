import { type ConventionalFactors, breakerFactors, fuseFactors, miniatureFactors } from '../standards/conventional-currents';
import type { BandLimit } from '../standards/miniature-bands';
import { type Working, silent } from '../working';

export type ConventionalDevice = 'gG' | 'breaker' | 'miniature';

const factorsOf: Readonly<Record<ConventionalDevice, (rated: number) => ConventionalFactors>> = {
  gG: fuseFactors,
  breaker: () => breakerFactors,
  miniature: () => miniatureFactors,
};

/**
 * Conventional current of a device: certain trip (I2), or certain hold, within its conventional time.
 * Sources: IEC 60269-1/-2; IEC 60947-2:2016, table 6; IEC 60898-1:2015, table 7 (from memory).
 * @param rated rated current, A; for a breaker its setting Ir
 * @returns current, A
 */
export function conventionalCurrent(rated: number, device: ConventionalDevice, limit: BandLimit, work: Working = silent): number {
  const factor = factorsOf[device](rated)[limit];
  const current = factor * rated;
  work.step(limit === 'trip' ? 'I2' : 'I no trip', `${factor}·In`, { In: [rated, 'A'], device, limit }, [current, 'A']);
  return current;
}
