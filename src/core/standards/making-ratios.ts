/**
 * Short-circuit ratings of breakers and assemblies by band, r.m.s., kA: the power factor of the test circuit, and the least ratio
 * n of peak to r.m.s. that goes with it.
 * Source: IEC 60947-2:2016, tables 2 and 11; IEC 61439-1:2020, table 7 (from memory).
 */
export interface RatingBand {
  /** Rating up to which the band goes, kA. */
  readonly upTo: number;
  readonly pf: number;
  readonly n: number;
}

/** Breakers: the table begins above this rating, kA. */
export const BREAKER_TABLE_ABOVE = 4.5;

export const breakerBands: readonly RatingBand[] = [
  { upTo: 6, pf: 0.7, n: 1.5 },
  { upTo: 10, pf: 0.5, n: 1.7 },
  { upTo: 20, pf: 0.3, n: 2 },
  { upTo: 50, pf: 0.25, n: 2.1 },
  { upTo: Infinity, pf: 0.2, n: 2.2 },
];

export const assemblyBands: readonly RatingBand[] = [
  { upTo: 5, pf: 0.7, n: 1.5 },
  { upTo: 10, pf: 0.5, n: 1.7 },
  { upTo: 20, pf: 0.3, n: 2 },
  { upTo: 50, pf: 0.25, n: 2.1 },
  { upTo: Infinity, pf: 0.2, n: 2.2 },
];
