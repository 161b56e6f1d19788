import { type Box, parseBox } from './address';
import { quoted, refuse } from './refusal';
import { type XmlElement, childNamed, childrenNamed } from './xml/tree';
import { decodeEscapes } from './xml/text';

export interface TableColumn {
  readonly name: string;
  /** Formula of the whole column in the form of the file, where it has one. */
  readonly formula: string | undefined;
}

/** A table: its place includes header and totals rows. */
export interface TableFacts {
  readonly name: string;
  readonly sheet: string;
  readonly part: string;
  readonly box: Box;
  readonly headerRows: 0 | 1;
  readonly totalsRows: 0 | 1;
  readonly columns: readonly TableColumn[];
}

export function readTable(root: XmlElement, part: string, sheet: string): TableFacts {
  const name = root.attributes.get('displayName') ?? root.attributes.get('name') ?? refuse(`The file is damaged: ${part} is a table without a name.`);
  const box = parseBox(root.attributes.get('ref') ?? '') ?? refuse(`The file is damaged: the table ${quoted(name)} does not say where it stands.`);
  const columns = childrenNamed(childNamed(root, 'tableColumns'), 'tableColumn').map((column) => ({
    name: decodeEscapes(column.attributes.get('name') ?? ''),
    formula: childNamed(column, 'calculatedColumnFormula')?.text,
  }));
  if (columns.length !== box.right - box.left + 1) refuse(`The file is damaged: the table ${quoted(name)} lists ${columns.length} columns for ${box.right - box.left + 1}.`);
  return {
    name: decodeEscapes(name), sheet, part, box, columns,
    headerRows: root.attributes.get('headerRowCount') === '0' ? 0 : 1,
    totalsRows: Number(root.attributes.get('totalsRowCount') ?? 0) > 0 ? 1 : 0,
  };
}
