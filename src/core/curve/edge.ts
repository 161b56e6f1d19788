import type { CurvePoints, Side } from './interpolate';

/**
 * Edges of a time-current curve: the slowest and fastest device that keeps to the tolerance, and the mean.
 * The tolerance is one of current, so an edge is the mean curve moved sideways. IEC 60269-1: ±10 % for fuse-links (from memory).
 */
export type Edge = 'slow' | 'mean' | 'fast';

/** Factor on current that moves the mean curve to an edge. */
export const edgeFactor = (edge: Edge, tolerancePct: number): number => 1 + ({ slow: 1, mean: 0, fast: -1 }[edge] * tolerancePct) / 100;

/** The worst reading of a vertical step at its very current: a slow device has not yet dropped, a fast one has. */
export const stepSide = (edge: Edge): Side => (edge === 'fast' ? 'right' : 'left');

/** The curve moved to an edge. */
export function curveAtEdge({ x, y }: CurvePoints, edge: Edge, tolerancePct: number): CurvePoints {
  const factor = edgeFactor(edge, tolerancePct);
  return { x: x.map((current) => current * factor), y };
}
