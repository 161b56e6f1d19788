import type { Column } from '../columns';
import { writtenRange } from '../places';
import { referenceDifference } from '../reference-difference';
import type { Found, Rule } from '../rule';
import type { Subject } from '../subject';
import { type Template, expressions } from '../templates';

/** Shortest block in which one fixed row is more than a coincidence. */
const LEAST_ROWS = 3;

/** A reference that stays where the rows move on. */
export const fixedReference: Rule = {
  kind: 'fixed-reference', class: 'B',
  looksFor: 'A reference fixed with $ where the formula is filled down beside the column that it reads.',
  *look(subject) {
    for (const { cell, usual } of subject.deviations) {
      const own = cell && subject.templates.of(cell);
      if (own && referenceDifference(own.key, usual.key) === 'fixed') yield { cell: cell!, reason: 'a reference is fixed here that moves along in the neighbouring cells' };
    }
    for (const sheet of subject.book.sheets) for (const column of subject.columns(sheet)) yield* wholeColumn(subject, column);
  },
};

/** Every cell of a filled column reads the same row of a column beside it. */
function* wholeColumn(subject: Subject, column: Column): Generator<Found> {
  let from = 0;
  const { cells } = column;
  for (let to = 1; to <= cells.length; to++) {
    const template = subject.templates.of(cells[from]!);
    if (to < cells.length && template && subject.templates.of(cells[to]!) === template) continue;
    if (template && to - from >= LEAST_ROWS) {
      for (const stuck of stuckReferences(template, column, cells[from]!.row, cells[to - 1]!.row)) {
        for (let at = from; at < to; at++) {
          if (cells[at]!.row !== stuck.row) yield { cell: cells[at]!, reason: `every row of this column reads ${stuck.text}, the row of which does not move: its column goes on beside it` };
        }
      }
    }
    from = to;
  }
}

function* stuckReferences({ tree, first }: Template, own: Column, top: number, bottom: number): Generator<{ text: string; row: number }> {
  const written = [...expressions(tree)].flatMap((node) => (node.type === 'ReferenceIdentifier' && node.kind === 'range' ? [{ text: node.value, range: writtenRange(node.value) }] : []));
  for (const { text, range } of written) {
    if (!range || range.from !== range.to || !range.from.rowFixed || (range.sheet !== undefined && range.sheet !== first.sheet.name)) continue;
    const { row, column } = range.from;
    if (row < top || row > bottom || column === own.column) continue;
    // Held against its own first row on purpose: =B9/$B$8.
    if (written.some(({ range: other }) => other && !other.from.rowFixed && other.from.column === column)) continue;
    if (goesOnBeside(own, column, top, bottom)) yield { text, row };
  }
}

/** Whether the column that is read holds a value in every row of the block. */
function goesOnBeside({ sheet }: Column, column: number, top: number, bottom: number): boolean {
  for (let row = top; row <= bottom; row++) {
    const cell = sheet.at(row, column);
    if (!cell || typeof cell.stored === 'string' && cell.formula === null) return false;
  }
  return true;
}
