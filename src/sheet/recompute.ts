import { type Change, type NotComputed, openBook } from './book';
import type { CustomFunctions } from './evaluate';
import type { CellEdit } from './xlsx/edit';
import { patchWorkbook } from './xlsx/patch-workbook';
import type { WorkbookFacts } from './xlsx/workbook';

export interface Recomputed {
  /** The file with new stored values; the very same bytes where none differs. */
  readonly bytes: Uint8Array;
  /** Number of formulas. */
  readonly formulas: number;
  readonly changed: readonly Change[];
  /** Formulas whose stored value was left as it is, and why. */
  readonly notComputed: readonly NotComputed[];
  readonly facts: WorkbookFacts;
}

/** Computes all formulas of a workbook file anew and stores the values that differ. Nothing else of the file changes. */
export function recompute(bytes: Uint8Array, custom: CustomFunctions, now?: Date): Recomputed {
  const book = openBook(bytes, custom, now);
  const changed = book.changes();
  const edits = new Map<string, Map<string, CellEdit>>();
  for (const { sheet, address, now: value } of changed) {
    let ofSheet = edits.get(sheet);
    if (!ofSheet) edits.set(sheet, (ofSheet = new Map()));
    ofSheet.set(address, { value });
  }
  return {
    bytes: patchWorkbook(book.workbook, edits), formulas: book.formulaCells.length, changed, notComputed: book.notComputed(),
    facts: book.workbook.facts,
  };
}
