import { tokenize } from '@borgar/fx/xlsx';
import { type Cell, CellError } from '../../functions/kernel/cell';
import { type Context, Reference, type Value, type Workbook, columnLetters } from '../../sheet/evaluate';
import { type Area, areaOf } from '../../sheet/evaluate/area';
import { raise } from '../../sheet/evaluate/errors';
import { type Compiled, evaluateValue } from '../../sheet/evaluate/evaluate';
import { structuredBox } from '../../sheet/explain/structured';
import type { DefinedName, } from '../../sheet/xlsx/workbook';
import type { TableFacts } from '../../sheet/xlsx/tables';
import type { FormulaPlace, GridCells } from './run';

/** Names and tables of the open file. */
export interface BookFacts {
  readonly names: readonly DefinedName[];
  readonly tables: readonly TableFacts[];
}

export type CompileText = (formula: string, oneCell?: boolean) => Compiled;

const NAMES_IN_NAMES = 32;
/** More cells than these are noted as the rectangle around them. */
const NOTED_ONE_BY_ONE = 64;

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();
const SHEET_AND_NAME = /^(?:'((?:[^']|'')+)'!|([^!]+)!)?(.*)$/s;

const areasIn = (formula: string): Area[] =>
  tokenize(`=${formula}`, { negativeNumbers: false, mergeRefs: true }).filter(({ type }) => type.startsWith('range')).flatMap(({ value }) => areaOf(value) ?? []);

/** The grid as the evaluator sees it while one formula runs. What the formula turns out to depend on is noted with the grid. */
export class GridWorkbook implements Workbook {
  private depth = 0;
  private readonly read = new Map<string, { sheet: string; row: number; column: number }>();

  constructor(private readonly cells: GridCells, private readonly facts: BookFacts, private readonly compile: CompileText, private readonly place: FormulaPlace, private readonly notesReads: boolean) {}

  get(sheet: string, row: number, column: number): Cell {
    if (this.notesReads) this.read.set(`${sheet.toLowerCase()}!${row},${column}`, { sheet, row, column });
    return this.cells.get(sheet, row, column);
  }

  used(sheet: string): readonly [number, number] | CellError {
    return this.cells.last(sheet) ?? new CellError('#REF!', `there is no sheet ${sheet}`);
  }

  named(context: Context, name: string): Value {
    const [, quotedSheet, plainSheet, bare = name] = SHEET_AND_NAME.exec(name) ?? [];
    const sheet = quotedSheet?.replace(/''/g, "'") ?? plainSheet ?? context.sheet;
    const { names, tables } = this.facts;
    const found = names.find((each) => same(each.name, bare) && each.sheet !== undefined && same(each.sheet, sheet)) ?? names.find((each) => same(each.name, bare) && each.sheet === undefined);
    if (!found) return tables.some((table) => same(table.name, bare)) ? this.structured(context, `${bare}[]`) : new CellError('#NAME?', `${name} is not defined in this workbook`);
    if (this.depth >= NAMES_IN_NAMES) return raise('#NAME?', `${name} is defined by itself`);
    this.depth += 1;
    try {
      for (const area of areasIn(found.text)) this.note({ ...area, sheet: area.sheet || context.sheet });
      return evaluateValue(this.compile(found.text), context);
    } finally {
      this.depth -= 1;
    }
  }

  structured(context: Context, text: string): Value {
    const { sheet, box } = structuredBox(text, this.facts.tables, context);
    this.note({ sheet, ...box });
    return new Reference(this, sheet, box.top, box.left, box.bottom, box.right);
  }

  spill({ sheet, top, left }: Reference): Value {
    const end = this.cells.spill(sheet, top, left);
    if (!end) return raise('#REF!', `${columnLetters(left)}${top + 1} holds no formula that spills`);
    this.note({ sheet, top, left, ...end });
    return new Reference(this, sheet, top, left, end.bottom, end.right);
  }

  formula(sheet: string, row: number, column: number): string | undefined {
    return this.cells.formula(sheet, row, column);
  }

  /** Notes the cells that were read, for formulas whose text does not tell. */
  noteReads(): void {
    const bySheet = new Map<string, { sheet: string; row: number; column: number }[]>();
    for (const cell of this.read.values()) bySheet.set(cell.sheet, [...(bySheet.get(cell.sheet) ?? []), cell]);
    for (const [sheet, cells] of bySheet) {
      const [rows, columns] = [cells.map(({ row }) => row), cells.map(({ column }) => column)];
      if (cells.length <= NOTED_ONE_BY_ONE) for (const { row, column } of cells) this.note({ sheet, top: row, left: column, bottom: row, right: column });
      else this.note({ sheet, top: rows.reduce((a, b) => Math.min(a, b)), left: columns.reduce((a, b) => Math.min(a, b)), bottom: rows.reduce((a, b) => Math.max(a, b)), right: columns.reduce((a, b) => Math.max(a, b)) });
    }
  }

  /** Noting an area around the formula itself would make the grid see a circle where there is none. */
  private note({ sheet, top, left, bottom, right }: Area): void {
    const { row, column } = this.place;
    if (same(sheet, this.place.sheet) && row >= top && row <= bottom && column >= left && column <= right) return;
    this.cells.depends(sheet, top, left, bottom, right);
  }
}
