import { figure } from '../figure';
import { type Judgement, atMost, notShown } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

export type DeviceKind = 'breaker' | 'fuse';

/**
 * What a device needs before it may return to service, in words: no more than the test sequences of its product standard let one say.
 * It never says that a device is fit.
 * Source: IEC 60947-2:2016, 8.3 sequences II and III (from memory).
 * @param fault fault current that flowed, kA
 * @param icu   ultimate breaking capacity (of a fuse: rated breaking capacity), kA
 * @param ics   service breaking capacity, kA; of breakers, where it decides
 */
export function afterFault(fault: number, icu: number | undefined, ics: number | undefined, kind: DeviceKind, work: Working = silent): string | Judgement {
  if (icu === undefined) return notShown('missing: icu_kA');
  if (kind === 'breaker' && ics !== undefined && !atMost(ics, icu)) throw outOfRange('ics_kA', `${figure(ics)} kA is above icu_kA, ${figure(icu)} kA`);
  const answer = kind === 'fuse' ? afterFuse(fault, icu) : afterBreaker(fault, icu, ics);
  if (answer === undefined) return notShown('missing: ics_kA');
  const capacities = { Icu: [icu, 'kA'] as const, ...(kind === 'breaker' && ics !== undefined ? { Ics: [ics, 'kA'] as const } : {}) };
  work.step('finding', 'fault against breaking capacity', { Ik: [fault, 'kA'], ...capacities }, answer);
  return answer;
}

const afterFuse = (fault: number, icu: number): string =>
  atMost(fault, icu) ? 'replace all links; inspect the switch and carriers before return' : 'beyond rating: replace switch and links; examine the assembly';

function afterBreaker(fault: number, icu: number, ics: number | undefined): string | undefined {
  if (!atMost(fault, icu)) return 'beyond Icu: replace; examine the assembly';
  if (ics === undefined) return undefined;
  return atMost(fault, ics) ? 'within Ics: inspect, measure and test before return' : "above Ics: replace, or maker's inspection before any return";
}
