/** How the references of two filled formulas differ, told from their keys. */
export type ReferenceDifference = 'fixed' | 'shorter range' | 'other';

const REFERENCE = /\u0001(\[-?\d+\]|[A-Z]{1,3})\u0001(\[-?\d+\]|\d{1,7})/g;  // eslint-disable-line no-control-regex

interface Reference { readonly column: string; readonly row: string; readonly at: number; readonly end: number }

const referencesOf = (key: string): Reference[] => [...key.matchAll(REFERENCE)].map((match) => ({ column: match[1]!, row: match[2]!, at: match.index, end: match.index + match[0].length }));
const bare = (key: string): string => key.replace(REFERENCE, '\u0001');
const isFixed = (part: string): boolean => !part.startsWith('[');
/** A distance, the number of a row, or that of a column by its letters. */
const valueOf = (part: string): number => (!isFixed(part) ? Number(part.slice(1, -1)) : /^\d/.test(part) ? Number(part) : [...part].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0));

/**
 * What sets one formula apart from the usual one: a reference fixed where the usual one moves, a range that ends earlier, or
 * anything else.
 */
export function referenceDifference(own: string, usual: string): ReferenceDifference {
  if (bare(own) !== bare(usual)) return 'other';
  const [a, b] = [referencesOf(own), referencesOf(usual)];
  const differing = a.map((each, place) => [each, b[place]!, place] as const).filter(([x, y]) => x.column !== y.column || x.row !== y.row);
  if (differing.length === 0) return 'other';
  if (differing.every(([x, y]) => (isFixed(x.row) && !isFixed(y.row)) || (isFixed(x.column) && !isFixed(y.column)))) return 'fixed';
  const isShorter = ([x, y, place]: readonly [Reference, Reference, number]): boolean => {
    const along = x.column === y.column ? 'row' : 'column';
    if ((along === 'column' && x.row !== y.row) || isFixed(x[along]) !== isFixed(y[along])) return false;
    const startsRange = own[x.end] === ':' && a[place + 1] !== undefined;
    const endsRange = own[x.at - 1] === ':';
    return startsRange ? valueOf(x[along]) > valueOf(y[along]) : endsRange && valueOf(x[along]) < valueOf(y[along]);
  };
  return differing.every(isShorter) ? 'shorter range' : 'other';
}
