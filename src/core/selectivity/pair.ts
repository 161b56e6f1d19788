import { type CurvePoints, type Side, logLogAt } from '../curve/interpolate';
import { nearly } from '../judgement';

/**
 * Reading of a time-current curve also beyond its points, as a bound and not as an extrapolation: below the first point its first
 * time (a device is never faster at a lower current), beyond the last its last.
 */
export function boundedTime({ x, y }: CurvePoints, current: number, side: Side): number {
  const last = x.length - 1;
  return logLogAt({ x, y }, current, side) ?? (current < x[0]! ? y[0]! : y[last]!);
}

/** Break points of both curves from one current to another, ends included, each once; between two of them both are straight on log-log. */
export function sharedBreaks(a: CurvePoints, b: CurvePoints, from: number, to: number): number[] {
  const inner = [...a.x, ...b.x].filter((current) => current > from && current < to).sort((p, q) => p - q);
  return [from, ...inner, to].filter((current, i, all) => i === 0 || !nearly(current, all[i - 1]!));
}

/** Where a quantity that runs straight in the logarithm of current passes through zero, between two currents. */
export const crossing = (from: number, valueFrom: number, to: number, valueTo: number): number => from * (to / from) ** (valueFrom / (valueFrom - valueTo));
