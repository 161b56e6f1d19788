import { keptForm, wordsOf } from '../../find/words';

/** Finding functions by words, free of any page. Words are made alike as the finder of pane and command line does it. */

const spaced = (words: readonly string[]): string => words.map((word) => ` ${word}`).join('');
const kept = (words: readonly string[]): string[] => words.map(keptForm).filter((word) => word !== null);

/** The words of a text, a blank before each, as they stand and then in the form in which they are alike. */
export function searchable(text: string): string {
  const words = wordsOf(text);
  return `${spaced(words)} ;${spaced(kept(words))}`;
}

/** What a text must hold for one term of a query: the term as it stands, or alike. */
export type Term = readonly string[];

/** The terms of a query; "434.5.2" is one. Idle words and the namespace say nothing. */
export function termsOf(query: string): Term[] {
  return query.split(/\s+/).flatMap((typed) => {
    const words = wordsOf(typed.replace(/^=?jw\./i, ''));
    const alike = kept(words);
    return alike.length === 0 ? [] : [[...new Set([spaced(words), spaced(alike)])]];
  });
}

/** Whether a text, made searchable before, holds every term at the beginning of a word. */
export const holds = (text: string, terms: readonly Term[]): boolean => terms.every((term) => term.some((form) => text.includes(form)));
