import { type Working, silent } from '../working';

const SQRT3 = Math.sqrt(3);

/**
 * Design current of a load from its power. Circuit law.
 * @param power      power given out by the load, kW
 * @param pf         power factor
 * @param volts      three-phase: between lines; one phase: across the load, V
 * @param efficiency of the load, 1 where the power is that taken in
 * @returns current, A
 */
export function loadCurrent(power: number, pf: number, volts: number, phases: number, efficiency: number, work: Working = silent): number {
  const perPhase = phases === 3 ? SQRT3 : 1;
  const current = (1000 * power) / (perPhase * volts * pf * efficiency);
  const inputs = { P: [power, 'kW'], U: [volts, 'V'], 'cos φ': pf, η: efficiency } as const;
  work.step('Ib', phases === 3 ? 'P/(√3·U·cos φ·η)' : 'P/(U·cos φ·η)', inputs, [current, 'A']);
  return current;
}
