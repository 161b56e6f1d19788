import type { Matrix } from '../../../functions/kernel/cell';
import { raise } from '../errors';
import { type Value, cellOf, cellsOf, toText, toTruth, toWhole } from '../values';
import { type FunctionTable, whole } from './definition';
import { padding } from './shape';

interface Found {
  at: number;
  length: number;
}

/** Every place where one of the delimiters stands, from the start. */
function places(text: string, delimiters: string[], ignoreCase: boolean): Found[] {
  const fold = (value: string): string => (ignoreCase ? value.toLowerCase() : value);
  const [searched, wanted] = [fold(text), delimiters.map(fold).sort((a, b) => b.length - a.length)];
  const result: Found[] = [];
  for (let at = 0; at < searched.length;) {
    const hit = wanted.find((delimiter) => delimiter !== '' && searched.startsWith(delimiter, at));
    if (hit !== undefined) result.push({ at, length: hit.length });
    at += hit?.length ?? 1;
  }
  return result;
}

const texts = (value: Value): string[] => cellsOf(value).map(toText);
const optional = (value: Value, fallback: number): number => (value === undefined ? fallback : toWhole(cellOf(value)));

/** The text before or after the n-th delimiter; a negative n counts from the end. */
function part([text, delimiter, instance, matchMode, matchEnd, otherwise]: Value[], take: (text: string, found: Found) => string): Value {
  const whole = toText(cellOf(text));
  const number = optional(instance, 1);
  if (number === 0) return raise('#VALUE!', 'the instance cannot be 0');
  const found = places(whole, texts(delimiter), optional(matchMode, 0) === 1);
  // The end of the text may count as a delimiter: the far end, seen from where the counting starts.
  if (optional(matchEnd, 0) === 1) {
    if (number > 0) found.push({ at: whole.length, length: 0 });
    else found.unshift({ at: 0, length: 0 });
  }
  const hit = number > 0 ? found[number - 1] : found[found.length + number];
  if (hit) return take(whole, hit);
  return otherwise === undefined ? raise('#N/A', `the delimiter does not occur ${Math.abs(number)} times`) : otherwise;
}

function pieces(text: string, delimiters: string[] | undefined, ignoreCase: boolean, skipEmpty: boolean): string[] {
  const result: string[] = [];
  let from = 0;
  for (const { at, length } of delimiters ? places(text, delimiters, ignoreCase) : []) {
    result.push(text.slice(from, at));
    from = at + length;
  }
  result.push(text.slice(from));
  return skipEmpty ? result.filter((piece) => piece !== '') : result;
}

function split([text, across, down, skip, matchMode, pad]: Value[]): Matrix {
  const [ignoreCase, skipEmpty] = [optional(matchMode, 0) === 1, skip !== undefined && toTruth(cellOf(skip))];
  const delimiters = (value: Value): string[] | undefined => (value === undefined ? undefined : texts(value));
  const rows = pieces(toText(cellOf(text)), delimiters(down), ignoreCase, skipEmpty)
    .map((row) => pieces(row, delimiters(across), ignoreCase, skipEmpty));
  const width = Math.max(0, ...rows.map((row) => row.length));
  if (width === 0) return raise('#CALC!', 'the array is empty');
  return rows.map((row) => Array.from({ length: width }, (_, column) => row[column] ?? padding(pad)));
}

const traits = { emptyIsDefault: true, arrays: true } as const;

export const textSplitFunctions: FunctionTable = {
  TEXTBEFORE: whole([2, 6], (args) => part(args, (text, { at }) => text.slice(0, at)), { ...traits, single: [0, 2, 3, 4, 5] }),
  TEXTAFTER: whole([2, 6], (args) => part(args, (text, { at, length }) => text.slice(at + length)), { ...traits, single: [0, 2, 3, 4, 5] }),
  TEXTSPLIT: whole([2, 6], split, { ...traits, single: [0] }),
};
