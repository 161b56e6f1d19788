import type { Rule } from '../rule';

const TEXTS = /"(?:[^"]|"")*"/g;

/** A formula whose reference was deleted; it may well agree with the error, or the figure, that is stored with it. */
export const lostReference: Rule = {
  kind: 'lost-reference', class: 'B',
  looksFor: 'Formulas that have lost a reference, so that #REF! stands where a cell was meant.',
  *look(subject) {
    for (const cell of subject.book.formulaCells) {
      // Most formulas hold none, so that their texts need not be taken out.
      if (/#REF!/i.test(cell.formula ?? '') && /#REF!/i.test(cell.formula!.replace(TEXTS, ''))) yield { cell, reason: 'the formula has lost a reference: #REF! stands where a cell was meant' };
    }
  },
};
