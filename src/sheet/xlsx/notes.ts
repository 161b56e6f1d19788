import { readText } from './shared-strings';
import { WorkbookRefusal } from './refusal';
import type { OpenWorkbook, SheetFacts } from './workbook';
import { attribute } from './xml/attributes';
import { XmlScanner } from './xml/scanner';

/** Notes that hang on the cells of a sheet, by address. A part of notes that cannot be read counts as none: no value hangs on it. */
export function readNotes({ package: parts }: OpenWorkbook, { part }: SheetFacts): ReadonlyMap<string, string> {
  const notes = new Map<string, string>();
  for (const link of parts.relationships(part)) {
    if (link.kind !== 'comments' || link.part === undefined || !parts.has(link.part)) continue;
    try {
      readInto(notes, parts.text(link.part), link.part);
    } catch (thrown) {
      if (!(thrown instanceof WorkbookRefusal)) throw thrown;
    }
  }
  return notes;
}

function readInto(notes: Map<string, string>, text: string, part: string): void {
  const scanner = new XmlScanner(text, part);
  let address = '';
  while (scanner.next()) {
    if (scanner.closing) continue;
    if (scanner.name === 'comment') address = attribute(text, scanner.start, scanner.end, 'ref') ?? '';
    else if (scanner.name === 'text' && address !== '') notes.set(address.replace(/\$/g, '').toUpperCase(), readText(scanner).trim());
  }
}
