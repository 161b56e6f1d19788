import { EXTERNAL_FORMULA, readsOtherBook } from '../stored-values';
import type { Rule } from '../rule';

/** Links to other workbooks that no formula uses; formulas that do use one are found where they are worked out. */
export const externalLinks: Rule = {
  kind: EXTERNAL_FORMULA.kind, class: 'B', looksFor: EXTERNAL_FORMULA.looksFor,
  *look(subject) {
    const { externalLinks: count } = subject.facts;
    if (count === 0 || subject.book.formulaCells.some((cell) => readsOtherBook(subject, cell))) return;
    yield { class: 'C', reason: `the workbook is linked to ${count} other workbook${count === 1 ? '' : 's'}, though no formula of a cell reads from there` };
  },
};
