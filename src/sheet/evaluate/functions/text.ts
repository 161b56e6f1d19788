import { format } from 'numfmt';
import type { Cell } from '../../../functions/kernel/cell';
import { isError, raise, refuse } from '../errors';
import { LIMITS, boundedText } from '../limits';
import { numberInText } from '../number-text';
import { type Value, cellOf, toNumber, toText, toTruth, toWhole } from '../values';
import { Wildcard } from '../wildcards';
import { forEachCell } from './collect';
import { ANY, type CellFunction, type FunctionTable, cells, whole } from './definition';
import { roundSize } from './rounding';

const ofText = (compute: (text: string) => Cell): CellFunction => cells([1, 1], (cell) => compute(toText(cell)));

const count = (cell: Cell | undefined, least: number, name: string): number => {
  const number = toWhole(cell);
  return number >= least ? number : raise('#VALUE!', `${name} must be ${least} or more, got ${number}`);
};

const start = (cell: Cell): number => count(cell, 1, 'a position in a text');
const length = (cell: Cell): number => count(cell, 0, 'a count of characters');

function found(index: number, wanted: string): number {
  return index >= 0 ? index + 1 : raise('#VALUE!', `"${wanted}" does not occur`);
}

function within(text: string, from: Cell): number {
  const at = start(from);
  return at <= text.length + 1 ? at - 1 : raise('#VALUE!', `the text ends before position ${at}`);
}

function substitute(text: string, old: string, replacement: string, occurrence: Cell | undefined): string {
  if (old === '') return text;
  if (occurrence === undefined) return boundedText(text.split(old).join(replacement));
  let at = -1;
  for (let seen = count(occurrence, 1, 'the occurrence'); seen > 0; seen--) {
    at = text.indexOf(old, at < 0 ? 0 : at + old.length);
    if (at < 0) return text;
  }
  return boundedText(text.slice(0, at) + replacement + text.slice(at + old.length));
}

function repeat(text: string, times: number): string {
  if (text.length * times > LIMITS.textLength) return raise('#VALUE!', `the text would have ${text.length * times} characters, a cell holds ${LIMITS.textLength}`);
  return text.repeat(times);
}

/**
 * Formats that programs of other languages read in their own way: "0,00" and "#.##0" where the comma is the decimal mark,
 * years and days as JJJJ, AAAA and TT. English ones have a point or nothing behind such a comma's thousands.
 */
const FORMAT_OF_ANOTHER_LANGUAGE = /[0#],0{1,2}(?![0#.,])|#\.##0|[jt]{2}|a{3}|^standard$/i;

const withoutQuoted = (pattern: string): string => pattern.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, '');

