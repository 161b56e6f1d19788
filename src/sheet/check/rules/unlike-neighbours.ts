import { typedFormula } from '../../explain/calls-in-formula';
import { referenceDifference } from '../reference-difference';
import type { Rule } from '../rule';

/** A formula that is another one than its neighbours have, told as distances. */
export const unlikeNeighbours: Rule = {
  kind: 'unlike-neighbours', class: 'B',
  looksFor: 'A formula that differs from the one filled into the rest of its table column or block.',
  *look(subject) {
    for (const { cell, among, usual } of subject.deviations) {
      const own = cell && subject.templates.of(cell);
      if (!own || referenceDifference(own.key, usual.key) !== 'other') continue;
      const whose = among.heading === '' ? 'its neighbours have' : `the rest of "${among.heading}" has`;
      yield { cell: cell!, reason: `unlike its neighbours: ${whose} =${typedFormula(usual.first.formula!)}, as written in ${usual.first.address}` };
    }
  },
};
