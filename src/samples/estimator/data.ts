import { WORKS } from '../cable-schedule/data';
import type { Document } from '../frame';

/** Options for two ways of Thornbeck Tileworks. Devices and prices are invented; money is in no currency. */
export const DOCUMENT: Document = { works: WORKS, number: 'TT-EL-031', revision: 'A', date: new Date(Date.UTC(2026, 10, 2)) };

/** Boards: name, impedance from the transformers to the board, mΩ, from the cable schedule. */
export const BOARDS: readonly (readonly [string, string])[] = [
  ['KILN 1', '3.6381+3.96i'],
  ['PRESS', '3.0296+2.56i'],
];

export type OptionKind = 'fuse-switch' | 'breaker';
type Figure = number | '';

/**
 * Options: key, way, load, option, board, load kW, pf, rated A, Icu kA (of a link its rated breaking capacity), Ics kA, need,
 * conditional rating kA of the fuse-switch, link it was tested with, link fitted.
 */
export const OPTIONS: readonly (readonly [string, string, string, OptionKind, string, number, number, number, number, Figure, string, Figure, string, string])[] = [
  ['W1-A', 'W1', 'Kiln 1 fans', 'fuse-switch', 'KILN 1', 75, 0.86, 160, 120, '', 'service', 80, '160 A gG range T', '160 A gG range T'],
  ['W1-B', 'W1', 'Kiln 1 fans', 'breaker', 'KILN 1', 75, 0.86, 160, 36, 27, 'service', '', '', ''],
  ['W2-A', 'W2', 'Press 1', 'fuse-switch', 'PRESS', 110, 0.87, 200, 120, '', 'service', 80, '200 A gG range T', '200 A gG range T'],
  ['W2-B', 'W2', 'Press 1', 'breaker', 'PRESS', 110, 0.87, 250, 50, 25, 'once', '', '', ''],
];

/** Prices: key, list price, discount %, assembly hours, enclosure and auxiliaries, spares kept. */
export const FIRST: readonly (readonly [string, number, number, number, number, number])[] = [
  ['W1-A', 760, 30, 2, 60, 132],
  ['W1-B', 890, 35, 1.5, 90, 0],
  ['W2-A', 640, 30, 2.25, 70, 168],
  ['W2-B', 1460, 35, 2, 110, 949],
];

/** One fault: key, parts, chance that they are needed, hours of work, hours of waiting; heat of one pole at the load W, poles. */
export const FAULTS: readonly (readonly [string, number, number, number, number, number, number])[] = [
  ['W1-A', 66, 1, 1, 0.5, 13.5, 3],
  ['W1-B', 578.5, 0.15, 3, 1, 6.6, 3],
  ['W2-A', 84, 1, 1, 0.5, 17.5, 3],
  ['W2-B', 949, 1, 4, 2, 12, 3],
];

export const RATES = [0, 0.005, 0.01, 0.015, 0.02, 0.03, 0.04, 0.06, 0.08, 0.1] as const;
/** Faults a year that the client guesses, one figure for each way. */
export const GUESSED: readonly (readonly [string, string, string, number])[] = [
  ['W1', 'W1-A', 'W1-B', 0.05],
  ['W2', 'W2-A', 'W2-B', 0.05],
];
