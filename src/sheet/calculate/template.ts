import { LAST_COLUMN } from '../xlsx/address';

/** A formula's text with its references told as distances: the same for all cells that it was filled into. */
export interface Template {
  readonly key: string;
  /** Whether the text of one of these cells, moved, is the text of another. */
  readonly movable: boolean;
}

const QUOTE = 34, APOSTROPHE = 39, DOLLAR = 36, OPEN = 91, CLOSE = 93, COLON = 58;
const REFERENCE = /(\$?)([A-Za-z]{1,3})(\$?)(\d{1,7})/y;

const isDigit = (code: number): boolean => code >= 48 && code <= 57;
const isWord = (code: number): boolean => isDigit(code) || (code >= 65 && code <= 90) || (code >= 97 && code <= 122) || code === 95 || code === 46 || code === 92 || code > 127;

/** Position behind a quoted text or quoted sheet name; doubled quotes belong to it. */
function afterQuote(text: string, at: number): number {
  const quote = text.charCodeAt(at);
  for (let next = at + 1; next < text.length; next++) {
    if (text.charCodeAt(next) !== quote) continue;
    if (text.charCodeAt(next + 1) !== quote) return next + 1;
    next++;
  }
  return text.length;
}

function afterBracket(text: string, at: number): number {
  let depth = 0;
  for (let next = at; next < text.length; next++) {
    const code = text.charCodeAt(next);
    if (code === APOSTROPHE) next++;
    else if (code === OPEN) depth++;
    else if (code === CLOSE && --depth === 0) return next + 1;
  }
  return text.length;
}

/**
 * Reads a formula of a cell in one quick pass. Whole rows and columns (`A:A`, `1:3`) are told by their text; formulas with them are
 * not movable, which costs time only.
 */
export function templateOf(text: string, row: number, column: number): Template {
  let key = '';
  let from = 0;
  let at = 0;
  let movable = true;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (code === QUOTE || code === APOSTROPHE) at = afterQuote(text, at);
    else if (code === OPEN) at = afterBracket(text, at);
    else if (isWord(code) || code === DOLLAR) {
      REFERENCE.lastIndex = at;
      const found = isDigit(code) ? null : REFERENCE.exec(text);
      const end = found ? REFERENCE.lastIndex : at;
      const next = text.charCodeAt(end);
      if (found && !isWord(next) && next !== 40 && next !== 33 && next !== DOLLAR) {
        key += text.slice(from, at) + distance(found, row, column);
        from = at = end;
      } else {
        const word = at;
        while (at < text.length && (isWord(text.charCodeAt(at)) || text.charCodeAt(at) === DOLLAR)) at++;
        if (text.charCodeAt(at) === COLON || text.charCodeAt(word - 1) === COLON) movable = false;
      }
    } else at++;
  }
  return movable ? { key: key + text.slice(from), movable } : { key: text, movable };
}

function distance([, fixedColumn, letters, fixedRow, digits]: RegExpExecArray, row: number, column: number): string {
  const rows = fixedRow ? digits : `[${Number(digits) - 1 - row}]`;
  if (fixedColumn) return `\u0001${letters!.toUpperCase()}\u0001${rows}`;
  let place = 0;
  for (let at = 0; at < letters!.length; at++) place = place * 26 + (letters!.charCodeAt(at) & 31);
  return place - 1 > LAST_COLUMN ? letters! + digits! : `\u0001[${place - 1 - column}]\u0001${rows}`;
}
