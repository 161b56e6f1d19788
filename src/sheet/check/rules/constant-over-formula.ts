import { addressOf } from '../../xlsx/address';
import { typedFormula } from '../../explain/calls-in-formula';
import type { Rule } from '../rule';
import { isVerdict } from './verdict-by-hand';

/** A constant, or nothing, where a formula was filled past. */
export const constantOverFormula: Rule = {
  kind: 'constant-over-formula', class: 'B',
  looksFor: 'A constant or a blank in a table column or a filled block whose other cells hold a formula.',
  *look(subject) {
    for (const { cell, row, column, among, usual } of subject.deviations) {
      if ((cell && (cell.formula !== null || cell.owner)) || (cell && isVerdict(cell.stored))) continue;
      const where = among.heading === '' ? 'its neighbours hold' : `the other cells of "${among.heading}" hold`;
      const reason = `${cell ? 'typed over a formula' : 'blank'}: ${where} =${typedFormula(usual.first.formula!)}`;
      yield cell ? { cell, reason, clause: '' } : { sheet: among.sheet.name, address: addressOf(row, column), reason };
    }
  },
};
