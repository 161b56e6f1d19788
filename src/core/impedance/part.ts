import type { Complex } from '../complex';
import { outOfRange } from '../refusal';

export type Part = 'R' | 'X' | 'Z' | 'R/X' | 'X/R' | 'pf' | 'angle';

/** Unit of each figure; none for a ratio. */
export const partUnit: Readonly<Record<Part, string>> = { R: 'mΩ', X: 'mΩ', Z: 'mΩ', 'R/X': '', 'X/R': '', pf: '', angle: '°' };

/** How each figure is found, in symbols. */
export const partFormula: Readonly<Record<Part, string>> = {
  R: 'R', X: 'X', Z: '√(R²+X²)', 'R/X': 'R/X', 'X/R': 'X/R', pf: 'R/|Z|', angle: 'atan2(X, R)',
};

/**
 * One figure out of an impedance, mΩ, ratio or degrees.
 * Refused: R/X without X, X/R without R, power factor or angle of zero.
 */
export function partOf(z: Complex, part: Part): number {
  const size = z.abs();
  const needed = (value: number, problem: string): number => {
    if (value === 0) throw outOfRange('z_mohm', problem);
    return value;
  };
  switch (part) {
    case 'R': return z.re;
    case 'X': return z.im;
    case 'Z': return size;
    case 'R/X': return z.re / needed(z.im, 'X is zero, so there is no R/X');
    case 'X/R': return z.im / needed(z.re, 'R is zero, so there is no X/R');
    case 'pf': return z.re / needed(size, 'is zero, so there is no power factor');
    case 'angle': needed(size, 'is zero, so there is no angle');
      return (Math.atan2(z.im, z.re) * 180) / Math.PI;
  }
}
