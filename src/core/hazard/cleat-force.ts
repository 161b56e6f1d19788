import { type Working, silent } from '../working';

/** How the cables of a circuit lie: three in trefoil or flat, or the two of a single-phase circuit. */
export type Formation = 'trefoil' | 'flat' | 'pair';

/** Factors of the force a metre; the standard rounds √3/2·0.2 to 0.17. Source: IEC 61914:2021, annex B (from memory). */
const factors: Readonly<Record<Formation, number>> = { trefoil: 0.17, flat: 0.17, pair: 0.2 };

/**
 * Greatest force a metre between cables in a fault.
 * Source: IEC 61914:2021, annex B (from memory).
 * @param peak    peak current, kA
 * @param spacing distance between centres, m
 * @returns force per length, N/m
 */
export function cleatForce(peak: number, spacing: number, formation: Formation, work: Working = silent): number {
  const force = (factors[formation] * peak ** 2) / spacing;
  work.step('F', 'f·ip²/S', { f: factors[formation], ip: [peak, 'kA'], S: [spacing, 'm'] }, [force, 'N/m']);
  return force;
}
