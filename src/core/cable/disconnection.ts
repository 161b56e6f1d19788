import { atMost } from '../judgement';
import { distributionCircuitTimes, finalCircuitTimes } from '../standards/disconnection-times';
import { type Working, silent } from '../working';

export type SystemType = 'TN' | 'TT' | 'IT';
export type CircuitType = 'final' | 'distribution';

/**
 * Longest disconnection time allowed, a.c. IT counts as TN: second fault, exposed parts earthed together.
 * Source: IEC 60364-4-41:2005+A1:2017, 411.3.2 and table 41.1; IT 411.6.4 (from memory).
 * @param u0 line to earth, V, above 50
 * @returns time, s
 */
export function disconnectionLimit(system: SystemType, circuit: CircuitType, u0: number, work: Working = silent): number {
  const counted = system === 'IT' ? 'TN' : system;
  const row = finalCircuitTimes.find(({ upTo }) => atMost(u0, upTo))!;
  const time = circuit === 'final' ? row[counted] : distributionCircuitTimes[counted];
  work.step('t', `table, ${counted} ${circuit}`, { U0: [u0, 'V'] }, [time, 's']);
  return time;
}
