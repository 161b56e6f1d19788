import { type Change, type NotComputed, openBook } from './book';
import type { CustomFunctions } from './evaluate';
import type { CellEdit } from './xlsx/edit';
import { patchWorkbook } from './xlsx/patch-workbook';
import type { OpenWorkbook, WorkbookFacts } from './xlsx/workbook';

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
  const { workbook, ...computed } = compute(bytes, custom, now);
  return { ...computed, bytes: patchWorkbook(workbook, editsOf(computed.changed)), facts: workbook.facts };
}

/** The cells of the book are let go with the end of this function: patching a large sheet needs the memory. */
function compute(bytes: Uint8Array, custom: CustomFunctions, now: Date | undefined): Omit<Recomputed, 'bytes' | 'facts'> & { workbook: OpenWorkbook } {
  const book = openBook(bytes, custom, now);
  return { workbook: book.workbook, formulas: book.formulaCells.length, changed: book.changes(), notComputed: book.notComputed() };
}

function editsOf(changed: readonly Change[]): Map<string, Map<string, CellEdit>> {
  const edits = new Map<string, Map<string, CellEdit>>();
  for (const { sheet, address, now: value } of changed) {
    let ofSheet = edits.get(sheet);
    if (!ofSheet) edits.set(sheet, (ofSheet = new Map()));
    ofSheet.set(address, { value });
  }
  return edits;
}
