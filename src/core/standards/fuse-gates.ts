/**
 * Gates of gG fuse-links: limits of the current that melts a link in a stated time, A.
 * Source: IEC 60269-1:2006+A2, table 3. 16 to 630 A taken second-hand, 800 to 1250 A from memory; number of the table from memory.
 */
export interface FuseGates {
  /** A link does not melt within 10 s at this current. */
  readonly '10 s least': number;
  /** A link has melted within 5 s at this current. */
  readonly '5 s greatest': number;
  readonly '0.1 s least': number;
  readonly '0.1 s greatest': number;
}

export type FuseGate = keyof FuseGates;

const gates = (least10s: number, greatest5s: number, least100ms: number, greatest100ms: number): FuseGates => ({
  '10 s least': least10s, '5 s greatest': greatest5s, '0.1 s least': least100ms, '0.1 s greatest': greatest100ms,
});

/** By rated current, A. */
export const fuseGates: ReadonlyMap<number, FuseGates> = new Map([
  [16, gates(33, 65, 85, 150)],
  [20, gates(42, 85, 110, 200)],
  [25, gates(52, 110, 150, 260)],
  [32, gates(75, 150, 200, 350)],
  [40, gates(95, 190, 260, 450)],
  [50, gates(125, 250, 350, 610)],
  [63, gates(160, 320, 450, 820)],
  [80, gates(215, 425, 610, 1100)],
  [100, gates(290, 580, 820, 1450)],
  [125, gates(355, 715, 1100, 1910)],
  [160, gates(460, 950, 1450, 2590)],
  [200, gates(610, 1250, 1910, 3420)],
  [250, gates(750, 1650, 2590, 4500)],
  [315, gates(1050, 2200, 3420, 6000)],
  [400, gates(1420, 2840, 4500, 8060)],
  [500, gates(1780, 3800, 6000, 10600)],
  [630, gates(2200, 5100, 8060, 14140)],
  [800, gates(3060, 7000, 10600, 19000)],
  [1000, gates(4000, 9500, 14140, 24000)],
  [1250, gates(5000, 13000, 19000, 35000)],
]);

/** Rated currents of gG links that the tables of limits know, A. */
export const fuseRatings: readonly number[] = [...fuseGates.keys()];
