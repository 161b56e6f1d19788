import type { BookCell, BookSheet } from '../calculate/cells';
import type { Subject } from './subject';

/** Whether a formula is made of cells of its own column above it: a sum, a mean, or sums of sums. */
function isTotal(subject: Subject, cell: BookCell): boolean {
  const template = subject.templates.of(cell);
  if (!template) return false;
  const { first } = template;
  const ranges = subject.rangesOf(template);
  const own = ranges.every(({ sheet, from, to }) => (sheet === undefined || sheet === first.sheet.name) && from.column === first.column && to.column === first.column && from.row !== first.row);
  const rows = ranges.reduce((sum, { from, to }) => sum + to.row - from.row + 1, 0);
  // A balance reads one cell above, and another column.
  return own && rows > 1 && ranges.some(({ to }) => to.row < first.row);
}

/** Whether a row sums up those above it. What stands beside a sum in such a row follows rules of its own. */
export function isRowOfTotals(subject: Subject, sheet: BookSheet, row: number): boolean {
  let found = false;
  sheet.each(row, 0, row, sheet.lastColumn, (cell) => { found ||= cell.formula !== null && isTotal(subject, cell); });
  return found;
}
