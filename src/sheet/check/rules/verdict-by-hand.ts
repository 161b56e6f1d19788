import type { AstExpression } from '@borgar/fx/xlsx';
import type { Cell } from '../../../functions/kernel/cell';
import type { BookCell } from '../../calculate/cells';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { calledName, expressions } from '../templates';

export const isVerdict = (value: Cell): boolean => typeof value === 'string' && /^\s*(pass|fail|not shown)\s*$/i.test(value);

/** A verdict that nothing works out. */
export const verdictByHand: Rule = {
  kind: 'verdict-by-hand', class: 'A',
  looksFor: 'A verdict (pass, FAIL, not shown) typed by hand in a row or column of calculations.',
  *look(subject) {
    for (const sheet of subject.book.sheets) {
      if (sheet.formulas.length === 0) continue;
      for (const cell of sheet.all) {
        if (cell.formula !== null || cell.owner || !isVerdict(cell.stored) || !amongCalculations(subject, cell) || isHeldAgainst(subject, cell) || isCountedBy(subject, cell)) continue;
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

/** Functions that count or look up rows by a word, and the place of the first word among their arguments. */
const BY_A_WORD: Readonly<Record<string, number>> = { COUNTIF: 1, COUNTIFS: 1, SUMIF: 1, SUMIFS: 2, AVERAGEIF: 1, AVERAGEIFS: 2, MATCH: 0, XMATCH: 0, VLOOKUP: 0, XLOOKUP: 0 };

/** A word that rows are counted by, as in a list of how many pass and how many FAIL. */
function isCountedBy(subject: Subject, cell: BookCell): boolean {
  return subject.record(cell).some((other) => other.formula !== null && [...expressions(subject.templates.of(other)?.tree)].some((node) => {
    const first = BY_A_WORD[calledName(node)];
    return first !== undefined && node.type === 'CallExpression' && node.arguments.slice(first).some((argument) => subject.cellAt(argument, other)?.cell === cell);
  }));
}

/** The two things that an expression compares: sides of = and <>, or what EXACT, AGREE and its like are asked about. */
function comparedBy(subject: Subject, node: AstExpression): readonly (AstExpression | null)[] {
  if (node.type === 'BinaryExpression') return node.operator === '=' || node.operator === '<>' ? node.arguments : [];
  return node.type === 'CallExpression' && (calledName(node) === 'EXACT' || subject.entryOf(node)?.member.name.startsWith('AGREE')) ? node.arguments.slice(0, 2) : [];
}
