import { type RowPlace, scanSheet } from '../../sheet/xlsx/scan';
import { attribute } from '../../sheet/xlsx/xml/attributes';
import { type XmlElement, parseXml } from '../../sheet/xlsx/xml/tree';

/** A worksheet without its cells. */
export interface SheetFrame {
  readonly root: XmlElement;
  /** Rows that say more of themselves than their number. */
  readonly rows: readonly RowFacts[];
}

export interface RowFacts {
  readonly row: number;
  /** Height in points, where one is set. */
  readonly height: number | undefined;
  readonly hidden: boolean;
  /** Cell format of the whole row. */
  readonly style: number | undefined;
}

function rowFacts(text: string, { row, start, openEnd }: RowPlace): RowFacts {
  const read = (name: string): string | undefined => attribute(text, start, openEnd, name);
  const isTrue = (value: string | undefined): boolean => value === '1' || value === 'true';
  const height = Number(read('ht'));
  return { row, height: height > 0 ? height : undefined, hidden: isTrue(read('hidden')), style: isTrue(read('customFormat')) ? Number(read('s')) : undefined };
}

/** Reads all of a worksheet part but its cells. */
export function sheetFrame(text: string, part: string): SheetFrame {
  const rows: RowFacts[] = [];
  let frame = text;
  scanSheet(text, part, {
    row: (place) => {
      const facts = rowFacts(text, place);
      if (facts.height !== undefined || facts.hidden || facts.style !== undefined) rows.push(facts);
    },
    cell: () => undefined,
    data: (_start, openEnd, closeStart) => { frame = text.slice(0, openEnd) + text.slice(closeStart); },
  });
  return { root: parseXml(frame, part), rows };
}
