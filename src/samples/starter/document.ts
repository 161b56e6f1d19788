import type { LegendEntry, Document } from '../frame';
import { EXAMPLE } from '../look';

export const DOCUMENT: Document = { works: '(works)', number: '(document)', revision: '–', date: new Date(Date.UTC(2026, 10, 25)) };

/** Remark and legend of every sheet of the starter. */
export const BLOCK: { remark: string; legend: readonly LegendEntry[] } = {
  remark: 'Starter: italics are invented examples, to overwrite. Blank rows keep still until their first cell is filled; type below the last row to grow a table.',
  legend: [['example', EXAMPLE]],
};

/** Curves that the starter has room for. */
export const CURVES = [1, 2, 3] as const;
export const pointsOf = (kind: 'time' | 'cutoff' | 'joule', curve: string): string => `CHOOSE(${curve},${CURVES.map((n) => `${kind}_${n}`).join(',')})`;
/** Tolerance of links' curves in current, %. */
export const TOLERANCE = 10;
