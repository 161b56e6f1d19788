import { rounded } from '../figure';
import { type Judgement, judged, notShown } from '../judgement';
import { outOfRange } from '../refusal';
import { sameLevel } from '../same-level';
import { type Working, silent } from '../working';

/**
 * Does a conductor, busbar or switch stand what the device lets through? Compared only where both belong to one fault level.
 * Source: IEC 60364-4-43:2023, 434.5.2.
 * @param letThrough joule integral let through, A²s
 * @param withstand  joule integral withstood, A²s
 * @param readAt     fault level at which the let-through was read, kA
 * @param fault      fault level at the place, kA, within 1 % of it
 */
export function judgeLetThrough(letThrough: number, withstand: number, readAt: number, fault: number, work: Working = silent): Judgement {
  if (!sameLevel(readAt, fault)) return notShown(`levels differ: let-through at ${rounded(readAt)} kA, fault ${rounded(fault)} kA`);
  const judgement = judged(letThrough, withstand);
  work.step('margin', '(withstand/let-through − 1)·100', { withstand: [withstand, 'A²s'], 'let-through': [letThrough, 'A²s'] }, [judgement.marginPct!, '%']);
  return judgement;
}

/** Half a cycle at 50 Hz, s. */
const HALF_CYCLE = 0.01;

/** At or over half a cycle of the prospective current: what no limiting device lets through at its high fault levels. */
export const isUnlimited = (letThrough: number, fault: number): boolean => letThrough >= (1000 * fault) ** 2 * HALF_CYCLE;

/**
 * Let-through of one option against another's, at one fault level.
 * @param a      joule integral let through by the first, A²s
 * @param b      joule integral let through by the second, A²s
 * @param levelA fault level at which the first was read, kA
 * @param levelB fault level at which the second was read, kA, within 1 % of it
 * @returns ratio a/b
 */
export function letThroughRatio(a: number, b: number, levelA: number, levelB: number, work: Working = silent): number {
  if (!sameLevel(levelA, levelB)) throw outOfRange(undefined, `levels differ: a at ${rounded(levelA)} kA, b at ${rounded(levelB)} kA`);
  const ratio = a / b;
  work.step('ratio', 'a/b', { a: [a, 'A²s'], b: [b, 'A²s'] }, ratio);
  work.step('a in per cent of b', '100·a/b', { a: [a, 'A²s'], b: [b, 'A²s'] }, [100 * ratio, '%']);
  return ratio;
}
