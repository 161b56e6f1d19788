/**
 * Conventional currents as multiples of the rated current (of the setting Ir, for a breaker): the device certainly holds, or has
 * certainly tripped, within its conventional time.
 * Sources: gG fuse-links IEC 60269-1/-2; breakers IEC 60947-2:2016, table 6; miniature breakers IEC 60898-1:2015, table 7 (all from memory).
 */
export interface ConventionalFactors {
  readonly 'no trip': number;
  readonly trip: number;
}

/** Breakers: also where the trip band begins at either edge. */
export const breakerFactors: ConventionalFactors = { 'no trip': 1.05, trip: 1.3 };
export const miniatureFactors: ConventionalFactors = { 'no trip': 1.13, trip: 1.45 };

/** gG links by rated current, A. */
export function fuseFactors(rated: number): ConventionalFactors {
  if (rated <= 4) return { 'no trip': 1.5, trip: 2.1 };
  if (rated < 16) return { 'no trip': 1.5, trip: 1.9 };
  return { 'no trip': 1.25, trip: 1.6 };
}
