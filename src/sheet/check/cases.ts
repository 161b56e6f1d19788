import type { Entry } from '../../functions/kernel/declaration';
import { type ObservedCall, argumentOf } from './observed-call';

export type FaultCase = 'greatest' | 'least';

/** Voltage factors of low-voltage networks. Source: IEC 60909-0:2016, table 1 (from memory). */
export const LEAST_OF_GREATEST = 1.05;
export const GREATEST_OF_LEAST = 0.95;
const SLACK = 1e-9;

export const isOfGreatest = (c: number): boolean => c >= LEAST_OF_GREATEST - SLACK;
export const isOfLeast = (c: number): boolean => c <= GREATEST_OF_LEAST + SLACK;

/** Whether a function is for the greatest or for the least fault, by the end of its name. */
export function caseOf({ declaration, member }: Entry): FaultCase | undefined {
  if (declaration.family !== 'fault') return undefined;
  return member.name.endsWith('_MAX') ? 'greatest' : member.name.endsWith('_MIN') ? 'least' : undefined;
}

/** Cases that the c of a function may belong to, by what it takes; none where c is another thing, as that of a declared level. */
export function casesOfFactor(call: ObservedCall): readonly FaultCase[] {
  const { declaration, member } = call.entry;
  const bounds = member.parameters['c']?.bounds;
  // Without its correction a transformer or generator does not use c.
  if (!bounds || call.outcome.args?.['corrected'] === false) return [];
  if ((bounds.atLeast ?? 0) >= 1) return ['greatest'];
  if ((bounds.upTo ?? Infinity) <= 1) return ['least'];
  return declaration.family === 'network' ? ['greatest', 'least'] : [];
}

/** The case that a call computes: by its name, or a network by the c that it is given. */
export function caseComputed(call: ObservedCall): FaultCase | undefined {
  if (call.entry.declaration.family !== 'network') return caseOf(call.entry);
  const c = argumentOf(call, 'c');
  return typeof c !== 'number' ? undefined : isOfLeast(c) ? 'least' : isOfGreatest(c) ? 'greatest' : undefined;
}
