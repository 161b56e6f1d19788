import { unitOf } from '../../../core/units';
import { shownCell } from '../../../functions/kernel/scalar';
import type { Column } from '../columns';
import type { Rule } from '../rule';

/** A figure in plain writing, with a decimal comma, or with marks between the thousands. */
const LOOKS_LIKE_A_NUMBER = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+|\d{1,3}(?:[ .,'’\u00a0\u202f]\d{3})+(?:[.,]\d+)?)(?:e[+-]?\d+)?$/i;

export const numberAsText: Rule = {
  kind: 'number-as-text', class: 'B',
  looksFor: 'Text that looks like a number among numbers: sums and comparisons pass over it.',
  *look(subject) {
    for (const sheet of subject.book.sheets) {
      for (const column of subject.columns(sheet)) {
        const texts = column.cells.filter(({ formula, owner, stored }) => formula === null && !owner && typeof stored === 'string' && LOOKS_LIKE_A_NUMBER.test(stored.trim()));
        if (texts.length === 0 || !isOfNumbers(column, texts.length)) continue;
        for (const cell of texts) yield { cell, reason: `the text ${shownCell(cell.stored)} looks like a number: sums and comparisons pass over it` };
      }
    }
  },
};

/** A column whose unit says so, or whose other cells are mostly numbers. */
function isOfNumbers({ cells, unit }: Column, texts: number): boolean {
  if (unitOf(unit.replace(/ peak$/, '')) !== undefined && unit !== '-') return true;
  const numbers = cells.filter(({ stored }) => typeof stored === 'number').length;
  return numbers > 0 && numbers >= texts && numbers > (cells.length - texts) / 2;
}
