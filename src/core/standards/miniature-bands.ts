/**
 * Instantaneous bands of miniature circuit-breakers, multiples of the rated current: holds up to the first, trips from the second.
 * Source: IEC 60898-1:2015, table 2 (from memory).
 */
export const miniatureBands = {
  B: { 'no trip': 3, trip: 5 },
  C: { 'no trip': 5, trip: 10 },
  D: { 'no trip': 10, trip: 20 },
} as const;

export type MiniatureType = keyof typeof miniatureBands;
export type BandLimit = 'no trip' | 'trip';
