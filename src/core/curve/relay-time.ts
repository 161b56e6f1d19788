import { figure } from '../figure';
import { atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { GREATEST_MULTIPLE, type InverseTimeLaw, inverseTimeLaws } from '../standards/inverse-time';
import { type Working, silent } from '../working';

/**
 * Nominal operating time of an inverse-time overcurrent relay.
 * Source: IEC 60255-151:2009 (from memory).
 * @param current    current, A, above the setting and up to 20 times of it, at the relay's own voltage
 * @param setting    setting, A
 * @param multiplier time multiplier setting
 * @returns time, s
 */
export function relayTime(current: number, setting: number, multiplier: number, law: InverseTimeLaw, work: Working = silent): number {
  // So rounding never divides by nothing: a current at the setting, to 1 part in 10⁹, does not exceed it.
  if (atMost(current, setting)) throw outOfRange('current_A', `${figure(current)} does not exceed the setting ${figure(setting)}`);
  if (!atMost(current, GREATEST_MULTIPLE * setting)) throw outOfRange('current_A', `${figure(current)} is over ${GREATEST_MULTIPLE} times the setting ${figure(setting)}`);
  const { k, alpha } = inverseTimeLaws[law];
  const multiple = current / setting;
  const time = (multiplier * k) / (multiple ** alpha - 1);
  work.step('M', 'I/Is', { I: [current, 'A'], Is: [setting, 'A'] }, multiple);
  work.step('t', `TMS·${k}/(M^${alpha} − 1)`, { TMS: multiplier, M: multiple, law }, [time, 's']);
  return time;
}
