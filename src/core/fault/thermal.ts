import { type Working, silent } from '../working';

/**
 * Factor m of the heat effect of the d.c. part: 2 at κ = 2.
 * Source: IEC 60909-0:2016, 12.
 * @param kappa  peak factor, 1.02 to 2
 * @param time   fault duration, s
 * @param hz     frequency, Hz
 */
export function directPartFactor(kappa: number, time: number, hz: number, work: Working = silent): number {
  const x = 2 * hz * time * Math.log(kappa - 1);
  // expm1 keeps the quotient exact as κ nears 2, where both its parts vanish.
  const m = x === 0 ? 2 : Math.expm1(2 * x) / x;
  work.step('m', '(e^(4·f·t·ln(κ−1))−1)/(2·f·t·ln(κ−1))', { f: [hz, 'Hz'], t: [time, 's'], κ: kappa }, m);
  return m;
}

/**
 * Thermal equivalent short-circuit current: steady current that heats as much as the real, offset one over the time.
 * Source: IEC 60909-0:2016, 12.
 * @param current  initial short-circuit current, kA r.m.s.
 * @param m        factor of the d.c. part
 * @param n        factor of the a.c. part; 1 far from generators
 * @returns kA
 */
export function thermalEquivalent(current: number, m: number, n: number, work: Working = silent): number {
  const thermal = current * Math.sqrt(m + n);
  work.step('Ith', 'Ik"·√(m+n)', { 'Ik"': [current, 'kA'], m, n }, [thermal, 'kA']);
  return thermal;
}

/**
 * Decaying d.c. part of a short-circuit current, its greatest possible value at a moment.
 * Source: IEC 60909-0:2016, d.c. component.
 * @param current  initial short-circuit current, kA r.m.s.
 * @param rOverX   R/X of the path
 * @param time     moment after the start, ms
 * @param hz       frequency, Hz
 * @returns kA
 */
export function directPart(current: number, rOverX: number, time: number, hz: number, work: Working = silent): number {
  const value = Math.SQRT2 * current * Math.exp(-2 * Math.PI * hz * (time / 1000) * rOverX);
  work.step('i_dc', '√2·Ik"·e^(−2π·f·t·R/X)', { 'Ik"': [current, 'kA'], f: [hz, 'Hz'], t: [time, 'ms'], 'R/X': rOverX }, [value, 'kA']);
  return value;
}
