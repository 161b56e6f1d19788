import { CellError } from '../../../functions/kernel/cell';
import type { Context } from '../context';
import { raise, refuse } from '../errors';
import { LIMITS } from '../limits';
import { Reference, Union, columnLetters } from '../references';
import { areaOf } from '../area';
import { type Value, cellOf, sizeOf, toText, toTruth, toWhole } from '../values';
import { type FunctionTable, whole } from './definition';

const needed = (value: Value, name: string): Reference => {
  if (value instanceof CellError) throw value;
  return value instanceof Reference ? value : raise('#VALUE!', `${name} takes a reference`);
};

/** Rows or columns of a reference as an array of their numbers; without a reference that of the formula. */
function positions(value: Value, own: number, from: (reference: Reference) => [first: number, count: number], across: boolean, name: string): Value {
  if (value === undefined) return own + 1;
  const [first, count] = from(needed(value, name));
  if (count === 1) return first + 1;
  const numbers = Array.from({ length: count }, (_, step) => first + step + 1);
  return across ? [numbers] : numbers.map((number) => [number]);
}

function offset(args: Value[]): Value {
  const [start, down, across, height, width] = args;
  const from = needed(start, 'OFFSET');
  const top = from.top + toWhole(cellOf(down));
  const left = from.left + toWhole(cellOf(across));
  const extent = (value: Value, usual: number): number => (value === undefined ? usual : toWhole(cellOf(value)));
  const [rows, columns] = [extent(height, from.rows), extent(width, from.columns)];
  if (rows === 0 || columns === 0) return raise('#REF!', 'a range of no cells');
  // A negative height reaches upwards from the first cell.
  const [firstRow, lastRow] = rows > 0 ? [top, top + rows - 1] : [top + rows + 1, top];
  const [firstColumn, lastColumn] = columns > 0 ? [left, left + columns - 1] : [left + columns + 1, left];
  return from.moved(firstRow, firstColumn, lastRow, lastColumn);
}

function indirect([text, style]: Value[], context: Context): Value {
  if (style !== undefined && !toTruth(cellOf(style))) return refuse('INDIRECT with R1C1 references is not supported here');
  const name = toText(cellOf(text)).trim();
  const area = areaOf(name);
  if (area) {
    const sheet = area.sheet || context.sheet;
    const used = context.workbook.used(sheet);
    if (used instanceof CellError) return raise('#REF!', `${used.message}: ${name}`);
    return new Reference(context.workbook, sheet, area.top, area.left, area.bottom, area.right);
  }
  if (name === '' || /^\[/.test(name)) return raise('#REF!', `"${name}" is no reference`);
  const value = name.includes('[') ? context.workbook.structured(context, name) : context.workbook.named(context, name);
  return value instanceof Reference ? value : raise('#REF!', `"${name}" is no reference`);
}

function address([row, column, kind, style, sheet]: Value[]): string {
  const [down, across] = [toWhole(cellOf(row)), toWhole(cellOf(column))];
  const form = kind === undefined ? 1 : toWhole(cellOf(kind));
  if (!(down >= 1 && down <= LIMITS.rows && across >= 1 && across <= LIMITS.columns) || form < 1 || form > 4) {
    return raise('#VALUE!', 'no such cell or form of address');
  }
  if (style !== undefined && !toTruth(cellOf(style))) return refuse('ADDRESS in R1C1 form is not supported here');
  const [fixedRow, fixedColumn] = [form === 1 || form === 2, form === 1 || form === 3];
  const text = `${fixedColumn ? '$' : ''}${columnLetters(across - 1)}${fixedRow ? '$' : ''}${down}`;
  if (sheet === undefined) return text;
  const name = toText(cellOf(sheet));
  return `${/^[A-Za-z_][\w.]*$/.test(name) || name === '' ? name : `'${name.replaceAll("'", "''")}'`}!${text}`;
}

function cellInformation([what, reference]: Value[]): Value {
  const asked = toText(cellOf(what)).toLowerCase();
  const at = reference === undefined ? refuse('CELL without a reference means the cell last changed: not supported here') : needed(reference, 'CELL');
  const first = at.at(0, 0);
  switch (asked) {
    case 'row': return at.top + 1;
    case 'col': return at.left + 1;
    case 'address': return `$${columnLetters(at.left)}$${at.top + 1}`;
    case 'contents': return first;
    case 'type': return first === null ? 'b' : typeof first === 'string' ? 'l' : 'v';
    default: return refuse(`CELL("${asked}") is not supported here`);
  }
}

/** Functions of where cells stand rather than of what they hold. */
export const placeFunctions: FunctionTable = {
  ROW: whole([0, 1], ([value], { row }) => positions(value, row, (from) => [from.top, rowsRead(from)], false, 'ROW')),
  COLUMN: whole([0, 1], ([value], { column }) => positions(value, column, (from) => [from.left, from.columns], true, 'COLUMN')),
  ROWS: whole([1, 1], ([value]) => sizeOf(value).rows, { arrays: true }),
  COLUMNS: whole([1, 1], ([value]) => sizeOf(value).columns, { arrays: true }),
  AREAS: whole([1, 1], ([value]) => (value instanceof Union ? value.areas.length : needed(value, 'AREAS') && 1)),
  OFFSET: whole([3, 5], offset, { single: [1, 2, 3, 4], emptyIsDefault: true, volatile: true }),
  INDIRECT: whole([1, 2], indirect, { single: [0, 1], volatile: true }),
  ADDRESS: whole([2, 5], address, { single: [0, 1, 2, 3, 4], emptyIsDefault: true }),
  CELL: whole([1, 2], cellInformation, { single: [0], volatile: true }),
  HYPERLINK: whole([1, 2], ([link, name]) => cellOf(name === undefined ? link : name), { single: [0, 1] }),
  FORMULATEXT: whole([1, 1], ([value]) => formulaText(needed(value, 'FORMULATEXT'))),
  ISFORMULA: whole([1, 1], ([value]) => formulaAt(needed(value, 'ISFORMULA')) !== undefined),
  SHEET: whole([0, 1], () => refuse('SHEET is not supported here')),
  SHEETS: whole([0, 1], () => refuse('SHEETS is not supported here')),
};

/** A whole column gives as many row numbers as the sheet has rows in use. */
const rowsRead = (reference: Reference): number => (reference.rows === LIMITS.rows ? reference.filled().rows : reference.rows);

function formulaAt({ workbook, sheet, top, left }: Reference): string | undefined {
  return workbook.formula ? workbook.formula(sheet, top, left) : refuse('the formulas of other cells are not known here');
}

const formulaText = (reference: Reference): string => {
  const formula = formulaAt(reference);
  return formula === undefined ? raise('#N/A', 'the cell holds no formula') : `=${formula}`;
};

