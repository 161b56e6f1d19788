import type { BookCell } from '../calculate/cells';
import type { Column } from './columns';
import { Patterns } from './patterns';
import type { Subject } from './subject';
import { type Template, type Templates, calledName, expressions } from './templates';
import { isRowOfTotals } from './totals';

/** A cell that stands among cells which one formula was filled into, and holds something else. */
export interface Deviation {
  /** undefined where the cell is blank. */
  readonly cell: BookCell | undefined;
  readonly row: number;
  readonly column: number;
  readonly among: Column;
  /** What the others hold. */
  readonly usual: Template;
  /** The others stand beside it, not above and below. */
  readonly across?: true;
}

/** Cells in a row that may all deviate between two stretches of the same formula. */
const LONGEST_GAP = 3;

/** Every cell that a filled formula passes over, in table columns and in plain blocks. */
export function deviations(subject: Subject): Deviation[] {
  return subject.book.sheets.flatMap((sheet) => subject.columns(sheet).flatMap((column) => {
    if (column.table && hasFormula(column)) return [...inTable(subject, column)];
    const patterns = new Patterns(subject.templates, column.cells);
    return [...(column.table ? inTable(subject, column) : inRun(subject, column))].filter(({ cell, usual }) => !cell || !patterns.recurs(cell, usual));
  }));
}

const formulaOf = ({ table, column }: Column): string | undefined => table?.columns[column - table.box.left]?.formula;

/** Whether the table itself says which formula the whole column has. */
const hasFormula = (column: Column): boolean => formulaOf(column) !== undefined;

/** A table's column has one formula: the one its definition names, or the one that most of its cells have. */
function* inTable(subject: Subject, column: Column): Generator<Deviation> {
  const usual = usualOf(subject.templates, column);
  if (!usual) return;
  const { sheet } = column;
  for (let row = column.top; row <= column.bottom; row++) {
    const cell = sheet.at(row, column.column);
    if (cell?.owner || (cell && subject.templates.of(cell)?.key === usual.key)) continue;
    if (cell ? row === column.top && buildsOnRowAbove(subject, usual) : !rowIsFilled(column, row)) continue;
    yield { cell, row, column: column.column, among: column, usual };
  }
}

function usualOf(templates: Templates, column: Column): Template | undefined {
  const { cells } = column;
  const counts = new Map<Template, number>();
  for (const cell of cells) {
    const template = templates.of(cell);
    if (template) counts.set(template, (counts.get(template) ?? 0) + 1);
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  if (!most) return undefined;
  const declared = formulaOf(column);
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
  const deviates = (at: number, usual: Template): Deviation => ({ cell: cells[at], row: cells[at]!.row, column: column.column, among: column, usual });
  const second = keys[1];
  if (second && keys[0] !== second && keys[2] === second && startsOtherwise(subject, cells[0]!, second)) yield deviates(0, second);
  for (let from = 1; from < cells.length; from++) {
    const usual = keys[from - 1];
    if (!usual || keys[from] === usual) continue;
    const to = endOfGap(subject, cells, keys, from);
    const closed = keys[to] === usual && (keys[from - 2] === usual || keys[to + 1] === usual || (to - from === 1 && cells.length > 3));
    const last = to === cells.length && to - from === 1 && keys[from - 2] === usual && goesOn(subject, cells[from]!, -1);
    if (!closed && !last) continue;
    for (let at = from; at < to; at++) if (!isRowOfTotals(subject, column.sheet, cells[at]!.row)) yield deviates(at, usual);
    from = to;
  }
  for (const cell of cells) {
    const usual = acrossUsual(subject, cell);
    if (usual) yield { cell, row: cell.row, column: cell.column, among: column, usual, across: true };
  }
}

/** Where the formula above a gap goes on. Many constants in a row are a gap where the other columns are filled on beside them. */
function endOfGap(subject: Subject, cells: readonly BookCell[], keys: readonly (Template | undefined)[], from: number): number {
  const usual = keys[from - 1];
  let to = from;
  while (to < cells.length && keys[to] !== usual && (to - from < LONGEST_GAP || (!keys[to] && !keys[from] && goesOn(subject, cells[to]!, -1)))) to++;
  return to;
}

/** Whether other columns of the sheet are filled into this row as into the one `by` rows on. */
function goesOn({ templates }: Subject, cell: BookCell, by: number): boolean {
  let found = false;
  cell.sheet.each(cell.row, 0, cell.row, cell.sheet.lastColumn, (each) => {
    const beside = each.column === cell.column ? undefined : each.sheet.at(each.row + by, each.column);
    const template = templates.of(each);
    found ||= beside !== undefined && template !== undefined && templates.of(beside) === template;
  });
  return found;
}

/** A first row unlike those below it, though nothing in them is built on the row above and the other columns are filled from it on. */
const startsOtherwise = (subject: Subject, cell: BookCell, usual: Template): boolean =>
  !buildsOnRowAbove(subject, usual) && goesOn(subject, cell, 1) && !isRowOfTotals(subject, cell.sheet, cell.row);

/** Functions and references by which a formula reaches another row without naming its address. */
const REACHES_OUT = /^(?:OFFSET|INDIRECT|ROW)$/;

/** Whether a formula reads the row above its own, or its own column: the first cell of such a chain is another one. */
function buildsOnRowAbove(subject: Subject, usual: Template): boolean {
  const { first, tree } = usual;
  const named = subject.rangesOf(usual).some(({ from, to, sheet }) => {
    if (sheet !== undefined && sheet !== first.sheet.name) return false;
    const ownColumn = from.column <= first.column && to.column >= first.column;
    return ownColumn || (!to.rowFixed && to.row < first.row) || (!from.rowFixed && from.row < first.row);
  });
  return named || [...expressions(tree)].some((node) => REACHES_OUT.test(calledName(node)) || (node.type === 'ReferenceIdentifier' && node.kind === 'table' && !/#This Row/i.test(node.value)));
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
  // A column of constants that formulas were filled past on purpose stands between two blocks.
  return [-1, 1].some((by) => isPassedToo(templates, cell, cell.sheet.at(cell.row + by, cell.column))) ? undefined : left;
}

/** Whether a cell above or below a constant is one as well, between two formulas of its own row. */
function isPassedToo(templates: Templates, cell: BookCell, other: BookCell | undefined): boolean {
  if (!other || other.formula !== null || typeof other.stored !== typeof cell.stored) return false;
  const [left, right] = [-1, 1].map((by) => other.sheet.at(other.row, other.column + by));
  return left?.formula != null && right !== undefined && templates.of(left) === templates.of(right);
}
