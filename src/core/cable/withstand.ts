import { type Working, silent } from '../working';

/**
 * Joule integral that a conductor withstands without passing its final temperature, adiabatic.
 * Source: IEC 60364-4-43:2023, 434.5.2.
 * @param k     adiabatic factor, A√s/mm²
 * @param csa   conductor cross-section, mm²
 * @param runs  conductors in parallel that share evenly
 * @returns joule integral, A²s
 */
export function withstandJouleIntegral(k: number, csa: number, runs: number, work: Working = silent): number {
  const joule = (k * csa * runs) ** 2;
  work.step('k²S²', '(k·S·n)²', { k: [k, 'A√s/mm²'], S: [csa, 'mm²'], n: runs }, [joule, 'A²s']);
  return joule;
}

/**
 * Fault current that a conductor withstands for a stated time, adiabatic.
 * Source: IEC 60364-4-43:2023, 434.5.2.
 * @param k     adiabatic factor, A√s/mm²
 * @param csa   conductor cross-section, mm²
 * @param time  fault duration, s, up to 5 s
 * @param runs  conductors in parallel that share evenly
 * @returns current, kA r.m.s.
 */
export function withstandCurrent(k: number, csa: number, time: number, runs: number, work: Working = silent): number {
  const current = (k * csa * runs) / Math.sqrt(time) / 1000;
  work.step('I', 'k·S·n/√t', { k: [k, 'A√s/mm²'], S: [csa, 'mm²'], n: runs, t: [time, 's'] }, [current, 'kA']);
  return current;
}
