import { curveUnits } from '../../functions/kernel/range-kinds';
import type { CurveKind } from '../../functions/kernel/range-kinds';
import { numberOf, withinBounds } from '../../functions/kernel/number';
import { Refusal } from '../../core/refusal';
import { type Box, addressOf } from '../../sheet/xlsx/address';
import type { CellEdit } from '../host';
import { type Place, fixedText } from '../places';
import type { ReadPoints } from './read-points';

/** What stands above the points in the sheet, as the user typed it. */
export interface Provenance {
  readonly device: string;
  readonly source: string;
  readonly issued: string;
  readonly volts: number;
}

export interface Typed {
  readonly device: string;
  readonly source: string;
  readonly issued: string;
  readonly volts: string;
}
export type Missing = { readonly of: keyof Typed; readonly words: string };

const reading = { blankArrivesAsZero: false, remark: () => undefined };

/** The facts, or what is wrong with them. Nobody but the user knows them, so none has a default. */
export function provenanceOf(typed: Typed): Provenance | readonly Missing[] {
  const missing: Missing[] = [];
  const text = (of: 'source' | 'issued', words: string): string => {
    const value = typed[of].trim();
    if (value === '') missing.push({ of, words });
    return value;
  };
  const source = text('source', 'Source is missing: the maker’s document that the points are from.');
  const issued = text('issued', 'Issue date is missing: the one on the document.');
  let volts = 0;
  if (typed.volts.trim() === '') missing.push({ of: 'volts', words: 'Voltage is missing: the one that the document’s curve stands for.' });
  else {
    try {
      volts = withinBounds(numberOf(typed.volts, 'Voltage', 'V', reading), { sign: 'above 0', atLeast: 50, upTo: 1500 }, 'Voltage', 'V', reading);
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      missing.push({ of: 'volts', words: `${thrown.message}.` });
    }
  }
  return missing.length > 0 ? missing : { device: typed.device.trim(), source, issued, volts };
}

/** Rows above the points: device, source, issued, voltage, kind, check. */
const ABOVE = 6;

export interface Block {
  /** All its cells. */
  readonly whole: Place;
  /** Headings and points: what the functions take. */
  readonly points: Place;
  readonly edits: readonly CellEdit[];
}

/** The cells of complete points with their facts, from a first cell on. */
export function blockOf(at: Place, read: ReadPoints, { device, source, issued, volts }: Provenance): Block {
  const { sheet, box: { top, left } } = at;
  const box = (from: number, to: number): Box => ({ top: top + from, left, bottom: top + to, right: left + 1 });
  const count = read.rows.length;
  const points = box(ABOVE, ABOVE + count);
  const [x, y] = curveUnits[read.kind];
  const cell = (row: number, column: 0 | 1, content: { formula: string } | { value: number | string }): CellEdit => ({ sheet, address: addressOf(top + row, left + column), ...content });
  const facts: (readonly [string, { formula: string } | { value: number | string }])[] = [
    ['device', { value: device === '' ? '–' : device }],
    ['source', { value: source }],
    ['issued', { value: issued }],
    ['sheet V', { value: volts }],
    ['kind', { value: read.kind }],
    ['check', { formula: `=JW.CURVE_CHECK(${fixedText(points)},"${read.kind}")` }],
  ];
  return {
    whole: { sheet, box: box(0, ABOVE + count) },
    points: { sheet, box: points },
    edits: [
      ...facts.flatMap(([name, content], row) => [cell(row, 0, { value: name }), cell(row, 1, content)]),
      cell(ABOVE, 0, { value: x }), cell(ABOVE, 1, { value: y }),
      ...read.rows.flatMap(({ point }, i) => [cell(ABOVE + 1 + i, 0, { value: point![0] }), cell(ABOVE + 1 + i, 1, { value: point![1] })]),
    ],
  };
}

/** How the functions that read such points are called. */
export function usesOf(kind: CurveKind, points: string): readonly string[] {
  switch (kind) {
    case 'time':
      return [`=JW.CURVE_TIME(${points}, current_A, tolerance_pct, "slow")`, `=JW.CURVE_CURRENT(${points}, time_s, tolerance_pct, "slow")`];
    case 'cut-off':
      return [`=JW.CUTOFF_POINTS(${points}, fault_kA, sheet_V, volts_V)`];
    case 'joule':
      return [`=JW.LETTHROUGH_POINTS(${points}, fault_kA, sheet_V, volts_V)`];
  }
}
