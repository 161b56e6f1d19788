import type { BookCell } from '../../calculate/cells';
import { boxText } from '../../xlsx/address';
import { type Place, writtenRange } from '../places';
import { referenceDifference } from '../reference-difference';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { type Template, expressions } from '../templates';

const LEAST_ROWS = 2;

/** A range that ends before the figures do that it is laid over. */
export const shortRange: Rule = {
  kind: 'short-range', class: 'B',
  looksFor: 'A range that leaves out rows of the figures which it is laid over.',
  *look(subject) {
    const reported = new Set<BookCell>();
    for (const { cell, usual } of subject.deviations) {
      const own = cell && subject.templates.of(cell);
      if (!own || referenceDifference(own.key, usual.key) !== 'shorter range') continue;
      reported.add(cell!);
      yield { cell: cell!, reason: 'its range is shorter than those of the neighbouring cells' };
    }
    const ranges = new Map<Template, ReturnType<typeof rangesOf>>();
    for (const cell of subject.book.formulaCells) {
      const template = subject.templates.of(cell)!;
      let own = ranges.get(template);
      if (!own) ranges.set(template, (own = rangesOf(template)));
      for (const { node, moves } of own) {
        if (reported.has(cell) || (moves && filledDown(subject, cell, template))) continue;
        const place = subject.placeOf(node, cell);
        const missed = place && missedRow(subject, place, cell);
        if (missed) yield { cell, reason: `${boxText(place)} leaves out ${missed.address}, where the same column of figures goes on` };
      }
    }
  },
};

/** Ranges of several rows in a formula, and whether they move along when it is filled down. */
const rangesOf = ({ tree }: Template) => [...expressions(tree)].flatMap((node) => {
  const written = node.type === 'ReferenceIdentifier' && node.kind === 'range' ? writtenRange(node.value) : undefined;
  if (!written || written.to.row - written.from.row + 1 < LEAST_ROWS) return [];
  return [{ node, moves: !written.from.rowFixed || !written.to.rowFixed }];
});

const filledDown = ({ templates }: Subject, { sheet, row, column }: BookCell, template: Template): boolean =>
  [sheet.at(row - 1, column), sheet.at(row + 1, column)].some((each) => each !== undefined && templates.of(each) === template);

/** A figure just past an end of the range that is of one kind with those in it. */
function missedRow(subject: Subject, { sheet, top, left, bottom }: Place, from: BookCell): BookCell | undefined {
  for (const [inside, beyond] of [[bottom, bottom + 1], [top, top - 1]] as const) {
    const last = sheet.at(inside, left);
    const next = sheet.at(beyond, left);
    if (!last || !next || next === from || typeof last.stored !== 'number' || typeof next.stored !== 'number') continue;
    const alike = last.formula === null && next.formula === null ? !last.owner && !next.owner : subject.templates.of(last) !== undefined && subject.templates.of(last) === subject.templates.of(next);
    if (alike && subject.columnOf(last) === subject.columnOf(next)) return next;
  }
  return undefined;
}
