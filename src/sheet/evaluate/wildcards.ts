/** One character of a pattern in lower case; undefined stands for `?`. */
type Piece = (string | undefined)[];

/**
 * A text with `*`, `?` and `~` escapes, case left aside. Matched piece by piece between the stars and not by a regular
 * expression, so that no pattern can take more than length × length steps.
 */
export class Wildcard {
  private readonly pieces: Piece[] = [[]];

  constructor(pattern: string) {
    for (let index = 0; index < pattern.length; index++) {
      const letter = pattern[index]!;
      const next = pattern[index + 1];
      const last = this.pieces[this.pieces.length - 1]!;
      if (letter === '~' && next !== undefined && '*?~'.includes(next)) {
        last.push(next);
        index++;
      } else if (letter === '*') this.pieces.push([]);
      else last.push(letter === '?' ? undefined : letter.toLowerCase());
    }
  }

  /** Whether the whole text matches. */
  matches(text: string): boolean {
    const letters = lowered(text);
    const [first, ...rest] = this.pieces as [Piece, ...Piece[]];
    const last = rest.pop();
    if (!last) return letters.length === first.length && fits(letters, 0, first);
    if (!fits(letters, 0, first)) return false;
    const end = after(letters, first.length, rest);
    return end >= 0 && end <= letters.length - last.length && fits(letters, letters.length - last.length, last);
  }

  /** Where the pattern first occurs at or after a position, -1 if nowhere. */
  find(text: string, from: number): number {
    const letters = lowered(text);
    const [first, ...rest] = this.pieces as [Piece, ...Piece[]];
    const start = next(letters, from, first);
    return start >= 0 && after(letters, start + first.length, rest) >= 0 ? start : -1;
  }
}

/** Letter by letter, so that positions stay those of the text. */
const lowered = (text: string): string[] => Array.from({ length: text.length }, (_, index) => text[index]!.toLowerCase());

function fits(letters: string[], at: number, piece: Piece): boolean {
  if (at + piece.length > letters.length) return false;
  return piece.every((letter, index) => letter === undefined || letter === letters[at + index]);
}

function next(letters: string[], from: number, piece: Piece): number {
  for (let at = from; at + piece.length <= letters.length; at++) if (fits(letters, at, piece)) return at;
  return -1;
}

/** End of the pieces found one after the other from a position, -1 where one is missing. */
function after(letters: string[], from: number, pieces: Piece[]): number {
  let end = from;
  for (const piece of pieces) {
    const start = next(letters, end, piece);
    if (start < 0) return -1;
    end = start + piece.length;
  }
  return end;
}

export const hasWildcards = (text: string): boolean => /[*?~]/.test(text);
