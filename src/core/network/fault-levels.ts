import type { Complex } from '../complex';
import { loopFault } from '../fault/earth';
import { type PeakMethod, peakCurrent, peakFactor } from '../fault/peak';
import { threePhaseFault } from '../fault/three-phase';
import { type Working, silent } from '../working';
import { type RowFault, rowFault } from './row-fault';

/** Fault levels at one place of a network. */
export interface FaultLevels {
  readonly z: Complex;
  /** kA */
  readonly ik3: number;
  /** kA */
  readonly ik2: number;
  readonly kappa: number;
  /** kA peak */
  readonly ip: number;
}

/** Least size of an impedance to a place, mΩ, as for the fault functions: below it the figures are a slip of units. */
const LEAST_SIZE = 0.1;

/** Said of a place whose impedance gives no fault level; nothing where it does. */
export function withoutLevel(z: Complex): RowFault | undefined {
  const size = z.abs();
  if (!Number.isFinite(size)) return rowFault('#NUM!', 'Z is not a finite number');
  return size >= LEAST_SIZE * (1 - 1e-9) ? undefined : rowFault('#NUM!', `size of Z is below ${LEAST_SIZE} mΩ: no fault level`);
}

/** R/X; without reactance the peak factor tends to its least value, 1.02. */
const rOverX = (z: Complex): number => (z.im === 0 ? Infinity : z.re / z.im);

/**
 * Fault levels behind an impedance.
 * Source: IEC 60909-0:2016, 7.2, 7.3, 8.1.
 * @param z       impedance at the place, mΩ
 * @param volts   nominal line voltage, V
 * @param c       voltage factor
 * @param method  plain in a tree; B or C in a mesh
 * @param ofRatio impedance whose R/X the peak factor takes; for method C the one with reactances at 0.4
 */
export function faultLevels(z: Complex, volts: number, c: number, method: PeakMethod, ofRatio: Complex = z, work: Working = silent): FaultLevels {
  const ik3 = threePhaseFault(z, volts, c, work);
  const kappa = peakFactor(rOverX(ofRatio), method, work);
  return { z, ik3, ik2: (ik3 * Math.sqrt(3)) / 2, kappa, ip: peakCurrent(ik3, kappa, 0, work) };
}

/** Line-to-earth fault current of a loop at line voltage Un, kA: (c·Un/√3)/|Z_loop|. */
export const earthFaultLevel = (loop: Complex, volts: number, c: number, work: Working = silent): number => loopFault(loop, volts / Math.sqrt(3), c, work);
