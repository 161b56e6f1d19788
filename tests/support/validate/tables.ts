import { type Element, type Parts, child, children, unescaped } from './parts';
import { type Box, type SheetCell, boxOf, columnName, meet } from './sheet';
import type { Book, Sheet } from './workbook';

/** Tables of all sheets: places, headings, column formulas, names. */
export function validateTables(parts: Parts, book: Book, cellsOf: ReadonlyMap<string, ReadonlyMap<string, SheetCell>>): void {
  const tables: Element[] = [];
  for (const sheet of book.sheets) {
    const boxes: { name: string; box: Box }[] = [];
    const listed = children(child(parts.tree(sheet.part), 'tableParts'), 'tablePart').map(({ attributes }) => attributes['r:id']);
    for (const { id, part, kind } of parts.links(sheet.part)) {
      if (kind !== 'table' || part === undefined) continue;
      const table = parts.tree(part);
      tables.push(table);
      const box = boxOf(table.attributes.ref ?? '');
      const name = table.attributes.displayName ?? '';
      if (!listed.includes(id)) parts.bad(sheet.name, `the table ${name} is not listed among the sheet's`);
      for (const other of boxes) if (meet(other.box, box)) parts.bad(sheet.name, `the tables ${other.name} and ${name} overlap`);
      boxes.push({ name, box });
      validateTable(parts, sheet, table, box, cellsOf.get(sheet.name) ?? new Map());
    }
  }
  const unique = (of: string, what: string): void => {
    const values = tables.map(({ attributes }) => (attributes[of] ?? '').toLowerCase());
    if (new Set(values).size !== values.length) parts.bad('tables', `two tables have one ${what}`);
  };
  unique('id', 'id');
  unique('displayName', 'name');
  for (const { attributes } of tables) if (book.names.some(({ name }) => name.toLowerCase() === attributes.displayName?.toLowerCase())) parts.bad('tables', `${attributes.displayName} is also a defined name`);
}

function validateTable(parts: Parts, { name: sheetName, part }: Sheet, table: Element, box: Box, cells: ReadonlyMap<string, SheetCell>): void {
  const name = table.attributes.displayName ?? '';
  const bad = (what: string): void => parts.bad(sheetName, `table ${name}: ${what}`);
  const columns = children(child(table, 'tableColumns'), 'tableColumn');
  const headings = columns.map(({ attributes }) => unescaped(attributes.name ?? ''));
  const totals = Number(table.attributes.totalsRowCount ?? 0);
  const first = box.top + (table.attributes.headerRowCount === '0' ? 0 : 1);
  if (columns.length !== box.right - box.left + 1) bad(`${columns.length} columns in ${table.attributes.ref}`);
  if (box.bottom - totals < first) bad('has no row of data');
  if (new Set(headings.map((each) => each.toLowerCase())).size !== headings.length) bad('two columns have one name');
  if (new Set(columns.map(({ attributes }) => attributes.id)).size !== columns.length) bad('two columns have one id');
  for (const merge of children(child(parts.tree(part), 'mergeCells'), 'mergeCell')) if (meet(boxOf(merge.attributes.ref ?? ''), box)) bad(`merged cells ${merge.attributes.ref} inside`);
  columns.forEach((column, index) => {
    const letters = columnName(box.left + index);
    if (first > box.top) validateHeading(bad, cells.get(letters + box.top), letters + box.top, headings[index]!);
    const formula = child(column, 'calculatedColumnFormula')?.text;
    if (formula === undefined) return;
    if (/^=|\[@/.test(formula)) bad(`the formula of the column ${headings[index]} is not in the form of files`);
    for (let row = first; row <= box.bottom - totals; row++) {
      if (cells.get(letters + row)?.formula !== formula) return bad(`${letters}${row} is not the formula of its column`);
    }
  });
}

function validateHeading(bad: (what: string) => void, cell: SheetCell | undefined, address: string, heading: string): void {
  if (!cell || !['s', 'str', 'inlineStr'].includes(cell.type)) bad(`the heading ${address} is no text`);
  else if (cell.value !== heading) bad(`the heading "${cell.value}" is not the column's name "${heading}"`);
  else if (cell.formula !== undefined) bad(`the heading ${address} is a formula`);
}
