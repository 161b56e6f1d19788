import { atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { BREAKER_TABLE_ABOVE, type RatingBand, assemblyBands, breakerBands } from '../standards/making-ratios';
import { type Working, silent } from '../working';

export type RatedGear = 'breaker' | 'assembly';

const bandOf = (bands: readonly RatingBand[], rating: number): RatingBand => bands.find(({ upTo }) => atMost(rating, upTo))!;

/** Band of a breaker's rating, kA; undefined up to 4.5 kA, where none is stated. */
export const breakerBand = (rating: number): RatingBand | undefined => (atMost(rating, BREAKER_TABLE_ABOVE) ? undefined : bandOf(breakerBands, rating));

/**
 * Ratio n of peak to r.m.s. that the product standard takes for a rating.
 * Source: IEC 60947-2:2016, table 2; IEC 61439-1:2020, table 7 (from memory).
 * @param rating breaking capacity, or short-time withstand, kA r.m.s.
 * @returns ratio n
 */
export function peakRatio(rating: number, gear: RatedGear, work: Working = silent): number {
  const band = gear === 'breaker' ? breakerBand(rating) : bandOf(assemblyBands, rating);
  if (band === undefined) throw outOfRange('rating_kA', `no ratio stated for a breaker up to ${BREAKER_TABLE_ABOVE} kA`);
  work.step('n', `table, ${gear}`, { rating: [rating, 'kA'] }, band.n);
  return band.n;
}
