import { figure } from '../figure';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { type Edge, edgeFactor, stepSide } from './edge';
import { type CurvePoints, logLogAt } from './interpolate';

/**
 * Operating time of a device at a current, read from points of its mean curve at one edge. Log-log straight lines, nothing outside.
 * Source: curve tolerance ±10 % in current, IEC 60269-1 (from memory); the user's sheet.
 * @param points       mean curve, A and s
 * @param current      current, A
 * @param tolerancePct tolerance of the curve in current, %
 * @returns time, s
 */
export function curveTime(points: CurvePoints, current: number, tolerancePct: number, edge: Edge, work: Working = silent): number {
  const factor = edgeFactor(edge, tolerancePct);
  const time = logLogAt(points, current / factor, stepSide(edge));
  if (time === undefined) {
    const [first, last] = [points.x[0]! * factor, points.x[points.x.length - 1]! * factor];
    throw outOfRange('current_A', `${figure(current)} is outside the ${edge} edge, ${figure(first)} to ${figure(last)} A`);
  }
  work.step('I mean', 'I/(1 ± tolerance)', { I: [current, 'A'], tolerance: [tolerancePct, '%'], edge }, [current / factor, 'A']);
  work.step('t', 'curve at I mean, log-log', { 'I mean': [current / factor, 'A'] }, [time, 's']);
  return time;
}
