import { shownCell } from '../../../functions/kernel/scalar';
import type { Column } from '../columns';
import { looksLikeNumber } from '../number-text';
import type { Rule } from '../rule';
import { unitNamed } from '../written-unit';

export const numberAsText: Rule = {
  kind: 'number-as-text', class: 'B',
  looksFor: 'Text that looks like a number among numbers: sums and comparisons pass over it.',
  *look(subject) {
    for (const sheet of subject.book.sheets) {
      for (const column of subject.columns(sheet)) {
        const texts = column.cells.filter(({ formula, owner, stored }) => formula === null && !owner && typeof stored === 'string' && looksLikeNumber(stored));
        if (texts.length === 0 || !isOfNumbers(column, texts.length)) continue;
        for (const cell of texts) yield { cell, reason: `the text ${shownCell(cell.stored)} looks like a number: sums and comparisons pass over it` };
      }
    }
  },
};

/** Headings over numbers that count nothing, such as 3.1 of an item list. */
const LABELS = /^(?:no|nr|n[°º]|#|item|pos|ref|rev|tag|id|key|code|clause|drawing|document|sheet)(?![\p{L}\d])/iu;

/** A column whose unit says so, or whose other cells are mostly numbers. */
function isOfNumbers({ cells, unit, heading }: Column, texts: number): boolean {
  if (![undefined, '1'].includes(unitNamed(unit))) return true;
  if (LABELS.test(heading)) return false;
  const numbers = cells.filter(({ stored }) => typeof stored === 'number').length;
  return numbers > 0 && numbers >= texts && numbers > (cells.length - texts) / 2;
}
