import type { Cell } from '../../functions/kernel/cell';
import type { BookCell } from '../calculate/cells';
import type { FindingClass } from './finding';
import type { ObservedCall } from './observed-call';
import type { Subject } from './subject';

/** What a rule says of one place; the rest of the finding is known from the place. */
export interface Found {
  readonly cell?: BookCell;
  /** Where it is no cell that holds anything. */
  readonly sheet?: string;
  readonly address?: string;
  readonly reason: string;
  /** Where it is graver or lighter than the rule's own class. */
  readonly class?: FindingClass;
  readonly computed?: Cell;
  readonly difference?: number;
  readonly clause?: string;
}

/** Follows the calls of our functions while each formula is worked out from stored values. */
export interface Watch {
  call(call: ObservedCall): void;
  found(): Iterable<Found>;
}

/** One thing that is looked for in a workbook. */
export interface Rule {
  readonly kind: string;
  readonly class: FindingClass;
  /** In a sentence that stands in the report. */
  readonly looksFor: string;
  /** Looks at the workbook as it is stored. */
  look?(subject: Subject): Iterable<Found>;
  watch?(subject: Subject): Watch;
}
