import type { OpenWorkbook } from './workbook';
import type { PartChanges } from './part-changes';
import { relationshipsPart } from './relationships';
import { childNamed, childrenNamed, parseXml } from './xml/tree';

const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const CONTENT_TYPE = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml';
const CONTENT_TYPES = '[Content_Types].xml';

/** Cell metadata that marks a formula as spilling (MS-XLSX 2.3.9, dynamic array properties). */
const METADATA = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
  + '<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">'
  + '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes>'
  + '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>'
  + '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';

/**
 * The mark of spilling formulas: the value of their attribute `cm`. Adds the part that explains it where the workbook lacks it.
 * undefined where the workbook cannot hold the mark; a formula then fills its place as an array of fixed size.
 */
export function dynamicMark({ package: parts, part, facts }: OpenWorkbook, changes: PartChanges): string | undefined {
  const metadata = parts.related(part, 'sheetMetadata');
  if (metadata !== undefined) return existingMark(parts.text(metadata), metadata);
  const name = `${part.slice(0, part.lastIndexOf('/') + 1)}metadata.xml`;
  if (facts.strict || parts.has(name)) return undefined;
  const ids = new Set(parts.relationships(part).map((link) => link.id));
  let number = ids.size + 1;
  while (ids.has(`rId${number}`)) number++;
  const links = relationshipsPart(part);
  changes.set(name, METADATA);
  changes.set(links, beforeEnd(changes.text(links), links, 'Relationship', `Id="rId${number}" Type="${OFFICE}/sheetMetadata" Target="/${name}"`));
  changes.set(CONTENT_TYPES, beforeEnd(changes.text(CONTENT_TYPES), CONTENT_TYPES, 'Override', `PartName="/${name}" ContentType="${CONTENT_TYPE}"`));
  return '1';
}

function existingMark(text: string, part: string): string | undefined {
  const root = parseXml(text, part);
  const type = childrenNamed(childNamed(root, 'metadataTypes'), 'metadataType').findIndex(({ attributes }) => attributes.get('name') === 'XLDAPR') + 1;
  const block = childrenNamed(childNamed(root, 'cellMetadata'), 'bk').findIndex((bk) => childNamed(bk, 'rc')?.attributes.get('t') === String(type));
  return type > 0 && block >= 0 ? String(block + 1) : undefined;
}

/** One more element at the end of a part's root, with the prefix that the others have. */
function beforeEnd(text: string, part: string, element: string, attributes: string): string {
  const root = parseXml(text, part);
  const close = text.lastIndexOf('</', root.end);
  const prefix = /^<\/([^\s>]*:)?/.exec(text.slice(close))?.[1] ?? '';
  return `${text.slice(0, close)}<${prefix}${element} ${attributes}/>${text.slice(close)}`;
}
