import { type Compared, compare } from './compare';
import { type Published, isAgreement } from './entry';

/** All published figures beside ours, with what may be counted. */
export interface Tally {
  readonly families: readonly { readonly family: string; readonly compared: readonly Compared[] }[];
  /** Figures that a publication prints, or the mathematics of a published formula. */
  readonly agreement: Count;
  /** Of these, how many were read in the publication itself; the others are from memory of it. */
  readonly read: Count;
  readonly fromMemory: Count;
  /** Everything else: rules, constants, inferred figures; they count as no agreement. */
  readonly weaker: Count;
  readonly differing: readonly Compared[];
}
export interface Count {
  readonly agree: number;
  readonly of: number;
}

const count = (compared: readonly Compared[]): Count => ({ agree: compared.filter(({ agrees }) => agrees).length, of: compared.length });

export function tally(published: Readonly<Record<string, readonly Published[]>>): Tally {
  const families = Object.entries(published).map(([family, entries]) => ({ family, compared: entries.map(compare) }));
  const all = families.flatMap(({ compared }) => compared);
  const strong = all.filter(({ entry }) => isAgreement(entry));
  return {
    families,
    agreement: count(strong),
    read: count(strong.filter(({ entry }) => entry.seen === 'read')),
    fromMemory: count(strong.filter(({ entry }) => entry.seen === 'from memory')),
    weaker: count(all.filter(({ entry }) => !isAgreement(entry))),
    differing: all.filter(({ agrees }) => !agrees),
  };
}
