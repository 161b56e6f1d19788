import { curveAtEdge } from '../curve/edge';
import { type CurvePoints, type Side, onLogLine } from '../curve/interpolate';
import { rounded } from '../figure';
import { type Judgement, SLACK, atLeast, notShown } from '../judgement';
import { type Working, silent } from '../working';
import { boundedTime, crossing, sharedBreaks } from './pair';

/** Ranges of a time-current curve by the minor device's slow time: overload from 1 s up, short-time from 0.1 s up, instantaneous below. */
export const RANGES = ['overload', 'short-time', 'instantaneous'] as const;
export type CurveRange = (typeof RANGES)[number];
const LEAST_TIME: Readonly<Record<CurveRange, number>> = { overload: 1, 'short-time': 0.1, instantaneous: 0 };

export interface RangeComparison {
  readonly range: CurveRange;
  /** Currents compared, A; undefined where the range is empty. */
  readonly span: { readonly from: number; readonly to: number; readonly leastRatio: number } | undefined;
  /** Least current of the range at which the major device may be the faster one, A. */
  readonly lostAt: number | undefined;
  readonly judgement: Judgement;
}

export interface CurvePairComparison {
  readonly ranges: readonly RangeComparison[];
  /** End of the comparison, A: the fault level, or the major device's last point if that comes first. */
  readonly end: number;
  /** First current of the major device's fast edge, A; below it its first time stands as a bound. */
  readonly majorStart: number;
}

/**
 * Compares two time-current curves, minor at its slow edge against major at its fast edge, range by range.
 * Source: IEC 60947-2:2016, annex A (from memory).
 * @param minorPoints       mean curve of the device nearer the fault, A and s
 * @param minorTolerancePct its tolerance in current, %
 * @param majorPoints       mean curve of the device upstream, A and s
 * @param majorTolerancePct its tolerance in current, %
 * @param fault             fault level, kA
 */
export function compareCurves(minorPoints: CurvePoints, minorTolerancePct: number, majorPoints: CurvePoints, majorTolerancePct: number, fault: number, work: Working = silent): CurvePairComparison {
  const minor = curveAtEdge(minorPoints, 'slow', minorTolerancePct);
  const major = curveAtEdge(majorPoints, 'fast', majorTolerancePct);
  const end = Math.min(fault * 1000, major.x[major.x.length - 1]!);
  let from = minor.x[0]!;
  const ranges = RANGES.map((range) => {
    const to = Math.min(end, lastCurrentFrom(minor, LEAST_TIME[range]));
    const comparison = compareRange(range, minor, major, from, to, end);
    from = Math.max(from, to);
    return comparison;
  });
  for (const { range, span, lostAt } of ranges) {
    if (span) work.step(`least ratio, ${range}`, 't major fast/t minor slow', { from: [span.from, 'A'], to: [span.to, 'A'] }, span.leastRatio);
    if (lostAt !== undefined) work.step(`I lost, ${range}`, 'first current with ratio < 1', {}, [lostAt, 'A']);
  }
  return { ranges, end, majorStart: major.x[0]! };
}

/** Greatest current at which a falling curve still takes at least this time, A. */
function lastCurrentFrom({ x, y }: CurvePoints, time: number): number {
  const last = y.findLastIndex((value) => atLeast(value, time));
  if (last < 0) return 0;
  const next = last + 1;
  if (next === y.length) return Infinity;
  return onLogLine(y[last]!, x[last]!, y[next]!, x[next]!, time);
}

function compareRange(range: CurveRange, minor: CurvePoints, major: CurvePoints, from: number, to: number, end: number): RangeComparison {
  if (!(to > from * (1 + SLACK))) return { range, span: undefined, lostAt: undefined, judgement: notShown(`no current up to ${rounded(end, 6)} A falls in the ${range} range`) };
  /** Logarithm of major time over minor time: straight between break points, so its least value stands beside one of them. */
  const lead = (current: number, minorSide: Side, majorSide: Side = minorSide): number => Math.log(boundedTime(major, current, majorSide) / boundedTime(minor, current, minorSide));
  const breaks = sharedBreaks(minor, major, from, to);
  const stretches = breaks.slice(1).map((right, i) => {
    const left = breaks[i]!;
    return { left, leadLeft: lead(left, 'right'), right, leadRight: lead(right, 'left') };
  });
  const leads = stretches.flatMap(({ leadLeft, leadRight }) => [leadLeft, leadRight]);
  // At the very end a step of the major device counts as taken: its fast edge reads the lower time there.
  if (to === end) leads.push(lead(to, 'left', 'right'));
  const leastRatio = Math.exp(Math.min(...leads));
  const lost = !atLeast(leastRatio, 1);
  const first = stretches.find(({ leadLeft, leadRight }) => Math.min(leadLeft, leadRight) < -SLACK);
  const lostAt = !lost ? undefined : first === undefined ? to : first.leadLeft < -SLACK ? first.left : crossing(first.left, Math.max(first.leadLeft, 0), first.right, first.leadRight);
  return { range, span: { from, to, leastRatio }, lostAt, judgement: verdictOf(range, lost) };
}

function verdictOf(range: CurveRange, lost: boolean): Judgement {
  if (lost) return { verdict: 'FAIL' };
  if (range === 'instantaneous') return notShown('curves end where energy begins: below 0.1 s use SELECT_JOULE_TEST, SELECT_PEAK_TEST or the tested table');
  return { verdict: 'pass' };
}
