import { type Complex, complex } from '../complex';
import { outOfRange } from '../refusal';
import { type Metal, listedResistance, listedSizes } from '../standards/conductor-resistance';
import { type Working, silent } from '../working';

/** Temperature coefficient of resistance for copper and aluminium alike, per K, as IEC 60909-0:2016, 6.4 takes it. */
export const ALPHA = 0.004;

/**
 * Impedance of a run of line, cable or busbar trunking, from its figures per metre.
 * Source: IEC 60909-0:2016, 6.4.
 * @param length       m
 * @param r20          resistance at 20 °C, mΩ/m
 * @param x            reactance, mΩ/m
 * @param runs         runs in parallel
 * @param temperature  conductor temperature, °C
 * @returns mΩ
 */
export function lineImpedance(length: number, r20: number, x: number, runs: number, temperature: number, work: Working = silent): Complex {
  const hot = 1 + ALPHA * (temperature - 20);
  const result = complex((r20 * hot * length) / runs, (x * length) / runs);
  work.step('R', 'R20·(1+0.004·(θ−20))·l/n', { R20: [r20, 'mΩ/m'], θ: [temperature, '°C'], l: [length, 'm'], n: runs }, [result.re, 'mΩ']);
  work.step('X', 'x·l/n', { x: [x, 'mΩ/m'], l: [length, 'm'], n: runs }, [result.im, 'mΩ']);
  return result;
}

/**
 * Resistance of a listed conductor at 20 °C, mΩ/m.
 * Source: IEC 60228:2023, class 2.
 * @param csa  conductor cross-section, mm²; refused where it is not listed for the metal, nothing is interpolated
 */
export function conductorResistance(csa: number, metal: Metal, work: Working = silent): number {
  const r20 = listedResistance(csa, metal);
  if (r20 === undefined) throw outOfRange('csa_mm2', `${Number(csa.toPrecision(12))} is not a listed ${metal} size (${listedSizes[metal].join(', ')}); use IMP_PER_METRE`);
  work.step('R20', 'IEC 60228 class 2', { S: [csa, 'mm²'], metal }, [r20, 'mΩ/m']);
  return r20;
}
