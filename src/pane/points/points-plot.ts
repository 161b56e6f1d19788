import type { CurveKind } from '../../functions/kernel/range-kinds';
import type { Plot } from '../charts/plot';
import type { ReadPoints } from './read-points';

/** What the axes of each kind of curve are. */
export const CURVE_AXES: Readonly<Record<CurveKind, { readonly title: string; readonly x: string; readonly y: string }>> = {
  time: { title: 'Time-current curve', x: 'current, A', y: 'time, s' },
  'cut-off': { title: 'Cut-off', x: 'prospective current, kA r.m.s.', y: 'cut-off, kA peak' },
  joule: { title: 'Joule integral', x: 'prospective current, kA r.m.s.', y: 'joule integral, A²s' },
};

/** Points as pasted on logarithmic axes; those with a finding stand out. */
export function pointsPlot({ kind, rows, findings }: ReadPoints, device: string): Plot | undefined {
  const points = rows.flatMap(({ number, point }) => (point && point[0] > 0 && point[1] > 0 ? [{ number, point }] : []));
  if (points.length === 0) return undefined;
  const found = new Set(findings.map(({ row }) => row));
  const { title, x, y } = CURVE_AXES[kind];
  const line = points.map(({ point }) => point);
  return {
    title: device === '' ? title : `${device}: ${title.toLowerCase()}`,
    x: { title: x, logarithmic: true }, y: { title: y, logarithmic: true },
    marks: [
      { kind: 'line', name: 'straight between the points', points: line },
      { kind: 'points', name: found.size === 0 ? 'points' : 'points; a diamond has a finding', points: line, marked: new Set(points.flatMap(({ number }, i) => (found.has(number) ? [i] : []))) },
    ],
  };
}
