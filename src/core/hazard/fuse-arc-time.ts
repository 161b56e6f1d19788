import { edgeFactor, stepSide } from '../curve/edge';
import { type CurvePoints, logLogAt } from '../curve/interpolate';
import { figure } from '../figure';
import { atLeast, atMost } from '../judgement';
import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';

/**
 * Clearing time of a fuse at an arc current, for arc energy: the slow edge of its curve, never below a floor.
 * Past the last point the floor stands if the last point is at or under it; else nothing is known there.
 * Source: IEEE 1584-2018, determination of arc durations (clause from memory); floor 10 ms: practice.
 * @param points       mean curve, A and s
 * @param arc          arc current, kA
 * @param tolerancePct tolerance of the curve in current, %
 * @param floor        least time stated, ms
 * @returns time, ms
 */
export function fuseArcTime(points: CurvePoints, arc: number, tolerancePct: number, floor: number, work: Working = silent): number {
  const factor = edgeFactor('slow', tolerancePct);
  const onCurve = (arc * 1000) / factor;
  const [first, last] = [points.x[0]!, points.x[points.x.length - 1]!];
  if (!atLeast(onCurve, first)) {
    const edge = arc * 1000 < first ? '' : ` of the slow edge, ${figure((first * factor) / 1000)} kA`;
    throw outOfRange('arc_kA', `${figure(arc)} is below the first point${edge}`);
  }
  const seconds = logLogAt(points, onCurve, stepSide('slow'));
  work.step('I mean', '1000·Iarc/(1 + tolerance)', { Iarc: [arc, 'kA'], tolerance: [tolerancePct, '%'] }, [onCurve, 'A']);
  if (seconds === undefined) {
    const shortest = points.y[points.y.length - 1]! * 1000;
    if (!atMost(shortest, floor)) {
      throw outOfRange('arc_kA', `${figure(arc)} is above the last point, ${figure((last * factor) / 1000)} kA, whose ${figure(shortest)} ms is over floor_ms`);
    }
    work.step('T', 'floor, past the last point', { floor: [floor, 'ms'], last: [shortest, 'ms'] }, [floor, 'ms']);
    return floor;
  }
  const time = Math.max(seconds * 1000, floor);
  work.step('T', 'curve at I mean, log-log, at least the floor', { curve: [seconds * 1000, 'ms'], floor: [floor, 'ms'] }, [time, 'ms']);
  return time;
}
