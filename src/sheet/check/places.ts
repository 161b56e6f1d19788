import type { AstExpression } from '@borgar/fx/xlsx';
import { BookNames } from '../calculate/names';
import type { BookCell, BookSheet } from '../calculate/cells';
import { type Context, type Workbook, Reference } from '../evaluate';
import { CellError } from '../../functions/kernel/cell';
import { raise } from '../evaluate/errors';
import { type Box, parseAddress } from '../xlsx/address';
import type { WorkbookFacts } from '../xlsx/workbook';
import type { Template } from './templates';

/** A rectangle that a formula names. */
export interface Place extends Box {
  readonly sheet: BookSheet;
}

/** A corner as it is written: fixed by $, or moving with its formula. */
export interface Corner {
  readonly row: number;
  readonly column: number;
  readonly rowFixed: boolean;
  readonly columnFixed: boolean;
}

export interface WrittenRange {
  readonly sheet: string | undefined;
  readonly from: Corner;
  readonly to: Corner;
}

const RANGE = /^(?:(?:'((?:[^']|'')+)'|([^'![\]]+))!)?(\$?[A-Za-z]{1,3}\$?\d{1,7})(?::(\$?[A-Za-z]{1,3}\$?\d{1,7}))?$/;

const corner = (text: string): Corner | undefined => {
  const place = parseAddress(text);
  return place && { ...place, columnFixed: text.startsWith('$'), rowFixed: text.includes('$', 1) };
};

/** A1 reference as it is written; undefined where it is a whole column, spans sheets or leads to another workbook. */
export function writtenRange(text: string): WrittenRange | undefined {
  const [, quoted, plain, first, second] = RANGE.exec(text) ?? [];
  const from = first === undefined ? undefined : corner(first);
  const to = second === undefined ? from : corner(second);
  return from && to ? { sheet: quoted?.replace(/''/g, "'") ?? plain, from, to } : undefined;
}

/** Finds what the references of formulas mean. */
export class Places {
  private readonly names: BookNames;
  private readonly ranges = new Map<string, WrittenRange | undefined>();
  private readonly workbook: Workbook;

  constructor(private readonly sheets: ReadonlyMap<string, BookSheet>, facts: WorkbookFacts) {
    this.names = new BookNames(facts);
    const sheetOf = (name: string) => this.sheets.get(name.toLowerCase());
    this.workbook = {
      get: (sheet, row, column) => sheetOf(sheet)?.at(row, column)?.stored ?? null,
      used: (sheet) => { const found = sheetOf(sheet); return found ? [found.lastRow, found.lastColumn] : new CellError('#REF!', `there is no sheet ${sheet}`); },
      named: (context, name) => this.names.named(context, name),
      structured: (context, text) => this.names.structured(context, text),
      spill: () => raise('#REF!', 'the place of a spill is not looked up'),
    };
  }

  /** What a reference in the formula of a cell means; undefined where it is none or means no single rectangle. */
  of(node: AstExpression | null | undefined, template: Template, cell: BookCell): Place | undefined {
    if (node?.type !== 'ReferenceIdentifier') return undefined;
    if (node.kind === 'range') return this.range(node.value, template, cell);
    const context: Context = { workbook: this.workbook, functions: { find: () => undefined }, sheet: cell.sheet.name, row: cell.row, column: cell.column };
    try {
      const value = node.kind === 'name' ? this.names.named(context, node.value) : this.names.structured(context, node.value);
      if (!(value instanceof Reference)) return undefined;
      const sheet = this.sheets.get(value.sheet.toLowerCase());
      return sheet && { sheet, top: value.top, left: value.left, bottom: value.bottom, right: value.right };
    } catch {
      return undefined; // said where the formula itself is worked out
    }
  }

  /** Formulas of one template name their ranges by one text, so each is read once. */
  private written(text: string): WrittenRange | undefined {
    if (!this.ranges.has(text)) this.ranges.set(text, writtenRange(text));
    return this.ranges.get(text);
  }

  private range(text: string, { first }: Template, cell: BookCell): Place | undefined {
    const written = this.written(text);
    const sheet = written && (written.sheet === undefined ? cell.sheet : this.sheets.get(written.sheet.toLowerCase()));
    if (!written || !sheet) return undefined;
    const rows = cell.row - first.row;
    const columns = cell.column - first.column;
    const at = (each: Corner) => ({ row: each.row + (each.rowFixed ? 0 : rows), column: each.column + (each.columnFixed ? 0 : columns) });
    const [a, b] = [at(written.from), at(written.to)];
    return { sheet, top: Math.min(a.row, b.row), left: Math.min(a.column, b.column), bottom: Math.max(a.row, b.row), right: Math.max(a.column, b.column) };
  }
}

export const isOneCell = ({ top, left, bottom, right }: Box): boolean => top === bottom && left === right;
