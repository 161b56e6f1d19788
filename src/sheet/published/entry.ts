import type { Cell, Matrix } from '../../functions/kernel/cell';

/** A call whose result is an argument of another. `part` takes the real or imaginary part, or the size, of a complex text. */
export interface PublishedCall {
  readonly function: string;
  readonly args: readonly PublishedArgument[];
  readonly part?: string;
}
export type PublishedArgument = Cell | Matrix | PublishedCall;

/**
 * A figure that somebody published, and the call that must give it. `tolerance` is half a unit of the last printed digit,
 * or the difference that the entry states.
 */
export interface Published extends PublishedCall {
  readonly id: string;
  readonly printed: string;
  readonly expected: number | string;
  readonly tolerance?: number;
  readonly source: string;
  readonly edition: string;
  readonly clause?: string;
  readonly seen: 'read' | 'from memory';
  readonly kind: PublishedKind;
  readonly note?: string;
}

/** What an entry is. Only the first two are agreement with a publication; the others say what they are. */
export const PUBLISHED_KINDS = {
  printed: 'figure printed in a publication',
  maths: 'mathematics of a published formula',
  rule: 'rule of a standard',
  constant: 'constant of a table',
  arithmetic: 'arithmetic on printed figures',
  inferred: 'inferred from printed figures',
  identity: 'identity that must hold',
  verdict: 'verdict that a rule leads to',
} as const;
export type PublishedKind = keyof typeof PUBLISHED_KINDS;

export const isAgreement = ({ kind }: Published): boolean => kind === 'printed' || kind === 'maths';
