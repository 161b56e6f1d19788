import type { Rule } from '../rule';

const TEXTS = /"(?:[^"]|"")*"/g;

/** A formula whose reference was deleted; it may well agree with the error, or the figure, that is stored with it. */
export const lostReference: Rule = {
  kind: 'lost-reference', class: 'B',
  looksFor: 'Formulas that have lost a reference, so that #REF! stands where a cell was meant.',
  *look(subject) {
    for (const cell of subject.book.formulaCells) {
      if (cell.formula !== null && cell.formula.replace(TEXTS, '').toUpperCase().includes('#REF!')) yield { cell, reason: 'the formula has lost a reference: #REF! stands where a cell was meant' };
    }
  },
};
