import type { Complex } from '../complex';
import { type Working, silent } from '../working';

export interface SequenceImpedances {
  /** Positive-, negative- and zero-sequence impedance, mΩ. */
  z1: Complex;
  z2: Complex;
  z0: Complex;
}

/**
 * Line-to-earth short-circuit current by sequence impedances.
 * Source: IEC 60909-0:2016, 7.5.
 * @param volts  nominal line voltage, V
 * @param c      voltage factor
 * @returns kA
 */
export function lineToEarthFault({ z1, z2, z0 }: SequenceImpedances, volts: number, c: number, work: Working = silent): number {
  const sum = z1.add(z2).add(z0).abs();
  const current = (Math.sqrt(3) * c * volts) / sum;
  work.step('Ik1"', '√3·c·Un/|Z1+Z2+Z0|', { c, Un: [volts, 'V'], '|Z1+Z2+Z0|': [sum, 'mΩ'] }, [current, 'kA']);
  return current;
}

/**
 * Current that flows to earth in a short circuit of two lines and earth.
 * Source: IEC 60909-0:2016, 7.4.
 * @param volts  nominal line voltage, V
 * @param c      voltage factor
 * @returns kA
 */
export function twoLinesToEarthFault({ z1, z2, z0 }: SequenceImpedances, volts: number, c: number, work: Working = silent): number {
  const products = z1.mul(z2).add(z1.mul(z0)).add(z2.mul(z0)).abs();
  const current = (Math.sqrt(3) * c * volts * z2.abs()) / products;
  work.step('IkE2E"', '√3·c·Un·|Z2|/|Z1·Z2+Z1·Z0+Z2·Z0|', { c, Un: [volts, 'V'], Z1: [z1, 'mΩ'], Z2: [z2, 'mΩ'], Z0: [z0, 'mΩ'] }, [current, 'kA']);
  return current;
}

/**
 * Line-to-earth or line-to-neutral short-circuit current from the impedance of the loop.
 * Source: IEC 60364-4-41:2005+A1:2017, 411.4.4; c: IEC 60909-0:2016, table 1.
 * @param z   impedance of the loop: source, line and return, mΩ
 * @param u0  nominal voltage of line to earth, V
 * @param c   voltage factor
 * @returns kA
 */
export function loopFault(z: Complex, u0: number, c: number, work: Working = silent): number {
  const current = (c * u0) / z.abs();
  work.step('Ik1', 'c·U0/|Z_loop|', { c, U0: [u0, 'V'], '|Z_loop|': [z.abs(), 'mΩ'] }, [current, 'kA']);
  return current;
}
