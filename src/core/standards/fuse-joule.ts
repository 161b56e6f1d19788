/**
 * Pre-arcing joule integral of gG fuse-links at 0.01 s: least and greatest, A²s.
 * Source: IEC 60269-1:2006, table 7; read in the national adoptions GOST R IEC 60269-1-2010, table 7, and GOST R 50339.0-2003, table 6.
 * The rows of 800 to 1250 A from memory.
 */
export interface FuseJouleLimits {
  readonly least: number;
  readonly greatest: number;
}

export type FuseJouleLimit = keyof FuseJouleLimits;

/** The standard prints thousands of A²s. */
const thousands = (least: number, greatest: number): FuseJouleLimits => ({ least: least * 1000, greatest: greatest * 1000 });

/** By rated current, A. */
export const fuseJouleLimits: ReadonlyMap<number, FuseJouleLimits> = new Map([
  [16, thousands(0.3, 1)],
  [20, thousands(0.5, 1.8)],
  [25, thousands(1, 3)],
  [32, thousands(1.8, 5)],
  [40, thousands(3, 9)],
  [50, thousands(5, 16)],
  [63, thousands(9, 27)],
  [80, thousands(16, 46)],
  [100, thousands(27, 86)],
  [125, thousands(46, 140)],
  [160, thousands(86, 250)],
  [200, thousands(140, 400)],
  [250, thousands(250, 760)],
  [315, thousands(400, 1300)],
  [400, thousands(760, 2250)],
  [500, thousands(1300, 3800)],
  [630, thousands(2250, 7500)],
  [800, thousands(3800, 13600)],
  [1000, thousands(7840, 25000)],
  [1250, thousands(13700, 47000)],
]);
