import { addressOf } from '../../xlsx/address';
import { typedFormula } from '../../explain/calls-in-formula';
import type { BookCell } from '../../calculate/cells';
import type { Rule } from '../rule';
import { isVerdict } from './verdict-by-hand';

/** A constant, or nothing, where a formula was filled past. */
export const constantOverFormula: Rule = {
  kind: 'constant-over-formula', class: 'B',
  looksFor: 'A constant or a blank in a table column or a filled block whose other cells hold a formula. C where a note on the cell tells of it, or a mark such as – or n/a stands there.',
  *look(subject) {
    for (const { cell, row, column, among, usual, across } of subject.deviations) {
      if ((cell && (cell.formula !== null || cell.owner)) || (cell && isVerdict(cell.stored))) continue;
      const where = across ? 'the cells beside it hold' : among.heading === '' ? 'its neighbours hold' : `the other cells of "${among.heading}" hold`;
      const reason = `${cell ? 'typed over a formula' : 'blank'}: ${where} =${typedFormula(usual.first.formula!)}`;
      const note = cell && subject.noteOf(cell);
      if (cell && isMark(cell)) yield { cell, class: 'C', reason, clause: '' };
      else if (note) yield { cell, class: 'C', reason: `${reason}; a note on the cell says ${shortened(note)}`, clause: '' };
      else yield cell ? { cell, reason, clause: '' } : { sheet: among.sheet.name, address: addressOf(row, column), reason };
    }
  },
};

/** Says that there is nothing to work out, as in the row of a spare way. */
const isMark = ({ stored }: BookCell): boolean => typeof stored === 'string' && /^\s*(?:[-–—]+|n\.?\/?a\.?)\s*$/i.test(stored);

const LONGEST_NOTE = 120;

const shortened = (note: string): string => {
  const line = note.replace(/\s+/g, ' ');
  return `"${line.length > LONGEST_NOTE ? `${line.slice(0, LONGEST_NOTE - 1)}…` : line}"`;
};
