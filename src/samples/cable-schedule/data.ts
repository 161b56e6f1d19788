import type { Document } from '../frame';

/**
 * An invented works: Thornbeck Tileworks, a tile factory with two kilns, presses and a glaze shop behind two
 * transformers in parallel. Every figure is made up for this sample; none is a maker's.
 */
export const DOCUMENT: Document = {
  works: 'Thornbeck Tileworks (invented)', number: 'TT-EL-014', revision: 'B', date: new Date(Date.UTC(2026, 9, 12)),
};

/** Boards: name, fed from, run in m, mm², metal, runs, return conductor mm². */
export const BOARDS: readonly (readonly [string, string, number, number, string, number, number])[] = [
  ['MSB', 'source', 8, 630, 'copper', 4, 630],
  ['KILN 1', 'MSB', 95, 240, 'copper', 2, 240],
  ['KILN 2', 'MSB', 120, 240, 'copper', 2, 240],
  ['PRESS', 'MSB', 60, 185, 'copper', 2, 185],
  ['GLAZE', 'MSB', 85, 150, 'aluminium', 1, 150],
];

type Kind = 'gG' | 'breaker';

/**
 * Devices: ref, board, kind, rated A, range, pre-arcing A²s, total A²s, read at kA, clearing s.
 * Fuse figures lie within the limits of the standard; breakers are of the kind that waits and does not limit.
 * F9 was read at the level of another board, as happens: its cable cannot be shown to withstand.
 */
export const DEVICES: readonly (readonly [string, string, Kind, number, string, number | '', number | '', number | '', number | ''])[] = [
  ['Q1', 'MSB', 'breaker', 1600, '', '', '', '', 0.3],
  ['F1', 'MSB', 'gG', 400, 'gG range T', 1.05e6, 2.6e6, 53.7, ''],
  ['F2', 'MSB', 'gG', 400, 'gG range T', 1.05e6, 2.6e6, 53.7, ''],
  ['F3', 'MSB', 'gG', 315, 'gG range T', 5.6e5, 1.45e6, 53.7, ''],
  ['F4', 'MSB', 'gG', 250, 'gG range T', 3.2e5, 8.1e5, 53.7, ''],
  ['F5', 'KILN 1', 'gG', 160, 'gG range T', 1.05e5, 2.9e5, 26.5, ''],
  ['F6', 'KILN 1', 'gG', 125, 'gG range T', 5.8e4, 1.6e5, 26.5, ''],
  ['F7', 'PRESS', 'gG', 200, 'gG range T', 1.75e5, 4.6e5, 31.5, ''],
  ['F8', 'PRESS', 'gG', 63, 'gG range T', 1.1e4, 3.1e4, 31.5, ''],
  ['Q2', 'GLAZE', 'breaker', 160, '', '', '', '', 0.04],
  ['Q3', 'GLAZE', 'breaker', 100, '', '', '', '', 0.2],
  ['F9', 'KILN 2', 'gG', 160, 'gG range T', 1.05e5, 2.9e5, 53.7, ''],
];

/** Cables: number, from, to, length m, metal, insulation, mm², runs, earth conductor mm², device. */
export const CABLES: readonly (readonly [string, string, string, number, string, string, number, number, number, string])[] = [
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
];

/** Pairs that must discriminate: major, minor, level kA at which the major's pre-arcing figure was read. */
export const PAIRS: readonly (readonly [string, string, number])[] = [
  ['F1', 'F5', 26.5],
  ['F3', 'F7', 31.5],
];

/** Options compared by what they let through: link, breaker. */
export const COMPARED: readonly (readonly [string, string])[] = [['F1', 'Q1']];

/** A colleague's figures: cable, item, value, tolerance %. Two are wrong on purpose: c of the greatest fault in a least one, and k of another insulation. */
export const DESIGNER: readonly (readonly [string, string, number, number])[] = [
  ['C01', 'Ik3 end', 26.4, 2],
  ['C05', 'Ik3 end', 13.1, 2],
  ['C09', 'Ik1 min', 1.18, 2],
  ['C10', 'k²S²', 64802500, 1],
  ['C12', 'k²S²', 64802500, 1],
];
