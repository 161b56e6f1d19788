/** Text to take the place of a stretch of another; an insertion where both ends are one. */
export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** The text with all splices made. Those at one place stay in the order given; none may overlap. */
export function spliced(text: string, splices: readonly Splice[]): string {
  if (splices.length === 0) return text;
  const pieces: string[] = [];
  let at = 0;
  for (const splice of [...splices].sort((a, b) => a.from - b.from || a.to - b.to)) {
    if (splice.from < at) throw new RangeError('two changes of a part overlap');
    pieces.push(text.slice(at, splice.from), splice.text);
    at = splice.to;
  }
  pieces.push(text.slice(at));
  return pieces.join('');
}