/** A value in a number format; text that is a number counts as one, other text passes through the text part of the format. */
export function formatted(cell: Cell | undefined, pattern: string): string {
  if (isError(cell)) throw cell;
  if (typeof cell === 'boolean') return toText(cell);
  const value = typeof cell === 'string' ? numberInText(cell) ?? cell : cell ?? 0;
  if (pattern === '') return '';
  if (typeof value === 'number' && FORMAT_OF_ANOTHER_LANGUAGE.test(withoutQuoted(pattern))) refuse(`the format "${pattern}" hangs on the language of the program: not supported here`);
  try {
    return boundedText(format(pattern, value, { throws: true, dateErrorThrows: true, dateSpanLarge: false }));
  } catch (thrown) {
    return raise('#VALUE!', `"${pattern}" cannot format ${toText(cell)}: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
}

function fixed(cell: Cell | undefined, decimals: number, plain: boolean): string {
  if (decimals > 127) return raise('#VALUE!', 'at most 127 decimals');
  const value = roundSize(toNumber(cell), decimals, Math.round);
  const pattern = (plain ? '0' : '#,##0') + (decimals > 0 ? `.${'0'.repeat(decimals)}` : '');
  return formatted(value, pattern);
}

function properCase(text: string): string {
  return text.toLowerCase().replace(/\p{L}+/gu, (word) => word[0]!.toUpperCase() + word.slice(1));
}

function join(parts: Value[], keep: (cell: Cell) => boolean, delimiters: string[]): string {
  let text = '';
  let taken = 0;
  for (const part of parts) {
    forEachCell(part, (cell) => {
      if (!keep(cell)) return;
      if (taken > 0) text += delimiters[(taken - 1) % delimiters.length]!;
      text = boundedText(text + toText(cell));
      taken++;
    });
  }
  return text;
}

function textJoin([delimiter, skipEmpty, ...parts]: Value[]): string {
  const delimiters: string[] = [];
  forEachCell(delimiter, (cell) => delimiters.push(toText(cell)));
  const skips = toTruth(cellOf(skipEmpty));
  return join(parts, (cell) => !(skips && (cell === null || cell === '')), delimiters);
}

/** Characters 128 to 159 of the Windows set; those it leaves open stand for themselves. The rest is as in Unicode. */
const WINDOWS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';
const CHARACTERS = Array.from({ length: 256 }, (_, code) => (code >= 128 && code < 160 ? WINDOWS[code - 128]! : String.fromCharCode(code)));

function character(code: number): string {
  return code >= 1 && code <= 255 ? CHARACTERS[code]! : raise('#VALUE!', `CHAR takes 1 to 255, got ${code}`);
}

function codeOf(text: string): number {
  if (text === '') return raise('#VALUE!', 'an empty text has no character');
  const code = CHARACTERS.indexOf(text[0]!);
  return code < 0 ? 63 : code;
}

function unicodeCharacter(code: number): string {
  const isCharacter = code >= 1 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff);
  return isCharacter ? String.fromCodePoint(code) : raise('#VALUE!', `there is no character ${code}`);
}

function numberValue(text: string, decimal: string, group: string): number {
  const [whole = '', ...rest] = text.replace(/\s/g, '').split(decimal);
  if (rest.length > 1 || rest.some((part) => part.includes(group))) return raise('#VALUE!', `"${text}" is not a number`);
  const plain = whole.split(group).join('') + (rest.length > 0 ? `.${rest[0]}` : '');
  const percents = /%*$/.exec(plain)![0].length;
  const digits = plain.slice(0, plain.length - percents);
  if (digits === '') return 0;
  if (!/^[-+]?(\d+(?:\.\d*)?|\.\d+)(e[-+]?\d+)?$/i.test(digits)) return raise('#VALUE!', `"${text}" is not a number`);
  return Number(digits) / 100 ** percents;
}

export const textFunctions: FunctionTable = {
  LEN: ofText((text) => text.length),
  LEFT: cells([1, 2], (text, size = 1) => toText(text).slice(0, length(size))),
  RIGHT: cells([1, 2], (text, size = 1) => {
    const whole = toText(text);
    return whole.slice(Math.max(0, whole.length - length(size)));
  }),
  MID: cells([3, 3], (text, from, size) => toText(text).slice(start(from ?? null) - 1, start(from ?? null) - 1 + length(size ?? null))),
  // Letter by letter: ß has no capital there.
  UPPER: ofText((text) => [...text].map((letter) => (letter.toUpperCase().length === letter.length ? letter.toUpperCase() : letter)).join('')),
  LOWER: ofText((text) => text.toLowerCase()),
  PROPER: ofText(properCase),
  TRIM: ofText((text) => text.replace(/^ +| +$/g, '').replace(/ +/g, ' ')),
  // eslint-disable-next-line no-control-regex -- removing control characters is what CLEAN does
  CLEAN: ofText((text) => text.replace(/[\u0000-\u001f]/g, '')),
  FIND: cells([2, 3], (wanted, text, from = 1) => found(toText(text).indexOf(toText(wanted), within(toText(text), from)), toText(wanted))),
  SEARCH: cells([2, 3], (wanted, text, from = 1) => found(new Wildcard(toText(wanted)).find(toText(text), within(toText(text), from)), toText(wanted))),
  SUBSTITUTE: cells([3, 4], (text, old, replacement, occurrence) => substitute(toText(text), toText(old), toText(replacement), occurrence)),
  REPLACE: cells([4, 4], (text, from, size, replacement) => {
    const [whole, at] = [toText(text), start(from ?? null) - 1];
    return boundedText(whole.slice(0, at) + toText(replacement) + whole.slice(at + length(size ?? null)));
  }),
  REPT: cells([2, 2], (text, times) => repeat(toText(text), length(times ?? null))),
  EXACT: cells([2, 2], (a, b) => toText(a) === toText(b)),
  CHAR: cells([1, 1], (code) => character(toWhole(code))),
  CODE: ofText(codeOf),
  UNICHAR: cells([1, 1], (code) => unicodeCharacter(toWhole(code))),
  UNICODE: ofText((text) => text.codePointAt(0) ?? raise('#VALUE!', 'an empty text has no character')),
  VALUE: cells([1, 1], (cell) => (typeof cell === 'boolean' ? raise('#VALUE!', 'a truth value is not a number') : toNumber(cell))),
  NUMBERVALUE: cells([1, 3], (text, decimal = '.', group = ',') => numberValue(toText(text), toText(decimal).slice(0, 1), toText(group).slice(0, 1))),
  T: cells([1, 1], (cell) => {
    if (isError(cell)) throw cell;
    return typeof cell === 'string' ? cell : '';
  }),
  TEXT: cells([2, 2], (cell, pattern) => formatted(cell, toText(pattern))),
  FIXED: cells([1, 3], (cell, decimals = 2, plain = false) => fixed(cell, toWhole(decimals), toTruth(plain))),
  CONCATENATE: cells([1, ANY], (...parts) => boundedText(parts.map(toText).join(''))),
  CONCAT: whole([1, ANY], (parts) => join(parts, () => true, [''])),
  TEXTJOIN: whole([3, ANY], textJoin, { single: [1] }),
};
