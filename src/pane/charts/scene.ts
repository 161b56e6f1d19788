import { type Field, legendEntry, markShapes } from './mark-shapes';
import { type Plot, extent } from './plot';
import { scaleOf } from './scale';
import { LETTER, type Scene, type Shape, fitted, straight } from './shapes';

export interface SceneSize {
  readonly width: number;
  /** Height of the field between the axes. */
  readonly field: number;
  /** Size of letters. */
  readonly size: number;
}
export const paneSize = (width: number): SceneSize => ({ width, field: Math.round(Math.min(420, Math.max(230, width * 0.9))), size: 11 });
export const FILE_SIZE: SceneSize = { width: 960, field: 620, size: 14 };

/** Lays a plot out; undefined where there is nothing to draw. */
export function sceneOf(plot: Plot, { width, field: high, size }: SceneSize): Scene | undefined {
  const [coveredX, coveredY] = [plot.x.places ? ([0, plot.x.places.length] as const) : extent(plot, 'x'), extent(plot, 'y')];
  if (!coveredX || !coveredY) return undefined;
  const top = size * 3.7;
  const [bottom, right] = [top + high, width - size * 1.9];
  const y = scaleOf(plot.y, coveredY, [bottom, top], Math.floor(high / (size * 2.6)));
  const left = size * (1.2 + Math.max(...y.ticks.map(({ label }) => label.length)) * LETTER);
  const x = scaleOf(plot.x, coveredX, [left, right], Math.floor((right - left) / (size * 4.2)));
  const rows = plot.x.places ? 2 : 1;
  const legendTop = bottom + size * (3.6 + rows);
  const columns = Math.max(1, Math.floor(width / (size * 25)));
  const legend = plot.marks.flatMap((mark, place) => legendEntry(mark, place, {
    x: size * 0.6 + ((place % columns) * width) / columns, y: legendTop + Math.floor(place / columns) * size * 1.6, width: width / columns - size, size,
  }));
  const field: Field = { left, right, top, bottom, x, y };
  return {
    width,
    height: Math.ceil(legendTop + Math.ceil(plot.marks.length / columns) * size * 1.6),
    shapes: [
      { kind: 'text', text: fitted(plot.title, width - size, size * 1.15), x: size * 0.5, y: size * 1.3, size: size * 1.15, ink: 'ink', anchor: 'start', bold: true },
      ...grid(field, size, plot.x.places !== undefined),
      // Above its axis, where it reads without turning the head.
      { kind: 'text', text: fitted(plot.y.title, width - size, size), x: size * 0.5, y: size * 3, size, ink: 'ink', anchor: 'start' },
      { kind: 'text', text: fitted(plot.x.title, right - left, size), x: right, y: bottom + size * (1.6 + rows), size, ink: 'ink', anchor: 'end' },
      ...plot.marks.flatMap((mark, place) => markShapes(plot, mark, place, field)),
      ...legend,
    ],
  };
}

function grid({ left, right, top, bottom, x, y }: Field, size: number, places: boolean): Shape[] {
  const rule = (path: string, major: boolean): Shape => ({ kind: 'path', path, stroke: major ? 'rule' : 'faint', width: major ? 0.8 : 0.6 });
  const room = (right - left) / Math.max(1, x.ticks.length);
  const labelledX = x.ticks.filter(({ label }) => label !== '');
  const labelledY = y.ticks.filter(({ label }) => label !== '');
  return [
    ...x.ticks.map(({ value, label }) => rule(straight(x.at(value), top, x.at(value), bottom), label !== '' && !places)),
    ...y.ticks.map(({ value, label }) => rule(straight(left, y.at(value), right, y.at(value)), label !== '')),
    { kind: 'path', path: `M${left},${top}H${right}V${bottom}H${left}Z`, stroke: 'soft', width: 1 },
    ...labelledX.map(({ value, label }, i): Shape => ({
      // Names of places stand in two rows, so that neighbours have room.
      kind: 'text', text: places ? fitted(label, room * 1.8, size) : label, x: x.at(value), y: bottom + size * (1.3 + (places ? (i % 2) * 1.05 : 0)), size, ink: 'soft', anchor: 'middle',
    })),
    ...labelledY.map(({ value, label }): Shape => ({ kind: 'text', text: label, x: left - size * 0.4, y: y.at(value) + size * 0.35, size, ink: 'soft', anchor: 'end' })),
  ];
}
