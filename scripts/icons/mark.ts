import type { Picture } from './png';

/**
 * Our mark: an integral sign for the joule integral, and a square for the power of two in I²t.
 * Drawn by sampling, so that every size comes from one shape. Lengths count in widths of the picture.
 */

type Point = readonly [x: number, y: number];
type Colour = readonly [red: number, green: number, blue: number];

const GROUND: Colour = [22, 62, 74];
const STROKE: Colour = [244, 247, 246];
const SQUARE: Colour = [240, 171, 66];

const CORNER = 0.2;
const HALF_STROKE = 0.062;
const SQUARE_AT = { left: 11 / 16, top: 9 / 16, side: 3 / 16 };

/** Two hooks and the stem between them, as cubic curves end to end. */
const CURVES: readonly (readonly [Point, Point, Point, Point])[] = [
  [[0.62, 0.25], [0.6, 0.13], [0.47, 0.13], [0.445, 0.3]],
  [[0.445, 0.3], [0.425, 0.44], [0.415, 0.56], [0.395, 0.7]],
  [[0.395, 0.7], [0.37, 0.87], [0.24, 0.87], [0.22, 0.75]],
];

const onCurve = ([a, b, c, d]: readonly [Point, Point, Point, Point], t: number): Point => {
  const u = 1 - t;
  const at = (i: 0 | 1): number => u * u * u * a[i] + 3 * u * u * t * b[i] + 3 * u * t * t * c[i] + t * t * t * d[i];
  return [at(0), at(1)];
};

const SPINE: readonly Point[] = CURVES.flatMap((curve) => Array.from({ length: 24 }, (_, i) => onCurve(curve, i / 23)));

const inGround = (x: number, y: number): boolean => {
  const dx = Math.max(CORNER - x, x - (1 - CORNER), 0);
  const dy = Math.max(CORNER - y, y - (1 - CORNER), 0);
  return Math.hypot(dx, dy) <= CORNER;
};

function colourAt(x: number, y: number): Colour | undefined {
  if (!inGround(x, y)) return undefined;
  const { left, top, side } = SQUARE_AT;
  if (x >= left && x <= left + side && y >= top && y <= top + side) return SQUARE;
  return SPINE.some(([px, py]) => (px - x) ** 2 + (py - y) ** 2 <= HALF_STROKE ** 2) ? STROKE : GROUND;
}

const SAMPLES = 4;

/** The mark at a size in pixels. */
export function mark(size: number): Picture {
  const rgba = new Uint8Array(size * size * 4);
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      const sum = [0, 0, 0];
      let inside = 0;
      for (let j = 0; j < SAMPLES; j += 1) {
        for (let i = 0; i < SAMPLES; i += 1) {
          const colour = colourAt((x + (i + 0.5) / SAMPLES) / size, (y + (j + 0.5) / SAMPLES) / size);
          if (!colour) continue;
          inside += 1;
          colour.forEach((value, channel) => (sum[channel]! += value));
        }
      }
      rgba.set([...sum.map((value) => (inside === 0 ? 0 : Math.round(value / inside))), Math.round((255 * inside) / SAMPLES ** 2)], (y * size + x) * 4);
    }
  }
  return { width: size, height: size, rgba };
}

export const ICON_SIZES = [16, 32, 64, 80] as const;
