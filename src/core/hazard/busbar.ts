import { type Working, silent } from '../working';

/**
 * Greatest force on a span of parallel rigid busbars in a fault: on the centre bar of three in a plane, or on either of two.
 * Source: IEC 60865-1:2011, 5.2 (from memory).
 * @param peak       peak current, kA
 * @param span       distance between supports, m
 * @param spacing    distance between centre lines, m
 * @param conductors 2 (line to line) or 3 (three-phase)
 * @returns force, N
 */
export function busbarForce(peak: number, span: number, spacing: number, conductors: number, work: Working = silent): number {
  const f = conductors === 3 ? Math.sqrt(3) / 2 : 1;
  const force = (2e-7 * f * (1000 * peak) ** 2 * span) / spacing;
  work.step('F', '2E-07·f·ip²·l/a', { f, ip: [peak, 'kA'], l: [span, 'm'], a: [spacing, 'm'] }, [force, 'N']);
  return force;
}

/**
 * Bending stress in a busbar under an evenly spread force.
 * Source: IEC 60865-1:2011, 5.4 and table 3 (from memory).
 * @param force   force on the span, N
 * @param span    distance between supports, m
 * @param modulus section modulus about the axis of bending, mm³
 * @param beta    factor of the supports: 1 both ends free to turn, 0.73 one end or a continuous bar, 0.5 both ends held
 * @param vSigma  ratio of dynamic to static stress
 * @returns stress, N/mm²
 */
export function busbarStress(force: number, span: number, modulus: number, beta: number, vSigma: number, work: Working = silent): number {
  const stress = (vSigma * beta * force * 1000 * span) / (8 * modulus);
  work.step('σ', 'Vσ·β·F·l/(8·W)', { Vσ: vSigma, β: beta, F: [force, 'N'], l: [span, 'm'], W: [modulus, 'mm³'] }, [stress, 'N/mm²']);
  return stress;
}
