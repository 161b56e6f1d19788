import type { Document } from '../frame';

/**
 * An invented works: Thornbeck Tileworks, a tile factory with two kilns, presses and a glaze shop behind two
 * transformers in parallel. Every figure is made up for this sample; none is a maker's.
 */
export const WORKS = 'Thornbeck Tileworks (invented)';
export const DOCUMENT: Document = { works: WORKS, number: 'TT-EL-014', revision: 'C', date: new Date(Date.UTC(2026, 9, 12)) };

type Empty = '';

/** Boards: name, fed from, run in m, mm², metal, runs, return conductor mm²; rated short-time current kA, for s, fault cleared in s. */
export const BOARDS: readonly (readonly [string, string, number, number, string, number, number, number, number, number])[] = [
  ['MSB', 'source', 8, 630, 'copper', 4, 630, 65, 1, 0.3],
  ['KILN 1', 'MSB', 95, 240, 'copper', 2, 240, 30, 1, 0.1],
  ['KILN 2', 'MSB', 120, 240, 'copper', 2, 240, 30, 1, 0.1],
  ['PRESS', 'MSB', 60, 185, 'copper', 2, 185, 35, 1, 0.1],
  ['GLAZE', 'MSB', 85, 150, 'aluminium', 1, 150, 15, 1, 0.1],
  ['DRYER', 'KILN 2', 40, 95, 'copper', 1, 50, 15, 0.2, 0.1],
  ['PACKING', 'PRESS', 55, 70, 'copper', 1, 35, 12, 0.2, 0.1],
];

/** Branches of the ring: from, to, state, length m, mm², metal, runs. */
export const RING: readonly (readonly [string, string, string, number, number, string, number])[] = [
  ['MSB', 'SHOP 1', 'closed', 120, 150, 'copper', 1],
  ['SHOP 1', 'SHOP 2', 'closed', 60, 150, 'copper', 1],
  ['SHOP 2', 'SHOP 3', 'closed', 75, 150, 'copper', 1],
  ['SHOP 3', 'MSB', 'closed', 140, 150, 'copper', 1],
];

/** Boards on the ring with their neighbours. */
export const RING_BOARDS: readonly (readonly [string, string, string])[] = [
  ['SHOP 1', 'MSB', 'SHOP 2'],
  ['SHOP 2', 'SHOP 1', 'SHOP 3'],
  ['SHOP 3', 'SHOP 2', 'MSB'],
];

export type Kind = 'gG' | 'breaker';
type Figure = number | Empty;
type Setting = Figure | 'off';

/**
 * Devices: ref, board, kind, rated A; of links: range, pre-arcing A²s, level kA at which the sheet was read, sheet V, conditional
 * rating of the fuse-switch kA, tested with; of breakers: Ir A, tr s, Isd A, tsd s, Ii A, ii s, Icu, Ics, Icw kA, for s, need.
 * Icu of a link is its rated breaking capacity. F9 was read at the level of another board, as happens: its cable cannot be
 * shown to withstand.
 */
export type Device = readonly [
  string, string, Kind, number, string, Figure, Figure, Figure, Figure, string,
  Figure, Figure, Setting, Figure, Setting, Figure, Figure, Figure, Figure, Figure, string,
];

/** A link in its fuse-switch. */
export const link = (ref: string, board: string, rated: number, prearcing: number, readAt: number): Device =>
  [ref, board, 'gG', rated, 'gG range T', prearcing, readAt, 500, 80, `${rated} A gG range T`, '', '', '', '', '', '', 120, '', '', '', ''];

export const DEVICES: readonly Device[] = [
  ['Q1', 'MSB', 'breaker', 1600, '', '', '', '', '', '', 1280, 10, 6400, 0.3, 'off', 0.05, 65, 65, 65, 1, 'service'],
  link('F1', 'MSB', 400, 1.05e6, 53.7),
  link('F2', 'MSB', 400, 1.05e6, 53.7),
  link('F3', 'MSB', 315, 5.6e5, 53.7),
  link('F4', 'MSB', 250, 3.2e5, 53.7),
  link('F5', 'KILN 1', 160, 1.05e5, 26.5),
  link('F6', 'KILN 1', 125, 5.8e4, 26.5),
  link('F7', 'PRESS', 200, 1.75e5, 31.5),
  link('F8', 'PRESS', 63, 1.1e4, 31.5),
  ['Q2', 'GLAZE', 'breaker', 160, '', '', '', '', '', '', 160, 8, 1120, 0.1, 1600, 0.04, 25, 18.5, '', '', 'service'],
  ['Q3', 'GLAZE', 'breaker', 100, '', '', '', '', '', '', 100, 24, 700, 0.2, 'off', 0.04, 16, 12, '', '', 'service'],
  link('F9', 'KILN 2', 160, 1.05e5, 53.7),
  link('F10', 'KILN 2', 200, 1.75e5, 23.2),
  link('F11', 'PRESS', 125, 5.8e4, 31.5),
  link('F12', 'DRYER', 100, 3.6e4, 13.8),
  link('F13', 'PACKING', 63, 1.1e4, 11.5),
];

