import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { CellError } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { checkWorkbook } from '../../src/sheet/check';
import { customFunctions } from '../../src/sheet/custom-functions';
import { recompute } from '../../src/sheet/recompute';
import { WorkbookRefusal } from '../../src/sheet/xlsx/refusal';
import { type Random, pick, randomFrom } from './hostile';

/** Real workbooks with something of them spoiled: they are refused in words, or checked and recomputed soundly. */

const place = (random: Random, length: number): number => Math.floor(random() * Math.max(1, length));

const FORMULAS = ['', '1+', '#REF!', 'A1', 'A:A', '1:1', 'A1:XFD1048576', 'SUM(A1:XFD1048576)', 'INDIRECT("A"&1E9)', 'OFFSET(A1,-1,-1)', '_xldudf_JW_NO_SUCH(1)', '_xldudf_JW_CABLE_K(A:A,B:B)', '[1]S!A1', "'x!A1", 'LET(a,a,a)', 'LAMBDA(x,x(x))(LAMBDA(x,x(x)))', 'REPT("x",32767)&REPT("x",32767)', '1/0', '-2^1E9', 'Boards[[#This Row],[no such]]', '{1,2;3}', '"', 'SEQUENCE(1E6,1E6)', 'XLOOKUP(1,A:A,B:Z)', 'A1#', '@A1:A9', 'TODAY()', 'FILTER(A1:A9,A1:A9>1E99)'];
const VALUES = ['', '1e999', '-1e-320', 'NaN', '0x1F', '99999999999999999999', 'TRUE', '&#10;', 'x'.repeat(40_000), '\u202e', '1+2i', '-5', '0'];

type Spoil = (text: string, random: Random) => string;

