import { addressOf, parseAddress } from './address';
import { dropCalcChain } from './calc-chain';
import { dynamicMark } from './dynamic-arrays';
import type { CellEdit } from './edit';
import { PartChanges } from './part-changes';
import { patchSheet } from './patch';
import { refuse, quoted } from './refusal';
import { readContext, sheetNamed } from './sheet';
import type { TableFacts } from './tables';
import type { OpenWorkbook, SheetFacts } from './workbook';

/** Edits by name of the sheet, then by address. */
export type WorkbookEdits = ReadonlyMap<string, ReadonlyMap<string, CellEdit>>;

/**
 * The workbook file with edits put into its cells. Parts without edits are copied as they are packed, edited sheets keep every byte
 * outside the edited cells; where no edit changes anything the very same bytes come back.
 */
export function patchWorkbook(workbook: OpenWorkbook, edits: WorkbookEdits): Uint8Array {
  const { package: parts } = workbook;
  const changes = new PartChanges(parts);
  const spills = [...edits.values()].some((sheet) => [...sheet.values()].some((edit) => edit.dynamic && edit.arrayRef != null));
  const mark = spills ? dynamicMark(workbook, changes) : undefined;
  let changed = false;
  let formulasChanged = false;
  for (const [name, ofSheet] of edits) {
    const sheet = sheetNamed(workbook, name);
    if (sheet.kind !== 'worksheet') refuse(`The sheet ${quoted(sheet.name)} has no cells.`);
    judgeStyles(workbook, sheet, ofSheet);
    judgeHeadings(workbook.facts.tables, sheet, ofSheet);
    const before = parts.text(sheet.part);
    const patch = patchSheet(before, ofSheet, readContext(workbook, sheet), mark);
    formulasChanged ||= patch.formulasChanged;
    if (patch.text === before) continue;
    changes.set(sheet.part, patch.text);
    changed = true;
  }
  if (!changed) return parts.bytes;
  if (formulasChanged) dropCalcChain(changes, workbook.part);
  return changes.file();
}

function judgeStyles({ styles }: OpenWorkbook, sheet: SheetFacts, edits: ReadonlyMap<string, CellEdit>): void {
  for (const [address, { style }] of edits) {
    if (style !== undefined && style > 0 && style >= styles.length) refuse(`${sheet.name}!${address}: the workbook has no cell format ${style}.`);
  }
}

/** A heading of a table is also the name of its column, by which formulas refer to it. */
function judgeHeadings(tables: readonly TableFacts[], sheet: SheetFacts, edits: ReadonlyMap<string, CellEdit>): void {
  for (const { name, sheet: of, box, headerRows, columns } of tables) {
    if (of !== sheet.name || headerRows === 0) continue;
    for (const [address, edit] of edits) {
      const place = parseAddress(address);
      if (place?.row !== box.top || place.column < box.left || place.column > box.right) continue;
      const heading = columns[place.column - box.left]!.name;
      if (edit.formula != null || (edit.value !== undefined && edit.value !== heading)) {
        refuse(`${sheet.name}!${addressOf(place.row, place.column)} is the heading ${quoted(heading)} of the table ${name}, by which formulas find its column; it is renamed in a spreadsheet program only.`);
      }
    }
  }
}
