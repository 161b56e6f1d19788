import { type Box, parseBox } from '../../sheet/xlsx/address';
import type { OpenWorkbook } from '../../sheet/xlsx/workbook';
import { type XmlElement, childNamed, childrenNamed, parseXml } from '../../sheet/xlsx/xml/tree';
import type { ReadSheet } from './workbook-data';

/** Areas whose rows a filter of the file hides, by sheet in small letters: SUBTOTAL leaves those rows out. */
export type Filters = ReadonlyMap<string, readonly Box[]>;

const boxOfActive = (filter: XmlElement | undefined): Box[] => {
  const box = childrenNamed(filter, 'filterColumn').length > 0 ? parseBox(filter!.attributes.get('ref') ?? '') : undefined;
  return box ? [box] : [];
};

export const filtersOf = ({ package: parts, facts }: OpenWorkbook, sheets: readonly ReadSheet[]): Filters =>
  new Map(sheets.map(({ facts: sheet, frame }) => [sheet.name.toLowerCase(), [
    ...boxOfActive(childNamed(frame.root, 'autoFilter')),
    ...facts.tables.filter((table) => table.sheet === sheet.name).flatMap(({ part }) => boxOfActive(childNamed(parseXml(parts.text(part), part), 'autoFilter'))),
  ]]));