const cutOut: Spoil = (text, random) => {
  const [from, length] = [place(random, text.length), 1 + place(random, 40)];
  return text.slice(0, from) + text.slice(from + length);
};
const twice: Spoil = (text, random) => {
  const [from, length] = [place(random, text.length), 1 + place(random, 400)];
  return text.slice(0, from + length) + text.slice(from);
};
/** One tag, or an element with what is in it, left out, doubled or put elsewhere. */
const tags: Spoil = (text, random) => {
  const all = [...text.matchAll(/<[^<>]+>/g)];
  if (all.length === 0) return text;
  const { index, 0: tag } = pick(random, all);
  const rest = text.slice(0, index) + text.slice(index + tag.length);
  const to = place(random, rest.length);
  return pick(random, [rest, text.slice(0, index) + tag + text.slice(index), rest.slice(0, to) + tag + rest.slice(to)]);
};
const attributes: Spoil = (text, random) => {
  const all = [...text.matchAll(/ [\w:]+="[^"]*"/g)];
  if (all.length === 0) return text;
  const { index, 0: attribute } = pick(random, all);
  const name = attribute.slice(0, attribute.indexOf('='));
  const value = pick(random, ['', '0', '-1', '4294967296', 'A1', 'XFD1048576', 'A0', 'rId1', '../../x', '&lt;', 'true', 'x'.repeat(300), pick(random, all)[0].replace(/^.*?"|"$/g, '')]);
  return text.slice(0, index) + pick(random, ['', `${name}="${value}"`, attribute + attribute]) + text.slice(index + attribute.length);
};
const contents = (element: string, list: readonly string[]): Spoil => (text, random) => {
  const all = [...text.matchAll(new RegExp(`<${element}( [^>]*)?>[^<]*</${element}>`, 'g'))];
  if (all.length === 0) return text;
  const { index, 0: whole, 1: own = '' } = pick(random, all);
  const written = pick(random, list).replace(/&(?!#)/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
  return text.slice(0, index) + `<${element}${own}>${written}</${element}>` + text.slice(index + whole.length);
};
const SPOILS: readonly Spoil[] = [cutOut, twice, tags, tags, attributes, attributes, contents('f', FORMULAS), contents('f', FORMULAS), contents('v', VALUES), contents('calculatedColumnFormula', FORMULAS), contents('definedName', FORMULAS)];

/** Bytes of the zip itself turned over, cut off or doubled. */
function spoiledZip(bytes: Uint8Array, random: Random): Uint8Array {
  const copy = bytes.slice();
  if (random() < 0.2) return copy.slice(0, place(random, copy.length));
  for (let times = 1 + place(random, 6); times > 0; times -= 1) copy[place(random, copy.length)] = place(random, 256);
  return copy;
}

function spoiledParts(bytes: Uint8Array, random: Random): Uint8Array {
  const parts: Record<string, Uint8Array> = unzipSync(bytes);
  for (let times = 1 + place(random, 4); times > 0; times -= 1) {
    const names = Object.keys(parts);
    const name = random() < 0.6 ? pick(random, names.filter((each) => /sheet\d+\.xml$/.test(each)).concat(names.slice(0, 1))) : pick(random, names);
    if (random() < 0.03) delete parts[name];
    else parts[name] = strToU8(pick(random, SPOILS)(strFromU8(parts[name]!), random));
  }
  return zipSync(parts, { level: 1, mtime: new Date(2026, 0, 5) });
}

export const spoiledWorkbook = (bytes: Uint8Array, random: Random): Uint8Array => (random() < 0.25 ? spoiledZip : spoiledParts)(bytes, random);

const UNSOUND = /\bundefined\b|\[object |\bat .+:\d+:\d+|Cannot read|is not a function|internal fault/;

/** What is wrong with how one file was treated, in words; undefined where nothing is. */
export function faultOf(bytes: Uint8Array): { fault: string | undefined; refused: boolean } {
  const before = bytes.slice();
  const outcome = treated(bytes);
  return Buffer.compare(before, bytes) === 0 ? outcome : { fault: 'the input was changed', refused: false };
}

function treated(bytes: Uint8Array): { fault: string | undefined; refused: boolean } {
  const faulty = (fault: string) => ({ fault, refused: false });
  try {
    const { findings, checked, notChecked, formulas } = checkWorkbook(bytes, catalogue);
    if (checked + notChecked !== formulas) return faulty(`${checked} checked and ${notChecked} not, of ${formulas}`);
    for (const { reason, computed, stored } of findings) {
      for (const value of [computed, stored]) {
        if (typeof value === 'number' && !Number.isFinite(value)) return faulty(`a finding with the value ${value}`);
        if (value instanceof CellError && UNSOUND.test(value.message)) return faulty(value.message);
      }
      if (reason === '' || UNSOUND.test(reason)) return faulty(`the reason "${reason}"`);
    }
    const { bytes: once, notComputed } = recompute(bytes, customFunctions);
    const again = recompute(once, customFunctions);
    if (Buffer.compare(again.bytes, once) !== 0) return faulty('recomputing the result changes it');
    if (again.notComputed.length !== notComputed.length) return faulty('other formulas are left out the second time');
  } catch (thrown) {
    if (!(thrown instanceof WorkbookRefusal)) return faulty(thrown instanceof Error ? thrown.stack ?? thrown.message : String(thrown));
    if (UNSOUND.test(thrown.message) || thrown.message === '') return faulty(`the refusal "${thrown.message}"`);
    return { fault: undefined, refused: true };
  }
  return { fault: undefined, refused: false };
}

export interface FuzzedWorkbooks {
  readonly tried: number;
  readonly refused: number;
  /** Number of the file, which brings it again, and what was wrong. */
  readonly faults: readonly { readonly file: number; readonly fault: string }[];
}

/** Spoils workbooks so many times; number and seed alone decide how. */
export function fuzzWorkbooks(books: readonly Uint8Array[], count: number, seed: number, first = 0): FuzzedWorkbooks {
  const faults: { file: number; fault: string }[] = [];
  let refused = 0;
  for (let file = first; file < first + count; file += 1) {
    const random = randomFrom(seed + 104_729 * file);
    const outcome = faultOf(spoiledWorkbook(pick(random, books), random));
    if (outcome.refused) refused += 1;
    if (outcome.fault !== undefined) faults.push({ file, fault: outcome.fault });
  }
  return { tried: count, refused, faults };
}
