import type { PartChanges } from './part-changes';
import { relationshipsPart, resolveTarget } from './relationships';
import { type Splice, spliced } from './splice';
import { childrenNamed, parseXml } from './xml/tree';

const CONTENT_TYPES = '[Content_Types].xml';

/**
 * Takes the calculation chain out of a workbook: after formulas came or went it would name cells without one, which spreadsheet
 * programs report as damage. They make a new one when they save.
 */
export function dropCalcChain(changes: PartChanges, workbookPart: string): void {
  const chain = changes.parts.relationships(workbookPart).find((link) => link.kind === 'calcChain')?.part;
  if (chain === undefined) return;
  const isChain = (name: string): boolean => name.toLowerCase() === chain.toLowerCase();
  drop(changes, CONTENT_TYPES, 'Override', (attributes) => isChain((attributes.get('PartName') ?? '').replace(/^\//, '')));
  drop(changes, relationshipsPart(workbookPart), 'Relationship', (attributes) =>
    attributes.get('TargetMode') !== 'External' && isChain(resolveTarget(workbookPart, attributes.get('Target') ?? '')));
  changes.remove(chain);
}

function drop(changes: PartChanges, part: string, element: string, goes: (attributes: ReadonlyMap<string, string>) => boolean): void {
  const text = changes.text(part);
  const splices = childrenNamed(parseXml(text, part), element).filter(({ attributes }) => goes(attributes)).map(({ start, end }): Splice => ({ from: start, to: end, text: '' }));
  changes.set(part, spliced(text, splices));
}
