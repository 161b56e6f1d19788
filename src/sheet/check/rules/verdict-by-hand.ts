import type { AstExpression } from '@borgar/fx/xlsx';
import type { Cell } from '../../../functions/kernel/cell';
import type { BookCell } from '../../calculate/cells';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { expressions } from '../templates';

export const isVerdict = (value: Cell): boolean => typeof value === 'string' && /^\s*(pass|fail|not shown)\s*$/i.test(value);

/** A verdict that nothing works out. */
export const verdictByHand: Rule = {
  kind: 'verdict-by-hand', class: 'A',
  looksFor: 'A verdict (pass, FAIL, not shown) typed by hand in a row or column of calculations.',
  *look(subject) {
    for (const sheet of subject.book.sheets) {
      if (sheet.formulas.length === 0) continue;
      for (const cell of sheet.all) {
        if (cell.formula !== null || cell.owner || !isVerdict(cell.stored) || !amongCalculations(subject, cell) || isHeldAgainst(subject, cell)) continue;
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

/** A verdict that was taken down once and is held against the one of today: a formula of its row compares the two. */
function isHeldAgainst(subject: Subject, cell: BookCell): boolean {
  return subject.record(cell).some((other) => other.formula !== null && [...expressions(subject.templates.of(other)?.tree)].some((node) => {
    const sides = comparedBy(subject, node);
    return sides.length === 2 && sides.some((side) => subject.cellAt(side, other)?.cell === cell) && sides.every((side) => subject.cellAt(side, other) !== undefined);
  }));
}

/** The two things that an expression compares: sides of = and <>, or what AGREE and its like are asked about. */
function comparedBy(subject: Subject, node: AstExpression): readonly (AstExpression | null)[] {
  if (node.type === 'BinaryExpression') return node.operator === '=' || node.operator === '<>' ? node.arguments : [];
  return node.type === 'CallExpression' && subject.entryOf(node)?.member.name.startsWith('AGREE') ? node.arguments.slice(0, 2) : [];
}
