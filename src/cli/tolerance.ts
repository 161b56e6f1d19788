import { LEAST_TOLERANCE } from '../sheet/check';
import { CouldNotRun, oneLine } from './terminal';

/** "0.1%", "0.1 %" or 0.001, as a part of the value; left out, one part in 10⁹. */
export function toleranceOf(text: string | undefined): number {
  if (text === undefined) return LEAST_TOLERANCE;
  const [, figure, percent] = /^\s*(\d+(?:\.\d+)?(?:e-?\d+)?)\s*(%?)\s*$/i.exec(text) ?? [];
  const value = Number(figure) / (percent ? 100 : 1);
  if (figure === undefined || !(value < 1)) throw new CouldNotRun(`--tolerance: got ${oneLine(text)}, takes a part below 1, such as 0.1% or 0.001`);
  return Math.max(value, LEAST_TOLERANCE);
}
