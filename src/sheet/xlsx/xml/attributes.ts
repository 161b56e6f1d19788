import { decodeAttribute } from './text';

/** Where an attribute stands in the text it was found in: from before its leading space to after its closing quote. */
export interface AttributePlace {
  readonly name: string;
  readonly start: number;
  readonly end: number;
  readonly valueStart: number;
  readonly valueEnd: number;
}

const isSpace = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9;

/** Calls `visit` for each attribute of the opening tag at `start` until it returns true. */
function eachAttribute(text: string, start: number, end: number, visit: (name: string, from: number, valueStart: number, valueEnd: number) => boolean): void {
  let at = start + 1;
  while (at < end && !isSpace(text.charCodeAt(at))) at++;
  for (;;) {
    const from = at;
    while (at < end && isSpace(text.charCodeAt(at))) at++;
    const nameStart = at;
    for (let code = text.charCodeAt(at); at < end && code !== 61 && code !== 62 && code !== 47 && !isSpace(code); code = text.charCodeAt(++at));
    const nameEnd = at;
    while (at < end && isSpace(text.charCodeAt(at))) at++;
    if (text.charCodeAt(at) !== 61 || nameEnd === nameStart) return;
    at++;
    while (at < end && isSpace(text.charCodeAt(at))) at++;
    const quote = text[at];
    if (quote !== '"' && quote !== "'") return;
    const close = text.indexOf(quote, at + 1);
    if (close < 0 || close >= end) return;
    if (visit(text.slice(nameStart, nameEnd), from, at + 1, close)) return;
    at = close + 1;
  }
}

/** The value of one attribute of the opening tag that stands from `start` to `end`; undefined where it has none. */
export function attribute(text: string, start: number, end: number, name: string): string | undefined {
  let found: string | undefined;
  eachAttribute(text, start, end, (each, _from, valueStart, valueEnd) => {
    if (each !== name) return false;
    found = decodeAttribute(text.slice(valueStart, valueEnd));
    return true;
  });
  return found;
}

/** All attributes of an opening tag, in order and decoded. */
export function attributesOf(text: string, start: number, end: number): Map<string, string> {
  const all = new Map<string, string>();
  eachAttribute(text, start, end, (name, _from, valueStart, valueEnd) => {
    all.set(name, decodeAttribute(text.slice(valueStart, valueEnd)));
    return false;
  });
  return all;
}

/** An opening tag with one attribute set, taken out (undefined) or added at its end; all else of it as it was. */
export function withAttribute(tag: string, name: string, value: string | undefined): string {
  let place: AttributePlace | undefined;
  eachAttribute(tag, 0, tag.length, (each, start, valueStart, valueEnd) => {
    if (each !== name) return false;
    place = { name, start, end: valueEnd + 1, valueStart, valueEnd };
    return true;
  });
  if (place) return value === undefined ? tag.slice(0, place.start) + tag.slice(place.end) : tag.slice(0, place.valueStart) + value + tag.slice(place.valueEnd);
  if (value === undefined) return tag;
  const close = /\s*\/?>$/.exec(tag)!;
  return `${tag.slice(0, close.index)} ${name}="${value}"${close[0]}`;
}
