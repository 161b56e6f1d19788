import { type Box, inBox, parseBox } from './address';
import { scanSheet } from './scan';
import type { OpenWorkbook, SheetFacts } from './workbook';
import { attribute } from './xml/attributes';
import { childNamed, childrenNamed, parseXml } from './xml/tree';

export type HiddenBy = 'filter' | 'hand';

const TRUE = /^(?:1|true|on)$/;

/**
 * Rows of a sheet that are out of sight, from 0, and by what: a row within an active filter is taken to be hidden by it,
 * since files do not say.
 */
export function hiddenRows(workbook: OpenWorkbook, sheet: SheetFacts): ReadonlyMap<number, HiddenBy> {
  const rows = new Map<number, HiddenBy>();
  if (sheet.kind !== 'worksheet') return rows;
  const text = workbook.package.text(sheet.part);
  const hidden: number[] = [];
  const filters: Box[] = [...tableFilters(workbook, sheet)];
  scanSheet(text, sheet.part, {
    row: ({ row, start, openEnd }) => {
      if (TRUE.test(attribute(text, start, openEnd, 'hidden') ?? '')) hidden.push(row);
    },
    cell: () => {},
    other: ({ name, start, end, selfClosing }) => {
      // An autoFilter without a column to filter by hides nothing.
      if (name !== 'autoFilter' || selfClosing || !text.slice(end, text.indexOf('autoFilter>', end)).includes('filterColumn')) return;
      const box = parseBox(attribute(text, start, end, 'ref') ?? '');
      if (box) filters.push(box);
    },
  });
  for (const row of hidden) rows.set(row, filters.some((box) => inBox(box, row, box.left)) ? 'filter' : 'hand');
  return rows;
}

/** Places of the sheet's tables that a filter is at work on. */
const tableFilters = (workbook: OpenWorkbook, sheet: SheetFacts): Box[] =>
  workbook.facts.tables.filter((table) => table.sheet === sheet.name).flatMap((table) => {
    const filter = childNamed(parseXml(workbook.package.text(table.part), table.part), 'autoFilter');
    return childrenNamed(filter, 'filterColumn').length > 0 ? [table.box] : [];
  });
