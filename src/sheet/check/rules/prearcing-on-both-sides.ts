import type { AstExpression } from '@borgar/fx/xlsx';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { argumentNode, handedOn, sampleCell } from '../arguments';
import { argumentOf } from '../observed-call';
import type { Found, Rule } from '../rule';
import type { Subject } from '../subject';
import { expressions } from '../templates';
import { once } from './mean-edge';

const PREARCING = /pre-?\s?arc|melting/i;
const COMPARES = new Set(['<', '<=', '>', '>=']);
const MOST_STEPS = 8;

/** Pre-arcing against pre-arcing: the minor link must have cleared, not only begun to melt. */
export const prearcingOnBothSides: Rule = {
  kind: 'prearcing-on-both-sides', class: 'A',
  looksFor: 'A pre-arcing integral taken for the device nearer the fault, which must be held with its total.',
  watch(subject) {
    const found: Found[] = [];
    return {
      call(call) {
        if (!call.entry.member.name.startsWith('SELECT_JOULE_')) return;
        const clause = clauseOf(call.entry.declaration);
        const where = subject.ownCalls(call.cell).filter((node) => subject.entryOf(node) === call.entry).map((node) => origin(subject, argumentNode(subject, node, 'total_minor_A2s'), call.cell)).find((each) => each && PREARCING.test(each.heading));
        if (where) found.push({ cell: where.cell, clause, reason: `the total of the device nearer the fault is taken from "${where.heading}": pre-arcing is held against pre-arcing` });
        else if (typeof argumentOf(call, 'total_minor_A2s') === 'number') {
          const caution = call.outcome.cautions.find((text) => /pre-arcing against pre-arcing/.test(text));
          if (caution) found.push({ cell: call.cell, clause, reason: caution });
        }
      },
      found: () => once([...found, ...comparisons(subject)]),
    };
  },
};

/** Where a value that is handed on from cell to cell was read: heading of its column, and the first formula that reads from there. */
function origin(subject: Subject, node: AstExpression | null | undefined, cell: BookCell): { heading: string; cell: BookCell } | undefined {
  let here = cell;
  let next = node;
  for (let step = 0; step < MOST_STEPS; step++) {
    const source = sampleCell(subject, next, here);
    if (!source) return undefined;
    const heading = subject.columnOf(source)?.heading ?? '';
    const looksUp = handedOn(next)?.looksUp ?? false;
    if (source.formula === null || looksUp || PREARCING.test(heading)) return { heading, cell: here };
    here = source;
    next = subject.templates.of(source)?.tree;
  }
  return undefined;
}

/** Two pre-arcing integrals that a formula of the sheet itself compares. */
function* comparisons(subject: Subject): Generator<Found> {
  const entry = subject.catalogue.find('SELECT_JOULE_TEST');
  const judged = new Map<string, boolean>();
  for (const cell of subject.book.formulaCells) {
    if (!/[<>]/.test(cell.formula)) continue;
    const key = `${subject.templates.of(cell)!.key}\n${subject.columnOf(cell)?.heading ?? ''}`;
    let both = judged.get(key);
    if (both === undefined) judged.set(key, (both = [...expressions(subject.templates.of(cell)!.tree)].some((node) => comparesPrearcing(subject, node, cell))));
    if (both) yield { cell, clause: entry ? clauseOf(entry.declaration) : '', reason: 'a pre-arcing integral is held against a pre-arcing integral: take the total of the device nearer the fault' };
  }
}

function comparesPrearcing(subject: Subject, node: AstExpression, cell: BookCell): boolean {
  if (node.type !== 'BinaryExpression' || !COMPARES.has(node.operator)) return false;
  const sides = node.arguments.map((side) => origin(subject, side, cell)?.heading ?? '');
  return sides.length === 2 && sides.every((heading) => PREARCING.test(heading));
}
