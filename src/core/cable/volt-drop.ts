import type { Complex } from '../complex';
import { sineOf } from '../power-factor';
import { type Working, silent } from '../working';

const SQRT3 = Math.sqrt(3);

/**
 * Volt drop along a run, lagging power factor.
 * Source: IEC 60364-5-52:2009, annex G (from memory).
 * @param load current, A
 * @param pf   power factor, lagging
 * @param z    impedance of one line conductor over the whole run, hot, mΩ
 * @returns three-phase: between lines; one phase: out and back; V
 */
export function voltDrop(load: number, pf: number, z: Complex, phases: number, work: Working = silent): number {
  const sin = sineOf(pf);
  const conductors = phases === 3 ? SQRT3 : 2;
  const drop = (conductors * load * (z.re * pf + z.im * sin)) / 1000;
  const inputs = { Ib: [load, 'A'], Z: [z, 'mΩ'], 'cos φ': pf, 'sin φ': sin } as const;
  work.step('ΔU', phases === 3 ? '√3·Ib·(R·cos φ + X·sin φ)' : '2·Ib·(R·cos φ + X·sin φ)', inputs, [drop, 'V']);
  return drop;
}
