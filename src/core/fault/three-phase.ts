import type { Complex } from '../complex';
import { type Working, silent } from '../working';

/**
 * Prospective three-phase short-circuit current Ik", far from generators.
 * Source: IEC 60909-0:2016, 7.2; c: table 1.
 * @param z      short-circuit impedance, mΩ
 * @param volts  nominal line voltage, V
 * @param c      voltage factor
 * @returns kA
 */
export function threePhaseFault(z: Complex, volts: number, c: number, work: Working = silent): number {
  const current = (c * volts) / (Math.sqrt(3) * z.abs()); // V/mΩ = kA
  work.step('Ik"', 'c·Un/(√3·|Z|)', { c, Un: [volts, 'V'], '|Z|': [z.abs(), 'mΩ'] }, [current, 'kA']);
  return current;
}

/**
 * Two-phase short-circuit current clear of earth.
 * Source: IEC 60909-0:2016, 7.3.
 * @param z1  positive-sequence impedance, mΩ
 * @param z2  negative-sequence impedance, mΩ; equal to z1 it gives √3/2 of the three-phase current
 * @returns kA
 */
export function twoPhaseFault(z1: Complex, z2: Complex, volts: number, c: number, work: Working = silent): number {
  const sum = z1.add(z2).abs();
  const current = (c * volts) / sum;
  work.step('Ik2"', 'c·Un/|Z1+Z2|', { c, Un: [volts, 'V'], '|Z1+Z2|': [sum, 'mΩ'] }, [current, 'kA']);
  return current;
}
