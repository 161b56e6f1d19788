import type { Cell } from '../../../functions/kernel/cell';
import type { BookCell } from '../../calculate/cells';
import type { Rule } from '../rule';
import type { Subject } from '../subject';

export const isVerdict = (value: Cell): boolean => typeof value === 'string' && /^\s*(pass|fail|not shown)\s*$/i.test(value);

/** A verdict that nothing works out. */
export const verdictByHand: Rule = {
  kind: 'verdict-by-hand', class: 'A',
  looksFor: 'A verdict (pass, FAIL, not shown) typed by hand in a row or column of calculations.',
  *look(subject) {
    for (const sheet of subject.book.sheets) {
      if (sheet.formulas.length === 0) continue;
      for (const cell of sheet.all) {
        if (cell.formula !== null || cell.owner || !isVerdict(cell.stored) || !amongCalculations(subject, cell)) continue;
        yield { cell, reason: 'a verdict typed by hand: nothing in the sheet works it out' };
      }
    }
  },
};

/** A list of words to choose from holds no calculations; a row of a schedule does. */
function amongCalculations(subject: Subject, cell: BookCell): boolean {
  if (subject.columnOf(cell)?.cells.some(({ formula }) => formula !== null)) return true;
  return subject.record(cell).some(({ formula }) => formula !== null);
}
