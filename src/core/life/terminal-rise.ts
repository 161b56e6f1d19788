import { type Working, silent } from '../working';

/**
 * Terminal temperature rise to be expected after the heat loss has changed. An estimate.
 * Source: the limit of 80 K that it is held against is IEC 60947-2:2016 table 7 (from memory); the law is practice.
 * @param rise     rise at the loss known, K
 * @param loss     heat loss at that rise, W
 * @param lossNow  heat loss now, W
 * @param exponent 1 to be cautious, 0.8 for convection
 * @returns rise, K
 */
export function terminalRise(rise: number, loss: number, lossNow: number, exponent: number, work: Working = silent): number {
  const now = rise * (lossNow / loss) ** exponent;
  work.step('ΔT', 'ΔT·(P now/P)^n', { ΔT: [rise, 'K'], 'P now': [lossNow, 'W'], P: [loss, 'W'], n: exponent }, [now, 'K']);
  return now;
}
