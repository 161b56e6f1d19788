import { type Cell, CellError } from '../../functions/kernel/cell';
import type { BookNames } from '../../sheet/calculate/names';
import { type Context, Reference, type Value, type Workbook, columnLetters } from '../../sheet/evaluate';
import type { Area } from '../../sheet/evaluate/area';
import { raise } from '../../sheet/evaluate/errors';
import type { Box } from '../../sheet/xlsx/address';
import type { FormulaPlace, GridCells } from './run';

/** More cells than these are noted as the rectangle around them. */
const NOTED_ONE_BY_ONE = 64;

interface ReadCell {
  readonly row: number;
  readonly column: number;
}

/**
 * The grid as the evaluator sees it while one formula runs. The grid knows which cells the text of a formula names; what
 * comes in by names, tables, spills and functions such as INDIRECT is noted with it.
 */
export class GridWorkbook implements Workbook {
  private namesOpen = 0;
  private readonly read = new Map<string, Map<string, ReadCell>>();

  /** `notesReads`: the formula reads cells that its text does not tell. */
  constructor(private readonly cells: GridCells, private readonly names: BookNames, private readonly place: FormulaPlace, private readonly notesReads: boolean, private readonly filters: ReadonlyMap<string, readonly Box[]>) {}

  get(sheet: string, row: number, column: number): Cell {
    if (this.notesReads || this.namesOpen > 0) {
      let ofSheet = this.read.get(sheet);
      if (!ofSheet) this.read.set(sheet, (ofSheet = new Map()));
      ofSheet.set(`${row},${column}`, { row, column });
    }
    return this.cells.get(sheet, row, column);
  }

  used(sheet: string): readonly [number, number] | CellError {
    return this.cells.last(sheet) ?? new CellError('#REF!', `there is no sheet ${sheet}`);
  }

  named(context: Context, name: string): Value {
    this.namesOpen += 1;
    try {
      return this.noted(this.names.named(context, name));
    } catch (thrown) {
      // As a value, so that a function of this name can still be told apart from a name.
      if (thrown instanceof CellError && thrown.code === '#NAME?') return thrown;
      throw thrown;
    } finally {
      this.namesOpen -= 1;
    }
  }

  structured(context: Context, text: string): Value {
    return this.noted(this.names.structured(context, text));
  }

  spill({ sheet, top, left }: Reference): Value {
    const end = this.cells.spill(sheet, top, left);
    if (!end) return raise('#REF!', `${columnLetters(left)}${top + 1} holds no formula that spills`);
    return this.noted(new Reference(this, sheet, top, left, end.bottom, end.right));
  }

  formula(sheet: string, row: number, column: number): string | undefined {
    return this.cells.formula(sheet, row, column);
  }

  hidden(sheet: string, row: number): 'filter' | 'hand' | undefined {
    if (!this.cells.isRowHidden(sheet, row)) return undefined;
    return this.filters.get(sheet.toLowerCase())?.some(({ top, bottom }) => row > top && row <= bottom) ? 'filter' : 'hand';
  }

  /** To be called when the formula has run. */
  noteReads(): void {
    for (const [sheet, read] of this.read) {
      const cells = [...read.values()];
      if (cells.length <= NOTED_ONE_BY_ONE) for (const { row, column } of cells) this.note({ sheet, top: row, left: column, bottom: row, right: column });
      else this.note({ sheet, ...around(cells) });
    }
  }

  private noted(value: Value): Value {
    if (value instanceof Reference) this.note(value);
    return value;
  }

  /** Noting an area around the formula itself would make the grid see a circle where there is none. */
  private note({ sheet, top, left, bottom, right }: Area): void {
    const { row, column } = this.place;
    if (sheet.toLowerCase() === this.place.sheet.toLowerCase() && row >= top && row <= bottom && column >= left && column <= right) return;
    this.cells.depends(sheet, top, left, bottom, right);
  }
}

function around(cells: readonly ReadCell[]): Omit<Area, 'sheet'> {
  const box = { top: Infinity, left: Infinity, bottom: 0, right: 0 };
  for (const { row, column } of cells) {
    box.top = Math.min(box.top, row);
    box.left = Math.min(box.left, column);
    box.bottom = Math.max(box.bottom, row);
    box.right = Math.max(box.right, column);
  }
  return box;
}