type Points = readonly (readonly [number, number])[];

/** Curves of links, invented: mean time (A; s), cut-off (kA; kA peak), total joule integral (kA; A²s) at the sheet's voltage. */
export const LINK_CURVES: Readonly<Record<number, { time: Points; cutOff: Points; joule: Points }>> = {
  63: {
    time: [[129, 1000], [158, 100], [208, 10], [250, 5], [374, 1], [607, 0.1], [1050, 0.01], [1660, 0.004], [2350, 0.002]],
    cutOff: [[1.5, 2.91], [4, 4.03], [10, 5.48], [20, 6.91], [30, 7.91], [50, 9.38], [80, 11]],
    joule: [[1.5, 26100], [4, 27800], [10, 29100], [20, 30300], [30, 30900], [50, 31700], [80, 32500]],
  },
  100: {
    time: [[234, 1000], [287, 100], [377, 10], [452, 5], [674, 1], [1090, 0.1], [1900, 0.01], [3000, 0.004], [4240, 0.002]],
    cutOff: [[2.7, 5.26], [5, 6.46], [10, 8.14], [20, 10.3], [30, 11.7], [50, 13.9], [80, 16.3]],
    joule: [[2.7, 85700], [5, 89000], [10, 92400], [20, 95900], [30, 98000], [50, 101000], [80, 103000]],
  },
  125: {
    time: [[286, 1000], [351, 100], [462, 10], [558, 5], [863, 1], [1450, 0.1], [2410, 0.01], [3810, 0.004], [5390, 0.002]],
    cutOff: [[3.4, 6.66], [10, 9.54], [20, 12], [30, 13.8], [50, 16.3], [80, 19.1]],
    joule: [[3.4, 143000], [10, 152000], [20, 158000], [30, 161000], [50, 165000], [80, 169000]],
  },
  160: {
    time: [[371, 1000], [454, 100], [598, 10], [741, 5], [1150, 1], [1940, 0.1], [3240, 0.01], [5120, 0.004], [7250, 0.002]],
    cutOff: [[4.6, 8.98], [10, 11.6], [20, 14.7], [30, 16.8], [50, 19.9], [80, 23.3]],
    joule: [[4.6, 264000], [10, 275000], [20, 286000], [30, 292000], [50, 300000], [80, 307000]],
  },
  200: {
    time: [[492, 1000], [603, 100], [793, 10], [975, 5], [1520, 1], [2560, 0.1], [4180, 0.01], [6610, 0.004], [9350, 0.002]],
    cutOff: [[5.9, 11.6], [10, 13.8], [20, 17.4], [30, 19.9], [50, 23.6], [80, 27.6]],
    joule: [[5.9, 420000], [10, 432000], [20, 449000], [30, 459000], [50, 471000], [80, 482000]],
  },
  250: {
    time: [[605, 1000], [741, 100], [975, 10], [1290, 5], [2010, 1], [3410, 0.1], [5660, 0.01], [8940, 0.004], [12600, 0.002]],
    cutOff: [[8, 15.7], [12, 17.9], [20, 21.2], [30, 24.3], [50, 28.8], [80, 33.7]],
    joule: [[8, 730000], [12, 747000], [20, 768000], [30, 785000], [50, 807000], [80, 827000]],
  },
  315: {
    time: [[846, 1000], [1040, 100], [1370, 10], [1720, 5], [2680, 1], [4530, 0.1], [7480, 0.01], [11800, 0.004], [16700, 0.002]],
    cutOff: [[11, 21], [15, 23.3], [20, 25.6], [30, 29.3], [50, 34.8], [80, 40.6]],
    joule: [[11, 1330000], [15, 1360000], [20, 1380000], [30, 1410000], [50, 1440000], [80, 1480000]],
  },
  400: {
    time: [[1140, 1000], [1400, 100], [1850, 10], [2220, 5], [3510, 1], [6020, 0.1], [10200, 0.01], [16200, 0.004], [22900, 0.002]],
    cutOff: [[14, 28], [17, 29.9], [20, 31.6], [30, 36.1], [50, 42.9], [80, 50.1]],
    joule: [[14, 2420000], [17, 2450000], [20, 2470000], [30, 2520000], [50, 2590000], [80, 2650000]],
  },
};
export const LINK_RATINGS: readonly number[] = Object.keys(LINK_CURVES).map(Number);

