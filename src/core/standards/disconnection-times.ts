/**
 * Longest disconnection times, a.c., s.
 * Source: IEC 60364-4-41:2005+A1:2017, table 41.1 and 411.3.2.3, 411.3.2.4; IT by 411.6.4 (from memory).
 */
export type EarthingSystem = 'TN' | 'TT';

/** Final circuits: up to this voltage line to earth, V. The table begins above 50 V. */
export const finalCircuitTimes: readonly (Readonly<Record<EarthingSystem, number>> & { readonly upTo: number })[] = [
  { upTo: 120, TN: 0.8, TT: 0.3 },
  { upTo: 230, TN: 0.4, TT: 0.2 },
  { upTo: 400, TN: 0.2, TT: 0.07 },
  { upTo: Infinity, TN: 0.1, TT: 0.04 },
];

export const distributionCircuitTimes: Readonly<Record<EarthingSystem, number>> = { TN: 5, TT: 1 };
