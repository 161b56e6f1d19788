import { clauseOf } from '../../../functions/kernel/explain';
import { argumentOf } from '../observed-call';
import type { Found, Rule } from '../rule';

/** A mean curve where the record wants the edge that decides. */
export const meanEdge: Rule = {
  kind: 'mean-edge', class: 'A',
  looksFor: 'The mean edge of a curve in a record: the device at hand may be slower, or faster, than the mean.',
  watch() {
    const found: Found[] = [];
    return {
      call(call) {
        if (!call.entry.member.parameters['edge']) return;
        const edge = argumentOf(call, 'edge');
        if (typeof edge !== 'string' || edge.trim().toLowerCase() !== 'mean') return;
        found.push({ cell: call.cell, reason: `${call.entry.member.name} reads the mean edge: a record takes slow or fast, whichever decides`, clause: clauseOf(call.entry.declaration) });
      },
      found: () => once(found),
    };
  },
};

/** Each cell once, though a formula may call a function several times. */
export function once(found: readonly Found[]): Found[] {
  const seen = new Set<unknown>();
  return found.filter(({ cell }) => !seen.has(cell) && seen.add(cell));
}
