import { WORKS } from '../cable-schedule/data';
import type { Document } from '../frame';

/**
 * A colleague's sheet for the third kiln of Thornbeck Tileworks, and the sources from which it is checked. Invented. The sheet holds
 * mistakes on purpose, each of another kind; the remarks of `checks.ts` name them.
 */
export const DOCUMENT: Document = { works: WORKS, number: 'TT-EL-022', revision: 'A, checked', date: new Date(Date.UTC(2026, 10, 25)) };

/** Inputs: what, value, unit, name, origin, issue, comment. */
export const SOURCES: readonly (readonly [string, string | number, string, string, string, string, string])[] = [
  ['Nominal voltage', 415, 'V', 'Un_V', 'Design basis TT-DB-001', '2', '–'],
  ['Line to earth', 240, 'V', 'U0_V', 'Design basis TT-DB-001', '2', 'Above 230 V: the shorter disconnection time'],
  ['Source, greatest', '0.770629+4.455606i', 'mΩ', 'Zs_max', 'Schedule TT-EL-014', 'C', 'Both transformers'],
  ['Run to MSB', '0.0566+0.16i', 'mΩ', 'Z_msb', 'Schedule TT-EL-014', 'C', '20 °C'],
  ['Run to KILN 1', '3.6381+3.96i', 'mΩ', 'Z_kiln', 'Schedule TT-EL-014', 'C', '20 °C, from the transformers'],
  ['Transformer', 1250, 'kVA', 'TR_kVA', 'Plate of TR1', '–', '–'],
  ['Impedance voltage', 6, '%', 'TR_uk_pct', 'Plate of TR1', '–', '–'],
  ['Load loss', 13.5, 'kW', 'TR_loss_kW', 'Test sheet of TR1', '–', '–'],
  ['Fault level at PRESS', 31.53, 'kA', 'Ik_press', 'Schedule TT-EL-014', 'C', '–'],
];

/** Cables of the list TT-CL-007 rev 1: cable, from, length m, mm², metal, insulation, earth mm², load A, pf, loop to the board mΩ (hot, least source), let-through A²s and the level kA it belongs to, level kA of the board. */
export const CABLES: readonly (readonly [string, string, number, number, string, string, number, number, number, string, number, number, number])[] = [
  ['X1', 'PRESS', 70, 16, 'copper', 'PVC', 16, 52, 0.9, '9.339006+14.203833i', 30976, 31.5, 31.53],
  ['X2', 'GLAZE', 35, 70, 'copper', 'PVC', 35, 118, 0.86, '46.553726+23.003833i', 5522755, 11.65, 11.65],
  ['X3', 'KILN 1', 55, 50, 'copper', 'PVC', 25, 96, 0.85, '10.896766+17.003832i', 160076, 26.5, 26.48],
  ['X4', 'KILN 1', 70, 35, 'copper', 'XLPE', 16, 110, 0.88, '10.896766+17.003832i', 290151, 26.5, 26.48],
  ['X5', 'GLAZE', 50, 25, 'copper', 'PVC', 16, 74, 0.87, '46.553726+23.003833i', 12330763, 11.65, 11.65],
  ['X6', 'KILN 2', 45, 70, 'copper', 'XLPE', 35, 120, 0.86, '13.309566+19.003832i', 301053, 53.7, 23.23],
];

/** Devices, from their sheets: device, rated A, type, pre-arcing A²s, total A²s at the minor's board, level kA, Icu, Ics kA. */
type Figure = number | '–';
export const DEVICES: readonly (readonly [string, Figure, string, Figure, Figure, Figure, Figure, Figure])[] = [
  ['F31', 200, 'gG range T', 175000, 449000, 26.5, 120, '–'],
  ['F32', 160, 'gG range T', 105000, 290151, 26.5, 120, '–'],
  ['F33', 250, 'gG range T', 320000, 785000, 31.5, 120, '–'],
  ['F34', 100, 'gG range U', 36000, 98000, 31.5, 120, '–'],
  ['Q5', 250, 'breaker', '–', '–', '–', 36, 18],
];

/** The colleague's cables: cable, length m, mm², insulation, load A, pf, resistance at 20 °C mΩ/m, k, let-through A²s, least earth fault kA. */
export const DESIGN: readonly (readonly [string, number, number, string, number, number, number, number, number, number])[] = [
  ['X1', 70, 16, 'PVC', 52, 0.9, 1.15, 115, 30976, 1.234],
  ['X2', 35, 70, 'PVC', 118, 0.86, 0.268, 143, 5522755, 2.69],
  ['X3', 55, 50, 'PVC', 96, 0.85, 0.387, 115, 160076, 4.466],
  ['X4', 70, 35, 'XLPE', 110, 0.88, 0.524, 143, 290, 2.07],
  ['X5', 50, 25, 'PVC', 74, 0.87, 0.727, 115, 12330763, 1.41],
  ['X6', 45, 70, 'XLPE', 120, 0.86, 0.268, 143, 301053, 3.53],
];
/** Rows (from 0) of X1, X4 and X5, which hold something else than their neighbours. */
export const ROW = { X1: 0, X4: 3, X5: 4 } as const;

/** Other figures received: item, value. One was left blank. */
export const GIVEN: readonly (readonly [string, string | number])[] = [
  ['Ik3 at MSB', 53.6],
  ['Z of one transformer', '1.43+7.83i'],
  ['ip at KILN 1', 32.4],
  ['Q5 breaks', 'pass'],
  ['F31 over F32 by joule', 'pass'],
  ['F33 over F34 by ratio', 'pass'],
  ['limit at X1', 0.4],
  ['I2 of F32', 232],
  ['let-through of F32', 7022500],
  ['load of X4', 110],
  ['neutral of X6', ''],
];
