import { type Working, silent } from '../working';

/**
 * How the ratio R/X was found: plain (radial); B, at the place of a meshed network; C, with reactances at 0.4 of the frequency.
 */
export type PeakMethod = 'plain' | 'B' | 'C';

/** Greatest peak factor of method B in low-voltage networks. Source: IEC 60909-0:2016, 8.1.2. */
const MOST_LOW_VOLTAGE = 1.8;
/** Peak factor of a low-voltage motor group. Source: IEC 60909-0:2016, 11. */
const MOTOR_PEAK_FACTOR = 1.3;

const plain = (rOverX: number): number => 1.02 + 0.98 * Math.exp(-3 * rOverX);

/**
 * Peak factor κ: the first peak over √2 times the r.m.s. short-circuit current.
 * Source: IEC 60909-0:2016, 8.1.1 (plain) and 8.1.2 (methods B and C).
 * @param rOverX  R/X; for method C the ratio Rc/Xc with reactances at 0.4 of the frequency
 * @returns 1.02 to 2
 */
export function peakFactor(rOverX: number, method: PeakMethod = 'plain', work: Working = silent): number {
  if (method === 'B') {
    const factor = Math.min(MOST_LOW_VOLTAGE, 1.15 * plain(rOverX));
    work.step('κ', 'min(1.8, 1.15·(1.02+0.98·e^(−3·R/X))), method B', { 'R/X': rOverX }, factor);
    return factor;
  }
  if (method === 'C') {
    const factor = plain(0.4 * rOverX);
    work.step('κ', '1.02+0.98·e^(−3·0.4·Rc/Xc), method C', { 'Rc/Xc': rOverX }, factor);
    return factor;
  }
  const factor = plain(rOverX);
  work.step('κ', '1.02+0.98·e^(−3·R/X), plain', { 'R/X': rOverX }, factor);
  return factor;
}

/**
 * Greatest instantaneous short-circuit current, network and low-voltage motors together.
 * Source: IEC 60909-0:2016, 8.1 and 11.
 * @param network  fault current without the motors, kA r.m.s.
 * @param kappa    peak factor of the network
 * @param motors   fault current of the motors, kA r.m.s.
 * @returns kA peak
 */
export function peakCurrent(network: number, kappa: number, motors = 0, work: Working = silent): number {
  const peak = Math.SQRT2 * (kappa * network + MOTOR_PEAK_FACTOR * motors);
  work.step('ip', '√2·(κ·Ik+1.3·I_M)', { κ: kappa, Ik: [network, 'kA'], I_M: [motors, 'kA'] }, [peak, 'kA']);
  return peak;
}
