import { figure } from '../figure';
import { atMost, nearly } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { type Edge, edgeFactor } from './edge';
import { type CurvePoints, onLogLine } from './interpolate';

/**
 * Least current at which a device operates within a time, from points of its mean curve at one edge. On a level stretch its left
 * end, on a vertical step the step.
 * Source: curve tolerance ±10 % in current, IEC 60269-1 (from memory); the user's sheet.
 * @param points       mean curve, A and s
 * @param time         time, s
 * @param tolerancePct tolerance of the curve in current, %
 * @returns current, A
 */
export function curveCurrent(points: CurvePoints, time: number, tolerancePct: number, edge: Edge, work: Working = silent): number {
  const mean = meanCurrent(points, time);
  const current = mean * edgeFactor(edge, tolerancePct);
  work.step('I mean', 'least current with curve ≤ t', { t: [time, 's'] }, [mean, 'A']);
  work.step('I', 'I mean·(1 ± tolerance)', { 'I mean': [mean, 'A'], tolerance: [tolerancePct, '%'], edge }, [current, 'A']);
  return current;
}

function meanCurrent({ x, y }: CurvePoints, time: number): number {
  const [longest, shortest] = [y[0]!, y[y.length - 1]!];
  const i = y.findIndex((value) => atMost(value, time));
  if (i < 0 || (i === 0 && !nearly(longest, time))) throw outOfRange('time_s', `${figure(time)} is outside the points, ${figure(shortest)} to ${figure(longest)} s`);
  if (nearly(y[i]!, time)) return x[i]!;
  return onLogLine(y[i - 1]!, x[i - 1]!, y[i]!, x[i]!, time);
}
