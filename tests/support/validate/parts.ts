import { strFromU8, unzipSync } from 'fflate';
import { SaxesParser } from 'saxes';

/** An element as a real XML parser reads it, names without prefix; attributes by name as written. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

export interface Link { readonly id: string; readonly kind: string; readonly target: string; readonly part: string | undefined }

const escapes = (text: string): string => text.replace(/_x([0-9a-f]{4})_/gi, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)));

/** A workbook's parts read by other means than the program's own, so that both cannot err alike. */
export class Parts {
  readonly faults: string[] = [];
  readonly names: string[];
  private readonly content: Record<string, Uint8Array>;
  private readonly trees = new Map<string, Element>();
  private readonly linkLists = new Map<string, Link[]>();

  constructor(bytes: Uint8Array) {
    this.content = unzipSync(bytes);
    this.names = Object.keys(this.content).filter((name) => !name.endsWith('/'));
    for (const name of this.names) if (/\.(xml|rels|vml)$/.test(name)) this.trees.set(name, this.parse(name));
    for (const name of this.names) if (name.endsWith('.rels')) this.readLinks(name);
  }

  bad(where: string, what: string): void {
    this.faults.push(`${where}: ${what}`);
  }

  has(name: string): boolean {
    return name in this.content;
  }

  text(name: string): string {
    return strFromU8(this.content[name]!);
  }

  tree(name: string): Element {
    return this.trees.get(name) ?? { name: '', attributes: {}, children: [], text: '' };
  }

  links(part: string): Link[] {
    return this.linkLists.get(relationships(part)) ?? [];
  }

  linked(part: string, kind: string): string[] {
    return this.links(part).filter((link) => link.kind === kind && link.part !== undefined).map((link) => link.part!);
  }

  private parse(name: string): Element {
    const root: Element = { name: '', attributes: {}, children: [], text: '' };
    const open = [root];
    const parser = new SaxesParser({ xmlns: true });
    const complain = (error: Error): void => { if (!this.faults.some((fault) => fault.startsWith(`${name}: not well-formed`))) this.bad(name, `not well-formed: ${error.message.split('\n')[0]}`); };
    parser.on('error', complain);
    parser.on('opentag', (tag) => {
      const element: Element = { name: tag.local, attributes: Object.fromEntries(Object.values(tag.attributes).map((each) => [each.name, each.value])), children: [], text: '' };
      open.at(-1)!.children.push(element);
      open.push(element);
    });
    parser.on('text', (text) => { open.at(-1)!.text += text; });
    parser.on('cdata', (text) => { open.at(-1)!.text += text; });
    parser.on('doctype', () => this.bad(name, 'has a DOCTYPE'));
    parser.on('closetag', () => { open.pop(); });
    try {
      parser.write(this.text(name).replace(/^\ufeff/, '')).close();
    } catch (error) {
      complain(error as Error);
    }
    return root.children[0] ?? root;
  }

  private readLinks(name: string): void {
    const folder = name.replace(/_rels\/[^/]*$/, '');
    const list: Link[] = [];
    for (const { attributes } of children(this.tree(name), 'Relationship')) {
      const { Id: id = '', Type: type = '', Target: target = '', TargetMode: mode } = attributes;
      if (list.some((link) => link.id === id)) this.bad(name, `duplicate id ${id}`);
      const path = target.startsWith('/') ? target.slice(1) : new URL(folder + target, 'x://x/').pathname.slice(1);
      const part = mode === 'External' ? undefined : decodeURIComponent(path);
      if (part !== undefined && !this.has(part)) this.bad(name, `target missing: ${target}`);
      list.push({ id, kind: type.slice(type.lastIndexOf('/') + 1), target, part });
    }
    this.linkLists.set(name, list);
  }
}

export const relationships = (part: string): string => part.replace(/([^/]*)$/, '_rels/$1.rels');
export const children = (element: Element | undefined, name: string): Element[] => element?.children.filter((child) => child.name === name) ?? [];
export const child = (element: Element | undefined, name: string): Element | undefined => element?.children.find((each) => each.name === name);
export function* all(element: Element, name: string): Generator<Element> {
  for (const each of element.children) {
    if (each.name === name) yield each;
    yield* all(each, name);
  }
}
/** Text of a string item or inline string: its runs joined, without phonetic readings. */
export const richText = (element: Element): string =>
  escapes(element.children.map((each) => (each.name === 't' ? each.text : each.name === 'r' ? richTextRuns(each) : '')).join(''));
const richTextRuns = (run: Element): string => children(run, 't').map((each) => each.text).join('');
export const unescaped = escapes;
