import { parseA1Ref } from '@borgar/fx/xlsx';
import { LIMITS } from './limits';

export interface Area {
  /** '' where the text names none. */
  sheet: string;
  top: number;
  left: number;
  bottom: number;
  right: number;
}

/** An area as a formula writes it: which of its sides stay where they are when the formula moves. */
export interface WrittenArea extends Area {
  readonly fixed: { readonly top: boolean; readonly left: boolean; readonly bottom: boolean; readonly right: boolean };
}

/** The rectangle that an A1 text names; undefined where it is none, spans several sheets or another workbook. */
export function areaOf(text: string): WrittenArea | undefined {
  const parsed = parseA1Ref(text);
  if (!parsed || !('range' in parsed) || parsed.workbookName || parsed.range.trim || parsed.sheetName?.includes(':')) return undefined;
  const { top, left, bottom, right, $top, $left, $bottom, $right } = parsed.range;
  return {
    sheet: parsed.sheetName ?? '', top: top ?? 0, left: left ?? 0, bottom: bottom ?? LIMITS.rows - 1, right: right ?? LIMITS.columns - 1,
    // Sides that are not written are the edges of the sheet.
    fixed: { top: $top || top == null, left: $left || left == null, bottom: $bottom || bottom == null, right: $right || right == null },
  };
}

const around = (place: number, isFixed: boolean, by: number, size: number): number => (isFixed ? place : (((place + by) % size) + size) % size);

/** The area that a formula means when it stands so many rows and columns away; past an edge of the sheet it goes round. */
export function movedArea({ sheet, top, left, bottom, right, fixed }: WrittenArea, rows: number, columns: number): Area {
  const [a, b] = [around(top, fixed.top, rows, LIMITS.rows), around(bottom, fixed.bottom, rows, LIMITS.rows)];
  const [c, d] = [around(left, fixed.left, columns, LIMITS.columns), around(right, fixed.right, columns, LIMITS.columns)];
  return { sheet, top: Math.min(a, b), left: Math.min(c, d), bottom: Math.max(a, b), right: Math.max(c, d) };
}
