import { curveLinearClosed, line } from 'd3-shape';
import { dashOf, seriesInk } from './inks';
import { type Plot, type PlotMark, type PlotPoint, drawablePoints } from './plot';
import type { Scale } from './scale';
import { type Shape, circle, diamond, fitted, pixel, straight } from './shapes';

/** The room between the axes. */
export interface Field {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly x: Scale;
  readonly y: Scale;
}

const LINE = 1.75;
const TINT = 0.12;

/** What one mark draws; `place` decides its colour and dashes. */
export function markShapes(plot: Plot, mark: PlotMark, place: number, { left, right, top, bottom, x, y }: Field): Shape[] {
  const [ink, dash] = [seriesInk(place), dashOf(place)];
  const through = () => line<PlotPoint>().x(([value]) => pixel(x.at(value))).y(([, value]) => pixel(y.at(value)));
  const stroke = (drawn: string): Shape => ({ kind: 'path', path: drawn, stroke: ink, width: LINE, dash });
  const dot = ([px, py]: PlotPoint): Shape => ({ kind: 'path', path: circle(x.at(px), y.at(py), 3), fill: ink });
  const edge = (points: readonly PlotPoint[]): Shape[] => {
    const inside = drawablePoints(plot, points);
    return inside.length < 2 ? inside.map(dot) : [stroke(through()(inside)!)];
  };
  switch (mark.kind) {
    case 'line':
      return edge(mark.points);
    case 'band': {
      const outline = outlineOf(drawablePoints(plot, mark.fast), drawablePoints(plot, mark.slow), y.domain[0]);
      const ground: Shape[] = outline.length < 3 ? [] : [{ kind: 'path', path: through().curve(curveLinearClosed)(outline)!, fill: ink, opacity: TINT }];
      return [...ground, ...edge(mark.fast), ...edge(mark.slow)];
    }
    case 'points':
      return mark.points.flatMap((point, i): Shape[] => {
        if (drawablePoints(plot, [point]).length === 0) return [];
        return mark.marked?.has(i) ? [{ kind: 'path', path: diamond(x.at(point[0]), y.at(point[1]), 6), stroke: 'bad', width: 2 }] : [dot(point)];
      });
    case 'at x':
      return holds(x, mark.value) ? [stroke(straight(x.at(mark.value), top, x.at(mark.value), bottom))] : [];
    case 'at y':
      return holds(y, mark.value) ? [stroke(straight(left, y.at(mark.value), right, y.at(mark.value)))] : [];
  }
}

/** The ground of a band. Where the fast edge ends above the slow one, as before an instantaneous release, there is no least time from there on. */
function outlineOf(fast: readonly PlotPoint[], slow: readonly PlotPoint[], floor: number): PlotPoint[] {
  const [fastEnd, slowEnd] = [fast.at(-1), slow.at(-1)];
  const open = fastEnd && slowEnd && fastEnd[1] > slowEnd[1] * (1 + 1e-9) && slowEnd[0] > fastEnd[0];
  return [...fast, ...(open ? [[fastEnd[0], floor] as const, [slowEnd[0], floor] as const] : []), ...[...slow].reverse()];
}

const holds = ({ domain: [a, b] }: Scale, value: number): boolean => value >= a * (1 - 1e-9) && value <= b * (1 + 1e-9);

/** A sample of the mark and its name. */
export function legendEntry(mark: PlotMark, place: number, at: { x: number; y: number; width: number; size: number }): Shape[] {
  const [from, to, middle] = [at.x, at.x + at.size * 2.8, at.y - at.size * 0.32];
  const ink = seriesInk(place);
  const ground: Shape[] = mark.kind === 'band' ? [{ kind: 'path', path: `M${from},${middle - 4}H${to}V${middle + 4}H${from}Z`, fill: ink, opacity: TINT * 1.5 }] : [];
  const sample: Shape = mark.kind === 'points'
    ? { kind: 'path', path: circle((from + to) / 2, middle, 3), fill: ink }
    : { kind: 'path', path: straight(from, middle, to, middle), stroke: ink, width: LINE + 0.25, dash: dashOf(place) };
  return [...ground, sample, { kind: 'text', text: fitted(mark.name, at.width - at.size * 4, at.size), x: to + at.size * 0.6, y: at.y, size: at.size, ink: 'ink', anchor: 'start' }];
}
