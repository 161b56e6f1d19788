import { figure } from '../../../core/figure';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { typedSource } from '../arguments';
import { type FaultCase, casesOfFactor, isOfGreatest, isOfLeast } from '../cases';
import { argumentOf } from '../observed-call';
import type { Found, Rule } from '../rule';
import { once } from './mean-edge';

const TAKES: Readonly<Record<FaultCase, string>> = {
  greatest: '1.05, or 1.10 where the voltage may stand 10 % high', least: '0.95, or 0.90 where the voltage may stand 10 % low',
};

/** c of the other case, which overstates the least fault or understates the greatest. */
export const voltageFactor: Rule = {
  kind: 'voltage-factor', class: 'A',
  looksFor: 'A voltage factor c that the case does not allow: below 1.05 for a greatest fault, above 0.95 for a least one, anything between where a network takes both.',
  watch(subject) {
    const found: Found[] = [];
    /** Typed cells by the cases that use them: one that serves both cases is right for one of them. */
    const uses = new Map<BookCell, Set<string>>();
    const pending: { found: Found; source: BookCell | undefined }[] = [];
    return {
      call(call) {
        const cases = casesOfFactor(call);
        const c = cases.length > 0 ? argumentOf(call, 'c') : undefined;
        if (typeof c !== 'number') return;
        const source = typedSource(subject, call, 'c');
        if (source) uses.set(source, (uses.get(source) ?? new Set()).add(cases.join()));
        if (cases.some((each) => (each === 'greatest' ? isOfGreatest(c) : isOfLeast(c)))) return;
        const { name } = call.entry.member;
        const [only] = cases;
        const reason = cases.length > 1 ? `c ${figure(c)} in ${name} is that of no case: ${TAKES.greatest} for the greatest fault, ${TAKES.least} for the least`
          : `c ${figure(c)} in a ${only!} fault (${name}): it takes ${TAKES[only!]}`;
        pending.push({ found: { cell: call.cell, reason, clause: clauseOf(call.entry.declaration) }, source });
      },
      found() {
        for (const { found: each, source } of pending) found.push(source && uses.get(source)!.size === 1 ? { ...each, cell: source } : each);
        return once(found);
      },
    };
  },
};
