import type { Entry } from '../../functions/kernel/declaration';

/** Whether a function is for the greatest or for the least fault, by the end of its name. */
export function caseOf({ declaration, member }: Entry): 'greatest' | 'least' | undefined {
  if (declaration.family !== 'fault') return undefined;
  return member.name.endsWith('_MAX') ? 'greatest' : member.name.endsWith('_MIN') ? 'least' : undefined;
}
