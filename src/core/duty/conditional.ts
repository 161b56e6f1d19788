import { type Judgement, judged, notShown } from '../judgement';
import { type Working, silent } from '../working';

/** Names of devices compare without case and without spaces. */
const folded = (device: string): string => device.toLowerCase().replace(/\s/g, '');

/**
 * Is a conditional rating enough, and is the protecting device the one it was tested with? Another device shows nothing.
 * Source: IEC 61439-1:2020, 5.3.5 and 10.11; IEC 60947-3:2020, 4.3.6.4 (from memory).
 * @param fault       prospective r.m.s. current, kA
 * @param conditional conditional short-circuit rating, kA
 * @param tested      device of the test
 * @param fitted      device fitted
 */
export function judgeConditional(fault: number, conditional: number, tested: string, fitted: string, work: Working = silent): Judgement {
  if (folded(tested) !== folded(fitted)) return notShown(`another device: tested with "${tested}", fitted "${fitted}"`);
  const judgement = judged(fault, conditional);
  work.step('margin', '(conditional/Ik − 1)·100', { conditional: [conditional, 'kA'], Ik: [fault, 'kA'] }, [judgement.marginPct!, '%']);
  return judgement;
}
