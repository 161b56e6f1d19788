import { arcCurrentCoefficients } from '../standards/arc-current';
import type { Electrodes } from '../standards/arc-electrodes';
import { arcVariationCoefficients } from '../standards/arc-variation';
import { type Working, silent } from '../working';
import { polynomial } from './polynomial';

/** Arrangement on which arcing current and energy depend alike. */
export interface ArcCase {
  /** Bolted three-phase fault current, kA, 0.5 to 106. */
  readonly fault: number;
  /** Gap between the electrodes, mm, 6.35 to 76.2. */
  readonly gap: number;
  readonly electrodes: Electrodes;
  /** Voltage between lines, V, 208 to 600. */
  readonly volts: number;
}

/**
 * Arcing current at 600 V, kA: the figure from which those at lower voltages are found.
 * Source: IEEE 1584-2018, 4.4 (two public copies that agree).
 */
export function arcCurrentAt600({ fault, gap, electrodes }: ArcCase, work: Working = silent): number {
  const { powerOfTen: [k1, k2, k3], polynomial: coefficients } = arcCurrentCoefficients[electrodes];
  const current = 10 ** (k1 + k2 * Math.log10(fault) + k3 * Math.log10(gap)) * polynomial(coefficients, fault);
  work.step('I600', '10^(k1 + k2·lg I + k3·lg G)·(k4·I⁶ + … + k10)', { I: [fault, 'kA'], G: [gap, 'mm'], electrodes }, [current, 'kA']);
  return current;
}

/**
 * Arcing current between 208 and 600 V, or its reduced case, which may take longer to clear.
 * Source: IEEE 1584-2018, 4.4 and 4.5 (two public copies that agree).
 * @param reduced the reduced current, less by half the variation
 * @returns current, kA
 */
export function arcCurrent(arc: ArcCase, reduced: boolean, work: Working = silent): number {
  const i600 = arcCurrentAt600(arc, work);
  const { fault, electrodes } = arc;
  const v = arc.volts / 1000;
  const full = 1 / Math.sqrt((0.6 / v) ** 2 * (1 / i600 ** 2 - (0.6 ** 2 - v ** 2) / (0.6 ** 2 * fault ** 2)));
  work.step('Iarc', '1/√((0.6/V)²·(1/I600² − (0.36 − V²)/(0.36·I²)))', { V: [v, 'kV'], I600: [i600, 'kA'], I: [fault, 'kA'] }, [full, 'kA']);
  if (!reduced) return full;
  const variation = polynomial(arcVariationCoefficients[electrodes], v);
  const least = full * (1 - 0.5 * variation);
  work.step('VarCf', 'k1·V⁶ + … + k7', { V: [v, 'kV'], electrodes }, variation);
  work.step('Iarc min', 'Iarc·(1 − 0.5·VarCf)', { Iarc: [full, 'kA'], VarCf: variation }, [least, 'kA']);
  return least;
}
