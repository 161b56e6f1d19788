/** How words are made alike before they are looked for: "I²t", "I2t" and "I^2t" are one word, as are "cables" and "cable". */

/** Words of questions that say nothing of the matter. */
const IDLE = new Set('a an and any are at be by can do does for from how i if in into is it its many me much my of on or so that the their then there they this to was what when which who will with would you your'.split(' '));

/** One word for what the trade calls by several. */
const ALIKE: ReadonlyMap<string, string> = new Map(Object.entries({
  ground: 'earth', grounding: 'earth', earthing: 'earth', meter: 'metre', aluminum: 'aluminium', amp: 'ampere', ampere: 'ampere', coordination: 'selectivity',
  discrimination: 'selectivity', discriminate: 'selectivity', selective: 'selectivity', sc: 'short', voltage: 'volt', survive: 'stand', withstand: 'stand', withstands: 'stand',
}));

const SPLIT = /[\s\p{P}\p{S}]+/u;

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').replace(/\^(?=\d)/g, '').toLowerCase();

const singular = (word: string): string => {
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  return word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;
};

export const wordsOf = (text: string): string[] => plain(text).split(SPLIT).filter((word) => word !== '');

/** The form under which a word is kept and looked for; null where it is idle. */
export function keptForm(word: string): string | null {
  if (IDLE.has(word)) return null;
  const one = singular(word);
  return ALIKE.get(one) ?? ALIKE.get(word) ?? one;
}
