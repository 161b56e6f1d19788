import { type Working, silent } from '../working';

/** Correction factors of a cable's current-carrying capacity: ambient, grouping, insulation, and any other. */
export interface RatingFactors {
  ca: number;
  cg: number;
  ci: number;
  cc: number;
}

/** All correction factors in one. */
export const factorProduct = ({ ca, cg, ci, cc }: RatingFactors): number => ca * cg * ci * cc;

/**
 * Current a cable may carry as installed.
 * Source: IEC 60364-5-52:2009, 523 (from memory).
 * @param tabulated current of the table, A
 * @param runs      alike cables in parallel
 * @returns current Iz, A
 */
export function cableRating(tabulated: number, factors: RatingFactors, runs: number, work: Working = silent): number {
  const rating = tabulated * factors.ca * factors.cg * factors.ci * factors.cc * runs;
  work.step('Iz', 'It·Ca·Cg·Ci·Cc·n', { It: [tabulated, 'A'], Ca: factors.ca, Cg: factors.cg, Ci: factors.ci, Cc: factors.cc, n: runs }, [rating, 'A']);
  return rating;
}
