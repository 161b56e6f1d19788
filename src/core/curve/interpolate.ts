import { nearly } from '../judgement';

/** Points of a curve, x rising; one x may come twice, which is a vertical step. */
export interface CurvePoints {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** Which side of a vertical step is read: as approached from the left, or from the right. */
export type Side = 'left' | 'right';

/** Value at x on the straight line between two points, both axes logarithmic. Exact at the first point and on a level line. */
export const onLogLine = (x0: number, y0: number, x1: number, y1: number, x: number): number => y0 * (y1 / y0) ** (Math.log(x / x0) / Math.log(x1 / x0));

/**
 * Value of a curve at x: straight on log-log between its points. An end counts as inside to 1 part in 10⁹.
 * @param side which y of a vertical step is meant
 * @returns y, or undefined where x lies outside the points: nothing is extrapolated
 */
export function logLogAt({ x: xs, y: ys }: CurvePoints, x: number, side: Side = 'left'): number | undefined {
  const found = xs.flatMap((corner, i) => (nearly(corner, x) ? [ys[i]!] : []));
  if (found.length > 0) return side === 'left' ? found[0] : found[found.length - 1];
  const next = xs.findIndex((corner) => corner > x);
  if (next < 1) return undefined;
  return onLogLine(xs[next - 1]!, ys[next - 1]!, xs[next]!, ys[next]!, x);
}
