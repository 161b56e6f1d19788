import { quoted, refuse } from '../refusal';

const LESS = 60, MORE = 62, SLASH = 47, BANG = 33, QUESTION = 63, QUOTE = 34, APOSTROPHE = 39, COLON = 58;

const isSpace = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9;

/** The damage of a part in words. */
export const damagedXml = (part: string, what: string): never => refuse(`The file is damaged: ${part} ${what}.`);

/**
 * Walks forward over the tags of an XML part and tells where each stands, so that the bytes around them can be kept.
 * Comments, CDATA and processing instructions are passed over; tags must nest; a DOCTYPE is refused, since no
 * workbook has one and entities could make the text mean anything.
 */
export class XmlScanner {
  /** The tag at hand: `<` at `start`, after `>` at `end`; its name as written and without prefix. */
  start = 0;
  end = 0;
  qualifiedName = '';
  name = '';
  /** `</name>`; `<name/>` */
  closing = false;
  selfClosing = false;
  private readonly open: string[] = [];
  private rootSeen = false;

  constructor(readonly text: string, readonly part: string) {}

  /** Number of elements that are open after this tag. */
  get depth(): number {
    return this.open.length;
  }

  /** Moves to the next tag; false at the end of the part. */
  next(): boolean {
    const { text } = this;
    for (let at = this.end; ;) {
      const start = text.indexOf('<', at);
      if (start < 0) return this.finish();
      const kind = text.charCodeAt(start + 1);
      if (kind === BANG) at = this.passOver(start);
      else if (kind === QUESTION) at = this.after('?>', start + 2);
      else {
        this.readTag(start, kind);
        return true;
      }
    }
  }

  /** Moves behind the closing tag of the element just opened. */
  skip(): void {
    if (this.selfClosing) return;
    for (const outer = this.depth - 1; this.depth > outer;) this.next();
  }

  private readTag(start: number, kind: number): void {
    const { text } = this;
    const end = tagEnd(text, start + 1);
    if (end < 0) damagedXml(this.part, 'ends in the middle of a tag');
    const closing = kind === SLASH;
    const from = closing ? start + 2 : start + 1;
    let to = from;
    let local = from;
    for (let code = text.charCodeAt(to); to < end && code !== SLASH && !isSpace(code); code = text.charCodeAt(++to)) if (code === COLON) local = to + 1;
    if (to === from) damagedXml(this.part, 'holds a tag without a name');
    this.start = start;
    this.end = end + 1;
    this.qualifiedName = text.slice(from, to);
    this.name = local === from ? this.qualifiedName : text.slice(local, to);
    this.closing = closing;
    this.selfClosing = !closing && text.charCodeAt(end - 1) === SLASH;
    this.nest();
  }

  private nest(): void {
    if (this.closing) {
      if (this.open.pop() !== this.qualifiedName) damagedXml(this.part, `closes ${quoted(this.qualifiedName)} where it is not open`);
      return;
    }
    if (this.open.length === 0) {
      if (this.rootSeen) damagedXml(this.part, 'has a second root element');
      this.rootSeen = true;
    }
    if (!this.selfClosing) this.open.push(this.qualifiedName);
  }

  private finish(): false {
    if (this.open.length > 0) damagedXml(this.part, `ends before ${quoted(this.open.at(-1)!)} is closed`);
    if (!this.rootSeen) damagedXml(this.part, 'is not XML');
    return false;
  }

  private passOver(start: number): number {
    const { text } = this;
    if (text.startsWith('<!--', start)) return this.after('-->', start + 4);
    if (text.startsWith('<![CDATA[', start)) return this.after(']]>', start + 9);
    return refuse(`${this.part} holds a DOCTYPE or entity declaration. No workbook needs one and it could hide other content; the file is not opened.`);
  }

  private after(mark: string, from: number): number {
    const at = this.text.indexOf(mark, from);
    return at < 0 ? damagedXml(this.part, `lacks "${mark}"`) : at + mark.length;
  }
}

/** Position of the `>` that ends a tag; -1 where there is none or a `<` comes first. */
function tagEnd(text: string, from: number): number {
  let quote = 0;
  for (let at = from; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === LESS) return -1;
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === QUOTE || code === APOSTROPHE) quote = code;
    else if (code === MORE) return at;
  }
  return -1;
}
