import { type Edge, curveAtEdge } from '../curve/edge';
import type { CurvePoints, Side } from '../curve/interpolate';
import { rounded } from '../figure';
import { SLACK } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { boundedTime, crossing, sharedBreaks } from './pair';

/**
 * Take-over current of a fuse upstream of a breaker: above it, up to the end of the common range, the fuse clears first.
 * Exact on log-log lines; a crossing on a vertical step of either curve is the step.
 * Source: IEC 60947-2:2016, annex A (from memory).
 * @param fusePoints    mean curve of the fuse, A and s, moved to the edge by its tolerance
 * @param breakerPoints curve of the breaker as it stands, A and s
 * @param tolerancePct  tolerance of the fuse's curve in current, %
 * @returns current, kA
 */
export function takeoverCurrent(fusePoints: CurvePoints, breakerPoints: CurvePoints, tolerancePct: number, edge: Edge, work: Working = silent): number {
  const fuse = curveAtEdge(fusePoints, edge, tolerancePct);
  const from = Math.max(fuse.x[0]!, breakerPoints.x[0]!);
  const to = Math.min(fuse.x[fuse.x.length - 1]!, breakerPoints.x[breakerPoints.x.length - 1]!);
  if (!(to > from)) throw outOfRange('fuse_points', 'no common range of current with breaker_points');
  const current = lastTakeover(fuse, breakerPoints, sharedBreaks(fuse, breakerPoints, from, to));
  work.step('common range', 'both curves', { from: [from, 'A'], to: [to, 'A'] }, `${rounded(from, 6)} to ${rounded(to, 6)} A`);
  work.step('I takeover', 'greatest current with t fuse = t breaker', { edge, tolerance: [tolerancePct, '%'] }, [current, 'A']);
  return current / 1000;
}

function lastTakeover(fuse: CurvePoints, breaker: CurvePoints, breaks: readonly number[]): number {
  /** Above zero where the fuse is later: logarithm of the ratio of times, straight between two break points. */
  const lateness = (current: number, side: Side): number => Math.log(boundedTime(fuse, current, side) / boundedTime(breaker, current, side));
  /** Equal times to 1 part in 10⁹ are equal: the fuse is not yet first. */
  const fuseFirst = (value: number): boolean => value < -SLACK;
  const end = breaks.length - 1;
  for (let i = end; i >= 0; i -= 1) {
    const current = breaks[i]!;
    const behind = lateness(current, 'right');
    if (!fuseFirst(behind)) {
      if (i === end) throw outOfRange('fuse_points', 'the breaker is still first at the end of the common range');
      return crossing(current, Math.max(behind, 0), breaks[i + 1]!, lateness(breaks[i + 1]!, 'left'));
    }
    if (!fuseFirst(lateness(current, 'left'))) return current;
  }
  throw outOfRange('fuse_points', 'the fuse is first throughout the common range');
}
