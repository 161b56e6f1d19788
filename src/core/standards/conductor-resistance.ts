/**
 * Greatest d.c. resistance of conductors at 20 °C, stranded (class 2), Ω/km, by cross-section in mm².
 * Source: IEC 60228:2023, table for class 2, plain copper and aluminium (from memory).
 */
export type Metal = 'copper' | 'aluminium';

const COPPER: readonly (readonly [number, number])[] = [
  [0.5, 36], [0.75, 24.5], [1, 18.1], [1.5, 12.1], [2.5, 7.41], [4, 4.61], [6, 3.08], [10, 1.83], [16, 1.15], [25, 0.727],
  [35, 0.524], [50, 0.387], [70, 0.268], [95, 0.193], [120, 0.153], [150, 0.124], [185, 0.0991], [240, 0.0754], [300, 0.0601],
  [400, 0.047], [500, 0.0366], [630, 0.0283], [800, 0.0221], [1000, 0.0176],
];

/** Aluminium is listed from 10 mm². */
const ALUMINIUM: readonly (readonly [number, number])[] = [
  [10, 3.08], [16, 1.91], [25, 1.2], [35, 0.868], [50, 0.641], [70, 0.443], [95, 0.32], [120, 0.253], [150, 0.206], [185, 0.164],
  [240, 0.125], [300, 0.1], [400, 0.0778], [500, 0.0605], [630, 0.0469], [800, 0.0367], [1000, 0.0291],
];

const TABLES: Readonly<Record<Metal, ReadonlyMap<number, number>>> = { copper: new Map(COPPER), aluminium: new Map(ALUMINIUM) };

/** Listed cross-sections of a metal, mm², rising. */
export const listedSizes: Readonly<Record<Metal, readonly number[]>> = {
  copper: COPPER.map(([size]) => size),
  aluminium: ALUMINIUM.map(([size]) => size),
};

/** Resistance at 20 °C, Ω/km (the same figure in mΩ/m); undefined where the size is not listed. Nothing is interpolated. */
export function listedResistance(csa: number, metal: Metal): number | undefined {
  const exact = TABLES[metal].get(csa);
  if (exact !== undefined) return exact;
  // A size that came through a unit conversion may miss the listed figure by a rounding.
  const near = listedSizes[metal].find((size) => Math.abs(size - csa) <= size * 1e-9);
  return near === undefined ? undefined : TABLES[metal].get(near);
}
