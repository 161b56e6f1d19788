import type { Metal } from '../standards/conductor-resistance';
import { type NonAdiabaticInsulation, heatLossConstants } from '../standards/non-adiabatic-factors';
import { type Working, silent } from '../working';

/**
 * How much more current a conductor stands because some heat leaves it during the fault.
 * Source: IEC 60949:1988, clause 5 (from memory).
 * @param csa  conductor cross-section, mm²
 * @param time fault duration, s
 * @returns factor ε of a current, 1 or more; ε² of a joule integral
 */
export function nonAdiabaticFactor(csa: number, time: number, metal: Metal, insulation: NonAdiabaticInsulation, work: Working = silent): number {
  const { x, y } = heatLossConstants[insulation][metal];
  const factor = Math.sqrt(1 + x * Math.sqrt(time / csa) + (y * time) / csa);
  work.step('ε', '√(1 + X·√(t/S) + Y·t/S)', { X: x, Y: y, t: [time, 's'], S: [csa, 'mm²'] }, factor);
  return factor;
}
