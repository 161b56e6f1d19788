/** What a chart shows, in numbers: no pixels, no colours. */
export interface Plot {
  readonly title: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly marks: readonly PlotMark[];
}

export interface PlotAxis {
  /** Quantity and unit: "prospective current, kA". */
  readonly title: string;
  readonly logarithmic: boolean;
  /** Names of the places 0, 1, 2 … along the axis, where it counts places and not a quantity. */
  readonly places?: readonly string[];
}

export type PlotPoint = readonly [x: number, y: number];

export type PlotMark =
  | { readonly kind: 'line'; readonly name: string; readonly points: readonly PlotPoint[] }
  /** Both edges; either may be short or missing. */
  | { readonly kind: 'band'; readonly name: string; readonly fast: readonly PlotPoint[]; readonly slow: readonly PlotPoint[] }
  /** Single points; those marked stand out. */
  | { readonly kind: 'points'; readonly name: string; readonly points: readonly PlotPoint[]; readonly marked?: ReadonlySet<number> }
  /** A value on one axis, across the whole chart. */
  | { readonly kind: 'at x' | 'at y'; readonly name: string; readonly value: number };

/** All points that a mark draws. */
export function pointsOf(mark: PlotMark): readonly PlotPoint[] {
  if (mark.kind === 'band') return [...mark.fast, ...mark.slow];
  return mark.kind === 'line' || mark.kind === 'points' ? mark.points : [];
}

const drawable = (axis: PlotAxis, value: number): boolean => Number.isFinite(value) && (!axis.logarithmic || value > 0);

/** The points that stand on both axes: none at or below zero where an axis is logarithmic. */
export const drawablePoints = ({ x, y }: Plot, points: readonly PlotPoint[]): PlotPoint[] => points.filter((point) => drawable(x, point[0]) && drawable(y, point[1]));

/** Least and greatest value that an axis must cover; undefined where nothing is to be drawn. */
export function extent(plot: Plot, axis: 'x' | 'y'): readonly [number, number] | undefined {
  const place = axis === 'x' ? 0 : 1;
  const values = plot.marks.flatMap((mark) => {
    if (mark.kind === 'at x' || mark.kind === 'at y') return (mark.kind === 'at x') === (axis === 'x') && drawable(plot[axis], mark.value) ? [mark.value] : [];
    return drawablePoints(plot, pointsOf(mark)).map((point) => point[place]);
  });
  return values.length === 0 ? undefined : [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))];
}
