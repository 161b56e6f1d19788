import type { Kind, KindType } from '../../functions/kernel/kind';
import { wordsShown } from '../../functions/kernel/kinds';
import { boundsWords } from '../../functions/kernel/number';

/** What help says of one argument, in words: the same words in Excel, the handbook and the pages. */
export interface ArgumentFacts {
  /** What it is. */
  about: string;
  /** Limits with the unit, or the words it takes. */
  takes: string;
  /** What happens where it is left out; empty where it is needed. */
  leftOut: string;
}

const IMPEDANCE = 'complex text in mΩ such as 1.05+5.68i, a number (R), text with a unit';

const TAKES: Partial<Record<KindType, string>> = {
  flag: 'TRUE or FALSE (yes, no)',
  text: 'text',
  impedance: `${IMPEDANCE}, or two cells R, X`,
  impedances: `one impedance a cell: ${IMPEDANCE}`,
  points: 'a range of two columns, first column rising',
  table: 'a range',
  column: 'a range of one column or row',
  cell: 'one cell',
  raw: 'as that function takes them',
};

function takesOf(kind: Kind<unknown>): string {
  if (kind.type === 'word' && kind.words) return wordsShown(kind.words);
  if (!kind.bounds) return TAKES[kind.type] ?? '';
  const whole = kind.type === 'count' ? 'whole number, ' : '';
  const word = kind.words ? `, or ${Object.keys(kind.words).join(', ')}` : '';
  return `${whole}${boundsWords(kind.bounds, kind.unit)}${word}`;
}

function leftOutOf(kind: Kind<unknown>): string {
  if (kind.fallbackWords !== undefined) return kind.fallbackWords;
  if (Array.isArray(kind.fallback)) return 'nothing';
  if (kind.fallback !== undefined) return kind.show(kind.fallback);
  if (kind.datum) return 'no verdict';
  return kind.optional ? 'not used' : '';
}

export const argumentFacts = (kind: Kind<unknown>): ArgumentFacts => ({ about: kind.about, takes: takesOf(kind), leftOut: leftOutOf(kind) });

/** The facts in one line, as argument help shows them. */
export function argumentLine(kind: Kind<unknown>): string {
  const { about, takes, leftOut } = argumentFacts(kind);
  return [about, takes, leftOut === '' ? '' : `left out: ${leftOut}`].filter((part) => part !== '').join('; ');
}
