import { XmlScanner } from './xml/scanner';
import { decodeContent, decodeEscapes } from './xml/text';

/** The texts that cells refer to by number: runs of rich text joined, readings of Asian text left out. */
export function readSharedStrings(text: string, part: string): string[] {
  const scanner = new XmlScanner(text, part);
  const strings: string[] = [];
  while (scanner.next()) if (scanner.name === 'si' && !scanner.closing && scanner.depth <= 2) strings.push(readText(scanner));
  return strings;
}

/** Text of the element just opened, an `si` or `is`; moves behind its end. */
export function readText(scanner: XmlScanner): string {
  if (scanner.selfClosing) return '';
  const outer = scanner.depth - 1;
  let joined = '';
  while (scanner.next() && scanner.depth > outer) {
    if (scanner.closing) continue;
    if (scanner.name === 'rPh') scanner.skip();
    else if (scanner.name === 't' && !scanner.selfClosing) {
      const from = scanner.end;
      scanner.skip();
      joined += decodeEscapes(decodeContent(scanner.text.slice(from, scanner.start)));
    }
  }
  return joined;
}
