import { quoted, refuse } from '../refusal';

const NAMED: ReadonlyMap<string, string> = new Map([['lt', '<'], ['gt', '>'], ['amp', '&'], ['quot', '"'], ['apos', "'"]]);

const badReference = (reference: string): never => refuse(`The file is damaged: ${quoted(reference)} stands for no character.`);

/** Text or attribute value of an XML part with its character references read. Only the five entities of XML are known. */
export function decodeXml(raw: string): string {
  if (!raw.includes('&')) return raw;
  return raw.replace(/&([^;&]{0,12};?)/g, (whole, body: string) => {
    if (!body.endsWith(';')) return badReference(whole);
    const name = body.slice(0, -1);
    const digits = /^#(?:x([0-9a-f]+)|([0-9]+))$/i.exec(name);
    if (!digits) return NAMED.get(name) ?? badReference(whole);
    const code = digits[1] === undefined ? Number(digits[2]) : parseInt(digits[1], 16);
    const allowed = code === 9 || code === 10 || code === 13 || (code >= 0x20 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff));
    return allowed ? String.fromCodePoint(code) : badReference(whole);
  });
}

/** Value of an attribute: white space that is not written as a reference counts as a plain space. */
export const decodeAttribute = (raw: string): string => decodeXml(/[\t\n\r]/.test(raw) ? raw.replace(/\r\n|[\t\n\r]/g, ' ') : raw);

export const encodeXml = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');

export const encodeXmlAttribute = (text: string): string =>
  encodeXml(text).replace(/"/g, '&quot;').replace(/[\t\n\r]/g, (space) => `&#${space.charCodeAt(0)};`);

/** Content of an element that holds text only, CDATA and comments included; line ends as XML reads them. */
export function decodeContent(raw: string): string {
  const text = raw.includes('<')
    ? raw.split(/(<!\[CDATA\[[^]*?\]\]>|<!--[^]*?-->|<\?[^]*?\?>)/).map((piece) => {
        if (piece.startsWith('<![CDATA[')) return piece.slice(9, -3);
        return piece.startsWith('<!--') || piece.startsWith('<?') ? '' : decodeXml(lineEnds(piece));
      }).join('')
    : decodeXml(lineEnds(raw));
  return text;
}

const lineEnds = (raw: string): string => (raw.includes('\r') ? raw.replace(/\r\n?/g, '\n') : raw);

const ESCAPED = /_x([0-9a-f]{4})_/gi;

/** The escape of spreadsheets for characters that XML cannot hold (ST_Xstring, ECMA-376-1, 22.9.2.19). */
export const decodeEscapes = (text: string): string =>
  text.includes('_x') || text.includes('_X') ? text.replace(ESCAPED, (whole, hex: string) => (whole[1] === 'x' ? String.fromCharCode(parseInt(hex, 16)) : whole)) : text;

/** Characters that XML cannot hold, or would change when read, and texts that look like the escape itself. */
const TO_ESCAPE = /_(?=x[0-9a-f]{4}_)|[\u0000-\u0008\u000b-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/gi; // eslint-disable-line no-control-regex

export const encodeEscapes = (text: string): string =>
  text.replace(TO_ESCAPE, (character) => `_x${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`);

/** Whether a text loses spaces unless it is marked as preserved. */
export const needsPreserve = (text: string): boolean => /^[\s]|[\s]$|[\t\n]/.test(text);
