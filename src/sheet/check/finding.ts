import type { Cell } from '../../functions/kernel/cell';

/** A: bears on safety. B: must be corrected. C: a remark. */
export type FindingClass = 'A' | 'B' | 'C';

/** One thing that a checker would write down. */
export interface Finding {
  readonly class: FindingClass;
  readonly kind: string;
  /** '' where the finding is about the workbook as a whole. */
  readonly sheet: string;
  /** Address; '' where the finding is about a sheet or the workbook. */
  readonly cell: string;
  /** As it is typed, with its =; null where the cell holds a constant. */
  readonly formula: string | null;
  readonly stored: Cell;
  /** What the cell should hold by its formula, or by the rule; null where nothing was computed. */
  readonly computed: Cell;
  /** Per cent of the computed value; null where that says nothing. */
  readonly difference: number | null;
  readonly reason: string;
  /** Standard, edition and clause of the function concerned; '' where there is none. */
  readonly clause: string;
}

export const FINDING_CLASSES: readonly FindingClass[] = ['A', 'B', 'C'];

export const CLASS_WORDS: Readonly<Record<FindingClass, string>> = { A: 'safety', B: 'must be corrected', C: 'remark' };
