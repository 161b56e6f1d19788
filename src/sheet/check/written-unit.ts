import { type Unit, unitOf } from '../../core/units';

/** Marks of a column without a unit. */
const UNITLESS = /^[-–—]$/;
export const isUnitless = (text: string): boolean => UNITLESS.test(text);
const IN_BRACKETS = /^[([]\s*([^()[\]]+?)\s*[)\]]$/;
/** What is said of a current or voltage behind its unit: "kA peak", "kA rms", "kA (r.m.s.)", "V d.c." */
const QUALIFIER = /[\s(]+(?:peak|rms|r\.m\.s\.?|eff\.?|ac|dc|a\.c\.?|d\.c\.?)\)?$/i;
/** Words that name other things as well: phase A, line N, the least value. */
const AMBIGUOUS = /^(?:\p{L}|min|in|-|–|—)$/u;
/** Letters that stand for neutral, classes and materials where a stroke or "in" comes before them. */
const RARELY_A_UNIT = /^(?:N|C|K)$/;

/** What a unit text says without its brackets: `[kA]` and `(kA)` are kA. */
const bare = (text: string): string => IN_BRACKETS.exec(text.trim())?.[1] ?? text.trim();

/** The unit that functions read which a text names: "kA rms" is a kA. */
export const unitNamed = (text: string): Unit | undefined => unitOf(bare(text).replace(QUALIFIER, ''));

const isUnit = (text: string): boolean => isUnitless(text) || unitNamed(text) !== undefined;

/** The unit that a cell consists of, without brackets; '' where it is something else. */
export const unitText = (text: string): string => (isUnit(bare(text)) ? bare(text) : '');

/** Whether a text that consists of a unit may as well mean something else, where it does not stand among units. */
export const isAmbiguous = (text: string): boolean => AMBIGUOUS.test(bare(text));

/** The unit that stands in a heading: "length, m", "length (m)", "length [m]", "length / m", "length in m"; '' where there is none. */
export function unitInHeading(heading: string): string {
  const bracketed = [...heading.matchAll(/[([]([^()[\]]+)[)\]]/g)].map((match) => match[1]!.trim()).filter(isUnit).at(-1);
  if (bracketed !== undefined) return bracketed;
  const lastLine = /\n\s*(\S.*)$/.exec(heading)?.[1] ?? '';
  const listed = /,\s*([^,\s]+(?:\s(?:peak|rms))?)\s*$/.exec(heading)?.[1] ?? '';
  const behind = /(?:\s\/\s*|\/\s+|\sin\s+)([^/\s]+(?:\s(?:peak|rms))?)\s*$/.exec(heading)?.[1] ?? '';
  return [lastLine, listed, RARELY_A_UNIT.test(behind) ? '' : behind].find((each) => each !== '' && isUnit(each)) ?? '';
}
