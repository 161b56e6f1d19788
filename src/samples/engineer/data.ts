import { type Cable, type Device, WORKS, link } from '../cable-schedule/data';
import type { Document } from '../frame';

/** Revision D of the schedule of Thornbeck Tileworks: a second glaze line. Invented, as all of it. */
export const DOCUMENT: Document = { works: WORKS, number: 'TT-EL-014', revision: 'D', date: new Date(Date.UTC(2026, 10, 20)) };
export const APPROVED_REVISION = 'C';
/** What was approved with a point left open, by cable. */
export const OPEN_POINTS: Readonly<Record<string, string>> = {
  C07: 'Open point 1: read the sheet of F9 at its own level',
  C11: 'Open point 2: larger cable or quicker release',
};

/** Devices of the added rows. */
export const ADDED_DEVICES: readonly Device[] = [
  link('F21', 'KILN 1', 100, 3.6e4, 26.5),
  link('F22', 'KILN 1', 63, 1.1e4, 26.5),
  link('F23', 'KILN 2', 125, 5.8e4, 23.2),
  link('F24', 'KILN 2', 63, 1.1e4, 23.2),
  link('F25', 'PRESS', 160, 1.05e5, 31.5),
  link('F26', 'PRESS', 100, 3.6e4, 31.5),
  link('F27', 'PRESS', 63, 1.1e4, 31.5),
  ['Q21', 'GLAZE', 'breaker', 100, '', '', '', '', '', '', 80, 8, 640, 0.1, 1000, 0.03, 25, 18.5, '', '', 'service'],
  ['Q22', 'GLAZE', 'breaker', 63, '', '', '', '', '', '', 50, 8, 400, 0.1, 630, 0.03, 25, 18.5, '', '', 'service'],
  link('F28', 'DRYER', 63, 1.1e4, 13.8),
  link('F29', 'PACKING', 63, 1.1e4, 11.5),
  link('F30', 'MSB', 200, 1.75e5, 53.7),
];

/** The dozen cables added to the approved ones. */
export const ADDED_CABLES: readonly Cable[] = [
  ['C17', 'KILN 1', 'Cooling fans 1', 60, 'copper', 'XLPE', 35, 1, 16, 'F21'],
  ['C18', 'KILN 1', 'Cooling controls 1', 45, 'copper', 'PVC', 16, 1, 16, 'F22'],
  ['C19', 'KILN 2', 'Cooling fans 2', 65, 'copper', 'XLPE', 50, 1, 25, 'F23'],
  ['C20', 'KILN 2', 'Cooling controls 2', 50, 'copper', 'PVC', 16, 1, 16, 'F24'],
  ['C21', 'PRESS', 'Press 2', 40, 'copper', 'XLPE', 70, 1, 35, 'F25'],
  ['C22', 'PRESS', 'Mould heating', 35, 'copper', 'XLPE', 35, 1, 16, 'F26'],
  ['C23', 'PRESS', 'Dust filter', 75, 'copper', 'PVC', 16, 1, 16, 'F27'],
  ['C24', 'GLAZE', 'Glaze line 2', 55, 'copper', 'XLPE', 25, 1, 16, 'Q21'],
  ['C25', 'GLAZE', 'Glaze mixers', 60, 'copper', 'PVC', 10, 1, 10, 'Q22'],
  ['C26', 'DRYER', 'Dryer fans', 30, 'copper', 'PVC', 16, 1, 16, 'F28'],
  ['C27', 'PACKING', 'Pallet line', 45, 'copper', 'PVC', 16, 1, 16, 'F29'],
  ['C28', 'MSB', 'Glaze water heater', 90, 'copper', 'XLPE', 95, 1, 50, 'F30'],
];
