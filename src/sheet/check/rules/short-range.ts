import type { BookCell } from '../../calculate/cells';
import { boxText } from '../../xlsx/address';
import { MissedRows } from '../missed-rows';
import { writtenRange } from '../places';
import { referenceDifference } from '../reference-difference';
import type { Rule } from '../rule';
import type { Subject } from '../subject';
import { type Template, calledName, expressions } from '../templates';

const LEAST_ROWS = 2;

/** A range that ends before the figures do that it is laid over. */
export const shortRange: Rule = {
  kind: 'short-range', class: 'B',
  looksFor: 'A range that leaves out rows of the figures which it is laid over, or the list of a lookup that moves on with its formula.',
  *look(subject) {
    const reported = new Set<BookCell>();
    for (const { cell, usual } of subject.deviations) {
      const own = cell && subject.templates.of(cell);
      if (!own || referenceDifference(own.key, usual.key) !== 'shorter range') continue;
      reported.add(cell!);
      yield { cell: cell!, reason: 'its range is shorter than those of the neighbouring cells' };
    }
    const missed = new MissedRows(subject);
    const ranges = new Map<Template, ReturnType<typeof rangesOf>>();
    for (const cell of subject.book.formulaCells) {
      const template = subject.templates.of(cell)!;
      let own = ranges.get(template);
      if (!own) ranges.set(template, (own = rangesOf(template)));
      for (const { node, moves, isList, slides } of own) {
        if (reported.has(cell) || (moves && !(isList && slides) && filledDown(subject, cell, template))) continue;
        const place = subject.placeOf(node, cell);
        const row = place && missed.beyond(place, cell, isList);
        if (!row) continue;
        reported.add(cell);
        yield { cell, reason: `${place.sheet === cell.sheet ? '' : `${place.sheet.name}!`}${boxText(place)} leaves out ${row.address}, where the same column of ${typeof row.stored === 'number' ? 'figures' : 'entries'} goes on` };
      }
    }
  },
};

/** Arguments of lookups that are lists, which stay where they are. */
const LISTS: Readonly<Record<string, readonly number[]>> = { VLOOKUP: [1], LOOKUP: [1, 2], MATCH: [1], XMATCH: [1], XLOOKUP: [1, 2], INDEX: [0] };

/** Ranges of several rows in a formula: whether they move along when it is filled down, at both ends, and whether they are lists. */
function rangesOf({ tree }: Template) {
  const nodes = [...expressions(tree)];
  const lists = new Set(nodes.flatMap((node) => (node.type === 'CallExpression' ? (LISTS[calledName(node)] ?? []).map((at) => node.arguments[at]) : [])));
  // The rows of a HLOOKUP are its columns: it takes as many as it asks for.
  const onTheirSide = new Set(nodes.flatMap((node) => (node.type === 'CallExpression' && calledName(node) === 'HLOOKUP' ? [node.arguments[1]] : [])));
  return nodes.flatMap((node) => {
    if (onTheirSide.has(node)) return [];
    const written = node.type === 'ReferenceIdentifier' && node.kind === 'range' ? writtenRange(node.value) : undefined;
    if (!written || written.to.row - written.from.row + 1 < LEAST_ROWS) return [];
    const { from, to } = written;
    return [{ node, moves: !from.rowFixed || !to.rowFixed, slides: !from.rowFixed && !to.rowFixed, isList: lists.has(node) }];
  });
}

const filledDown = ({ templates }: Subject, { sheet, row, column }: BookCell, template: Template): boolean =>
  [sheet.at(row - 1, column), sheet.at(row + 1, column)].some((each) => each !== undefined && templates.of(each) === template);
