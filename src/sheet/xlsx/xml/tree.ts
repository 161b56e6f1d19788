import { attributesOf } from './attributes';
import { XmlScanner } from './scanner';
import { decodeContent } from './text';

/** An element of a small part. Names without prefix; attributes as written, prefix included. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: XmlElement[];
  /** Text of an element without children. */
  text: string;
  /** Where the element stands in the part. */
  readonly start: number;
  end: number;
}

/** Reads a whole part into elements: for the parts that describe a workbook, not for its sheets. */
export function parseXml(text: string, part: string): XmlElement {
  const scanner = new XmlScanner(text, part);
  const open: XmlElement[] = [];
  let root: XmlElement | undefined;
  let contentFrom = 0;
  while (scanner.next()) {
    if (scanner.closing) {
      const element = open.pop()!;
      if (element.children.length === 0) element.text = decodeContent(text.slice(contentFrom, scanner.start));
      element.end = scanner.end;
      continue;
    }
    const element: XmlElement = { name: scanner.name, attributes: attributesOf(text, scanner.start, scanner.end), children: [], text: '', start: scanner.start, end: scanner.end };
    open.at(-1)?.children.push(element);
    root ??= element;
    if (!scanner.selfClosing) {
      open.push(element);
      contentFrom = scanner.end;
    }
  }
  return root!;
}

export const childrenNamed = (element: XmlElement | undefined, name: string): XmlElement[] => element?.children.filter((child) => child.name === name) ?? [];

export const childNamed = (element: XmlElement | undefined, name: string): XmlElement | undefined => element?.children.find((child) => child.name === name);

/** An XML truth value; undefined where the attribute is missing. */
export function truth(element: XmlElement | undefined, name: string): boolean {
  const value = element?.attributes.get(name);
  return value === '1' || value === 'true' || value === 'on';
}

/** A relationship id (`r:id`), whatever prefix the part has for it. */
export function relationshipId(element: XmlElement): string | undefined {
  for (const [name, value] of element.attributes) if (/:id$/.test(name)) return value;
  return undefined;
}
