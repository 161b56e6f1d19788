import type { BookCell } from '../calculate/cells';
import type { Column } from './columns';
import type { Subject } from './subject';
import type { Template, Templates } from './templates';

/** A cell that stands among cells which one formula was filled into, and holds something else. */
export interface Deviation {
  /** undefined where the cell is blank. */
  readonly cell: BookCell | undefined;
  readonly row: number;
  readonly column: number;
  readonly among: Column;
  /** What the others hold. */
  readonly usual: Template;
}

/** Cells in a row that may all deviate between two stretches of the same formula. */
const LONGEST_GAP = 3;

/** Every cell that a filled formula passes over, in table columns and in plain blocks. */
export function deviations(subject: Subject): Deviation[] {
  return subject.book.sheets.flatMap((sheet) => subject.columns(sheet).flatMap((column) => [...(column.table ? inTable(subject, column) : inRun(subject, column))]));
}

/** A table's column has one formula: the one its definition names, or the one that most of its cells have. */
function* inTable(subject: Subject, column: Column): Generator<Deviation> {
  const usual = usualOf(subject.templates, column);
  if (!usual) return;
  const { sheet } = column;
  for (let row = column.top; row <= column.bottom; row++) {
    const cell = sheet.at(row, column.column);
    if (cell?.owner || (cell && subject.templates.of(cell)?.key === usual.key)) continue;
    if (!cell && !rowIsFilled(column, row)) continue;
    yield { cell, row, column: column.column, among: column, usual };
  }
}

function usualOf(templates: Templates, { cells, table, column }: Column): Template | undefined {
  const counts = new Map<Template, number>();
  for (const cell of cells) {
    const template = templates.of(cell);
    if (template) counts.set(template, (counts.get(template) ?? 0) + 1);
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  if (!most) return undefined;
  const declared = table!.columns[column - table!.box.left]!.formula;
  const named = declared === undefined ? undefined : [...counts.keys()].find(({ first }) => first.formula === declared);
  // Two cells that differ from one another name no rule.
  return named ?? (most[1] > cells.length / 2 && most[1] > 1 ? most[0] : undefined);
}

/** A row that somebody has begun to fill in. */
function rowIsFilled({ sheet, table }: Column, row: number): boolean {
  let filled = false;
  sheet.each(row, table!.box.left, row, table!.box.right, (cell) => { filled ||= cell.formula === null && cell.stored !== null; });
  return filled;
}

/** Outside of tables a cell is judged by the same formula above and below it. */
function* inRun(subject: Subject, column: Column): Generator<Deviation> {
  const { cells } = column;
  const keys = cells.map((cell) => (cell.owner ? undefined : subject.templates.of(cell)));
  for (let from = 1; from < cells.length; from++) {
    const usual = keys[from - 1];
    if (!usual || keys[from] === usual) continue;
    let to = from;
    while (to < cells.length && keys[to] !== usual && to - from < LONGEST_GAP) to++;
    const closed = keys[to] === usual && (keys[from - 2] === usual || keys[to + 1] === usual || to - from === 1 && cells.length > 3);
    const last = to === cells.length && to - from === 1 && keys[from - 2] === usual && !keys[from] && rowGoesOn(subject, cells[from]!);
    if (!closed && !last) continue;
    for (let at = from; at < to; at++) yield { cell: cells[at], row: cells[at]!.row, column: column.column, among: column, usual };
    from = to;
  }
  for (const cell of cells) {
    const usual = acrossUsual(subject, cell);
    if (usual) yield { cell, row: cell.row, column: cell.column, among: column, usual };
  }
}

/** Whether other columns of the sheet are filled into this row as into the one above. */
function rowGoesOn({ templates }: Subject, cell: BookCell): boolean {
  let goesOn = false;
  cell.sheet.each(cell.row, 0, cell.row, cell.sheet.lastColumn, (each) => {
    const above = each.column === cell.column ? undefined : each.sheet.at(each.row - 1, each.column);
    const template = templates.of(each);
    goesOn ||= above !== undefined && template !== undefined && templates.of(above) === template;
  });
  return goesOn;
}

/** The formula that was filled to the right past a constant: on both sides of it, and once more. */
function acrossUsual({ templates }: Subject, cell: BookCell): Template | undefined {
  if (cell.formula !== null || cell.owner) return undefined;
  const at = (by: number): Template | undefined => {
    const found = cell.sheet.at(cell.row, cell.column + by);
    return found && !found.owner ? templates.of(found) : undefined;
  };
  const left = at(-1);
  if (!left || at(1) !== left || (at(-2) !== left && at(2) !== left)) return undefined;
  const above = cell.sheet.at(cell.row - 1, cell.column);
  const below = cell.sheet.at(cell.row + 1, cell.column);
  // A column of constants that a formula was filled past on purpose stands between two blocks.
  return [above, below].some((each) => each && each.formula === null && typeof each.stored === typeof cell.stored) ? undefined : left;
}
