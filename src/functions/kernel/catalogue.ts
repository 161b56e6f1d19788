import type { ArgumentRecord, Declaration, Entry, Member } from './declaration';

/** All functions by name. */
export interface Catalogue {
  readonly declarations: readonly Declaration[];
  readonly entries: readonly Entry[];
  /** Finds a function by its name, with or without `JW.` or the prefix of workbook files, in any case. */
  find(name: string): Entry | undefined;
}

export const NAMESPACE = 'JW';
const PREFIX = /^(?:_XLDUDF_JW_|JW\.)/;

/** Whether a name in a formula stands in our namespace, typed (`JW.NAME`) or as workbook files hold it. */
export const isOurName = (name: string): boolean => PREFIX.test(name.trim().toUpperCase());

/** The bare name of one of our functions, however it is written. */
export const bareName = (name: string): string => name.trim().toUpperCase().replace(PREFIX, '');

/** Records made beforehand, each a literal, by the function's name. */
export type Records = Readonly<Record<string, ArgumentRecord>>;

/** One made beforehand is taken only if it has the very parameters of today's declaration, in their order. */
function withRecord(member: Member, made: ArgumentRecord | undefined): Member {
  const named = Object.entries(made?.({ read: (place) => member.order[place]?.[0] }) ?? {});
  const fits = named.length === member.order.length && named.every(([name, read], place) => name === read && name === member.order[place]![0]);
  return made && fits ? { ...member, record: made } : member;
}

export function catalogueOf(families: readonly (readonly Declaration[])[], records: Records = {}): Catalogue {
  const declarations = families.flat();
  const entries = declarations.flatMap((declaration) => declaration.members.map((member) => ({ declaration, member: withRecord(member, records[member.name]) })));
  const byName = new Map(entries.map((entry) => [entry.member.name, entry]));
  if (byName.size !== entries.length) throw new Error('two functions have one name');
  return { declarations, entries, find: (name) => byName.get(bareName(name)) };
}
