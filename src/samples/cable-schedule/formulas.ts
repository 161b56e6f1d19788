import { LINK_RATINGS } from './data';

/** Pieces of formula that several sheets of the schedule use. */

/** A figure of the board that the row names in a column. */
export const ofBoard = (key: string, column: string): string => `XLOOKUP([@${key}],Boards[board],Boards[${column}])`;

/** A figure of the device that the row names in a column. */
export const ofDevice = (key: string, column: string): string => `XLOOKUP([@${key}],Devices[device],Devices[${column}])`;

export type PointKind = 'time' | 'cutoff' | 'joule';
export const pointsName = (kind: PointKind, rated: number): string => `${kind}_${rated}`;

/** The points of a link by its number in the list of ratings. */
export const pointsOf = (kind: PointKind, curve: string): string => `CHOOSE(${curve},${LINK_RATINGS.map((rated) => pointsName(kind, rated)).join(',')})`;

/** Tolerance of links' curves in current, %. */
export const LINK_TOLERANCE = 10;

const settings = (value: (column: string) => string): string => ['Ir', 'tr', 'Isd', 'tsd', 'Ii', 'ii s'].map(value).join(',');

/** Tripping time of the row's breaker at a current in A, its settings found by `value`. */
export const tripTime = (current: string, value: (column: string) => string, edge: 'slow' | 'fast'): string =>
  `JW.TRIP_TIME(${current},${settings(value)},"${edge}")`;
