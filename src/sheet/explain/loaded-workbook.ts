import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { BookNames } from '../calculate/names';
import type { Context, Workbook } from '../evaluate/context';
import { raise } from '../evaluate/errors';
import { LIMITS } from '../evaluate/limits';
import { Reference } from '../evaluate/references';
import type { Value } from '../evaluate/values';
import type { Box } from '../xlsx/address';
import { inBox } from '../xlsx/address';
import type { ValueSource } from './explanation';

/** Thrown through the evaluator where it comes upon something that has not been asked of the host yet. */
export class Wanted {
  constructor(readonly load: () => Promise<void>) {}
}

/** The formula reads more than can be asked of a host for one look at a cell. */
export class TooMuch extends Error {}

const CELLS_AT_MOST = 200_000;
/** What is read around a cell that only the evaluation itself comes upon (INDIRECT, OFFSET). */
const AROUND = { rows: 256, columns: 16 };

interface Sheet {
  used: readonly [number, number] | undefined;
  blocks: { box: Box; cells: Matrix }[];
}

/** Fills itself from a host while a formula is evaluated, again and again until nothing is wanted any more. */
export class LoadedWorkbook implements Workbook {
  private readonly sheets = new Map<string, Sheet>();
  private readonly spills = new Map<string, Box | undefined>();
  private bookNames: BookNames | undefined;
  private cellCount = 0;

  constructor(private readonly source: ValueSource) {}

  /** Reads a rectangle ahead of its use. */
  async load(sheet: string, box: Box): Promise<void> {
    const facts = await this.sheetFacts(sheet);
    if (!facts.used) return;
    const clipped = { ...box, bottom: Math.min(box.bottom, facts.used[0]), right: Math.min(box.right, facts.used[1]) };
    const count = (clipped.bottom - clipped.top + 1) * (clipped.right - clipped.left + 1);
    if (clipped.bottom < clipped.top || clipped.right < clipped.left || this.holds(facts, clipped)) return;
    this.cellCount += count;
    if (this.cellCount > CELLS_AT_MOST) throw new TooMuch(`it reads more than ${CELLS_AT_MOST} cells`);
    facts.blocks.push({ box: clipped, cells: await this.source.cells(sheet, clipped) });
  }

  get(sheet: string, row: number, column: number): Cell {
    const facts = this.knownSheet(sheet);
    if (!facts.used) return noSheet(sheet);
    if (row > facts.used[0] || column > facts.used[1]) return null;
    const block = facts.blocks.find(({ box }) => inBox(box, row, column));
    if (!block) {
      const box = { top: row, left: column, bottom: Math.min(LIMITS.rows, row + AROUND.rows) - 1, right: Math.min(LIMITS.columns, column + AROUND.columns) - 1 };
      throw new Wanted(() => this.load(sheet, box));
    }
    return block.cells[row - block.box.top]?.[column - block.box.left] ?? null;
  }

  used(sheet: string): readonly [number, number] | CellError {
    return this.knownSheet(sheet).used ?? noSheet(sheet);
  }

  named(context: Context, name: string): Value {
    return this.ready(this.names().named(context, name));
  }

  structured(context: Context, text: string): Value {
    return this.ready(this.names().structured(context, text));
  }

  spill({ sheet, top, left }: Reference): Value {
    const key = `${sheet.toLowerCase()}!${top},${left}`;
    if (!this.spills.has(key)) throw new Wanted(async () => void this.spills.set(key, await this.source.spill(sheet, top, left)));
    const box = this.spills.get(key);
    return box ? this.ready(new Reference(this, sheet, box.top, box.left, box.bottom, box.right)) : raise('#REF!', 'the cell before # does not spill');
  }

  /** A reference whose cells have been read, so that a large one is asked for at once and not piece by piece. */
  private ready(value: Value): Value {
    if (!(value instanceof Reference)) return value;
    const facts = this.knownSheet(value.sheet);
    if (!facts.used) return value;
    const clipped = { top: value.top, left: value.left, bottom: Math.min(value.bottom, facts.used[0]), right: Math.min(value.right, facts.used[1]) };
    const blank = clipped.bottom < clipped.top || clipped.right < clipped.left;
    if (!blank && !this.holds(facts, clipped)) throw new Wanted(() => this.load(value.sheet, clipped));
    return value;
  }

  private holds(facts: Sheet, { top, left, bottom, right }: Box): boolean {
    return facts.blocks.some(({ box }) => inBox(box, top, left) && inBox(box, bottom, right));
  }

  private knownSheet(sheet: string): Sheet {
    const facts = this.sheets.get(sheet.toLowerCase());
    if (!facts) throw new Wanted(async () => void (await this.sheetFacts(sheet)));
    return facts;
  }

  private async sheetFacts(sheet: string): Promise<Sheet> {
    const key = sheet.toLowerCase();
    const known = this.sheets.get(key);
    if (known) return known;
    const facts: Sheet = { used: await this.source.used(sheet), blocks: [] };
    this.sheets.set(key, facts);
    return facts;
  }

  private names(): BookNames {
    if (!this.bookNames) {
      throw new Wanted(async () => {
        const [names, tables] = await Promise.all([this.source.names(), this.source.tables()]);
        this.bookNames = new BookNames({ names, tables });
      });
    }
    return this.bookNames;
  }
}

const noSheet = (name: string): CellError => new CellError('#REF!', `no sheet named ${name}`);
