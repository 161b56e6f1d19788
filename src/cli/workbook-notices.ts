import type { WorkbookFacts } from '../sheet/xlsx/workbook';

/** What the reader of a workbook ought to know before trusting or changing it. */
export function noticesOf(facts: WorkbookFacts): string[] {
  const hidden = facts.sheets.filter((sheet) => sheet.state !== 'visible').map((sheet) => sheet.name);
  return [
    facts.macros && 'holds macros: they are kept and never run',
    facts.signed && 'is digitally signed: any change makes the signature void',
    facts.externalLinks > 0 && `refers to ${facts.externalLinks} other workbook${facts.externalLinks === 1 ? '' : 's'}: their stored values are kept, the files are not opened`,
    facts.structureProtected && 'its structure is protected',
    facts.calculation === 'manual' && 'is set to be calculated by hand only: its stored values may be old',
    !facts.fullPrecision && 'computes with the digits that its cells show, which is not done here',
    facts.iterative && 'iterates circular references, which is not done here',
    hidden.length > 0 && `has hidden sheets: ${hidden.join(', ')}`,
  ].filter((notice): notice is string => typeof notice === 'string');
}
