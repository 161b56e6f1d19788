import { atLeast } from '../judgement';
import { outOfRange } from '../refusal';
import { inOpenAir } from '../standards/arc-electrodes';
import { arcEnergyCoefficients, leastDistance } from '../standards/arc-energy';
import { type Working, silent } from '../working';
import { type ArcCase, arcCurrent, arcCurrentAt600 } from './arc-current';
import { polynomial } from './polynomial';

/** An arc of a certain duration. */
export interface TimedArc extends ArcCase {
  /** Duration, ms. */
  readonly time: number;
  /** Correction for the size of the enclosure; 1 in open air. */
  readonly boxFactor: number;
  /** Whether the reduced arcing current flows; I600 stays as it is. */
  readonly reduced: boolean;
}

/** lg of the energy in J/cm² at 1 mm: all of the standard's exponent but its term of distance. */
function lgEnergyAtOneMillimetre(arc: TimedArc, work: Working): number {
  const { fault, gap, electrodes, time, boxFactor } = arc;
  if (inOpenAir(electrodes) && boxFactor !== 1) throw outOfRange('box_factor', '1 in open air');
  const { k1, k2, k3, polynomial: coefficients, k11, k13 } = arcEnergyCoefficients[electrodes];
  const exponent =
    k1 + k2 * Math.log10(gap) + (k3 * arcCurrentAt600(arc)) / polynomial(coefficients, fault) +
    k11 * Math.log10(fault) + k13 * Math.log10(arcCurrent(arc, arc.reduced, work)) + Math.log10(1 / boxFactor);
  return Math.log10((12.552 / 50) * time) + exponent;
}

/**
 * Arc energy at a distance from the electrodes.
 * Source: IEEE 1584-2018, 4.6 (two public copies that agree).
 * @param distance working distance, mm, from 305
 * @returns energy, J/cm²
 */
export function arcEnergy(arc: TimedArc, distance: number, work: Working = silent): number {
  const { k12 } = arcEnergyCoefficients[arc.electrodes];
  const energy = 10 ** (lgEnergyAtOneMillimetre(arc, work) + k12 * Math.log10(distance));
  work.step('E', '(12.552/50)·T·10^(k1 + … + k12·lg D + k13·lg Iarc + lg(1/CF))', { T: [arc.time, 'ms'], D: [distance, 'mm'], CF: arc.boxFactor }, [energy, 'J/cm²']);
  return energy;
}

/**
 * Distance at which the arc energy falls to a limit.
 * Source: IEEE 1584-2018, 4.7 (from memory).
 * @param limit energy, J/cm²
 * @returns distance, mm; refused inside the least distance of the model
 */
export function arcBoundary(arc: TimedArc, limit: number, work: Working = silent): number {
  const { k12 } = arcEnergyCoefficients[arc.electrodes];
  const distance = 10 ** ((Math.log10(limit) - lgEnergyAtOneMillimetre(arc, work)) / k12);
  if (!atLeast(distance, leastDistance)) throw outOfRange(undefined, `the boundary lies inside ${leastDistance} mm, the least distance of the model`);
  work.step('D', '10^((lg limit − lg E without D)/k12)', { limit: [limit, 'J/cm²'], T: [arc.time, 'ms'], CF: arc.boxFactor, k12 }, [distance, 'mm']);
  return distance;
}
