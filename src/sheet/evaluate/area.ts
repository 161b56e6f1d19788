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

/** The rectangle that an A1 text names; undefined where it is none, spans several sheets or another workbook. */
export function areaOf(text: string): Area | undefined {
  const parsed = parseA1Ref(text);
  if (!parsed || !('range' in parsed) || parsed.workbookName || parsed.range.trim || parsed.sheetName?.includes(':')) return undefined;
  const { top, left, bottom, right } = parsed.range;
  return { sheet: parsed.sheetName ?? '', top: top ?? 0, left: left ?? 0, bottom: bottom ?? LIMITS.rows - 1, right: right ?? LIMITS.columns - 1 };
}
