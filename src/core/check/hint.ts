import { rounded } from '../figure';
import { type Compared, size } from './agree';

/**
 * Ratios that two figures of one quantity often stand in when one of them was worked differently. Own rule.
 * A conductor's resistance goes with 1 + 0.004·(θ − 20): 1.2 at 70 °C, 1.28 at 90 °C, 1.56 at 160 °C.
 */
const ratios: readonly (readonly [ratio: number, words: string])[] = [
  // Agreement is a ratio like the others, so that a wide tolerance never explains two figures that agree.
  [1, ''],
  [Math.SQRT2, 'r.m.s. against peak?'],
  [Math.sqrt(3), 'line against phase?'],
  [2 / Math.sqrt(3), 'three-phase against two-phase fault?'],
  [2, 'one against two runs or poles, or one way against both ways?'],
  [3, 'one against three phases or poles?'],
  [100, 'per cent against a ratio?'],
  [1000, 'a thousand: prefix of the unit?'],
  [1e6, 'a million: A²s against kA²s?'],
  [1.05, 'voltage factor c 1.05 against 1?'],
  [1 / 0.95, 'voltage factor c 0.95 against 1?'],
  [1.05 / 0.95, 'voltage factor of the greatest against the least fault?'],
  [1.1, 'voltage factor c 1.1 against 1?'],
  [1.2, 'conductor at 70 °C against 20 °C?'],
  [1.28, 'conductor at 90 °C against 20 °C?'],
  [1.56, 'conductor at 160 °C against 20 °C?'],
  [143 / 115, 'k 143 against 115?'],
  [(143 / 115) ** 2, 'k² of 143 against 115?'],
  [176 / 143, 'k 176 against 143?'],
  [(176 / 143) ** 2, 'k² of 176 against 143?'],
  [4.184, 'joules against calories?'],
];

/**
 * A guess why two figures differ, from their ratio; empty where they agree or nothing matches.
 * @param withinPct how near the ratio must lie, per cent
 */
export function hint(designer: Compared, checker: Compared, withinPct: number): string {
  if (designer.kind === 'words' || checker.kind === 'words') return '';
  if (designer.kind === 'number' && checker.kind === 'number' && Math.sign(designer.value) * Math.sign(checker.value) < 0) return 'sign changed';
  const [smaller, larger] = [size(designer), size(checker)].sort((a, b) => a - b) as [number, number];
  const found = larger / smaller;
  const distance = (ratio: number): number => Math.abs(Math.log(found / ratio));
  const [ratio, words] = ratios.reduce((best, next) => (distance(next[0]) < distance(best[0]) ? next : best));
  const near = Math.abs(found / ratio - 1) * 100 <= withinPct;
  return near && words !== '' ? `ratio ${rounded(found)}: ${words}` : '';
}
