import { figure } from '../../../core/figure';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { typedSource } from '../arguments';
import { caseOf } from '../cases';
import { argumentOf } from '../observed-call';
import type { Found, Rule } from '../rule';
import { once } from './mean-edge';

/** Voltage factors of low-voltage networks. Source: IEC 60909-0:2016, table 1 (from memory). */
const LEAST_OF_GREATEST = 1.05;
const GREATEST_OF_LEAST = 0.95;
const SLACK = 1e-9;

/** c of the other case, which overstates the least fault or understates the greatest. */
export const voltageFactor: Rule = {
  kind: 'voltage-factor', class: 'A',
  looksFor: 'A voltage factor c that the case does not allow: below 1.05 for a greatest fault, above 0.95 for a least one.',
  watch(subject) {
    const found: Found[] = [];
    /** Typed cells by the cases that use them: one that serves both cases is right for one of them. */
    const uses = new Map<BookCell, Set<string>>();
    const pending: { found: Found; source: BookCell | undefined }[] = [];
    return {
      call(call) {
        const which = caseOf(call.entry);
        const c = which && argumentOf(call, 'c');
        if (!which || typeof c !== 'number') return;
        const source = typedSource(subject, call, 'c');
        if (source) uses.set(source, (uses.get(source) ?? new Set()).add(which));
        const wrong = which === 'greatest' ? c < LEAST_OF_GREATEST - SLACK : c > GREATEST_OF_LEAST + SLACK;
        if (!wrong) return;
        const reason = which === 'greatest'
          ? `c ${figure(c)} in a greatest fault (${call.entry.member.name}): it takes 1.05, or 1.10 where the voltage may stand 10 % high`
          : `c ${figure(c)} in a least fault (${call.entry.member.name}): it takes 0.95, or 0.90 where the voltage may stand 10 % low`;
        pending.push({ found: { cell: call.cell, reason, clause: clauseOf(call.entry.declaration) }, source });
      },
      found() {
        for (const { found: each, source } of pending) found.push(source && uses.get(source)!.size === 1 ? { ...each, cell: source } : each);
        return once(found);
      },
    };
  },
};