/** Cables: number, from, to, length m, metal, insulation, mm², runs, earth conductor mm², device. */
export type Cable = readonly [string, string, string, number, string, string, number, number, number, string];
export const CABLES: readonly Cable[] = [
  ['C01', 'MSB', 'KILN 1', 95, 'copper', 'XLPE', 240, 2, 240, 'F1'],
  ['C02', 'MSB', 'KILN 2', 120, 'copper', 'XLPE', 240, 2, 240, 'F2'],
  ['C03', 'MSB', 'PRESS', 60, 'copper', 'XLPE', 185, 2, 185, 'F3'],
  ['C04', 'MSB', 'GLAZE', 85, 'aluminium', 'XLPE', 150, 1, 150, 'F4'],
  ['C05', 'KILN 1', 'Kiln 1 fans', 40, 'copper', 'XLPE', 70, 1, 35, 'F5'],
  ['C06', 'KILN 1', 'Kiln 1 burners', 55, 'copper', 'PVC', 50, 1, 25, 'F6'],
  ['C07', 'KILN 2', 'Kiln 2 fans', 45, 'copper', 'XLPE', 70, 1, 35, 'F9'],
  ['C08', 'PRESS', 'Press 1', 30, 'copper', 'XLPE', 95, 1, 50, 'F7'],
  ['C09', 'PRESS', 'Press lighting', 70, 'copper', 'PVC', 16, 1, 16, 'F8'],
  ['C10', 'GLAZE', 'Spray line', 35, 'copper', 'PVC', 70, 1, 35, 'Q2'],
  ['C11', 'GLAZE', 'Compressor', 50, 'copper', 'PVC', 25, 1, 16, 'Q3'],
  ['C12', 'GLAZE', 'Offices', 70, 'copper', 'XLPE', 70, 1, 35, 'Q2'],
  ['C13', 'KILN 2', 'DRYER', 40, 'copper', 'XLPE', 95, 1, 50, 'F10'],
  ['C14', 'PRESS', 'PACKING', 55, 'copper', 'XLPE', 70, 1, 35, 'F11'],
  ['C15', 'DRYER', 'Dryer burners', 35, 'copper', 'PVC', 35, 1, 16, 'F12'],
  ['C16', 'PACKING', 'Wrapping line', 40, 'copper', 'PVC', 16, 1, 16, 'F13'],
];

/** Pairs of links that must discriminate: major, minor, level kA at which the major's pre-arcing figure was read. */
export const PAIRS: readonly (readonly [string, string, number])[] = [
  ['F1', 'F5', 26.5],
  ['F3', 'F7', 31.5],
  ['F10', 'F12', 13.8],
  ['F11', 'F13', 11.5],
  ['F2', 'F9', 23.2],
];

/** Links below a breaker: major, minor. */
export const BELOW_BREAKER: readonly (readonly [string, string])[] = [
  ['Q1', 'F1'],
  ['Q1', 'F4'],
];

/** Options compared by what they let through: link, breaker. */
export const COMPARED: readonly (readonly [string, string])[] = [['F1', 'Q1']];

/** Arc energy: board, device that clears it, electrodes, gap, distance, width, height, depth mm. */
export const ARCS: readonly (readonly [string, string, string, number, number, number, number, number])[] = [
  ['MSB', 'Q1', 'VCBB', 32, 610, 800, 1000, 400],
  ['KILN 1', 'F1', 'VCB', 25, 455, 600, 800, 300],
  ['KILN 2', 'F2', 'VCB', 25, 455, 600, 800, 300],
  ['PRESS', 'F3', 'VCB', 25, 455, 600, 800, 300],
  ['GLAZE', 'F4', 'VCB', 25, 455, 400, 600, 200],
  ['DRYER', 'F10', 'VCB', 25, 455, 400, 600, 200],
];

/** A colleague's figures: cable, item, value, tolerance %. Two are wrong on purpose: c of the greatest fault in a least one, and k of another insulation. */
export const DESIGNER: readonly (readonly [string, string, number, number])[] = [
  ['C01', 'Ik3 end', 26.4, 2],
  ['C05', 'Ik3 end', 13.1, 2],
  ['C09', 'Ik1 min', 1.234, 2],
  ['C10', 'k²S²', 64802500, 1],
  ['C12', 'k²S²', 64802500, 1],
];
