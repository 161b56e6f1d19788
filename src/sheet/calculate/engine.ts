import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { type Compiled, type Context, type CustomFunctions, NotSupported, Reference, type Value, type Workbook, compile, evaluate } from '../evaluate';
import { raise } from '../evaluate/errors';
import { TOO_DEEP } from '../evaluate/evaluate';
import type { BookCell, BookSheet } from './cells';
import type { BookNames } from './names';
import { referencesIn } from './references-in';
import { keep, passedOn } from './results';
import { templateOf } from './template';

/** Thrown through a formula that needs a cell which is not computed yet and lies too deep to be computed on the way. */
class Wanted {
  constructor(readonly cell: BookCell) {}
}

/** Formulas computed within one another before the rest is put off: keeps the call stack flat however long a chain is. */
const NESTED_FORMULAS = 40;
/** Tries of one formula before the cells it names are computed on their own. */
const PATIENCE = 8;
const NAMED_IN_CYCLE = 6;

interface Ready {
  readonly compiled: Compiled;
  readonly writtenFor: { readonly row: number; readonly column: number } | undefined;
}

export interface EngineParts {
  readonly sheets: ReadonlyMap<string, BookSheet>;
  readonly names: BookNames;
  readonly functions: CustomFunctions;
  /** A reason for which no formula of the workbook can be worked out here, or not this one. */
  readonly refusalOf: (formula: string) => string | undefined;
  /** Whether a row is out of sight, and by what. */
  readonly hiddenRow: (sheet: string, row: number) => 'filter' | 'hand' | undefined;
  readonly now?: Date;
}

/** Evaluates formulas of a book: against stored values, or all anew, each once and after the cells it reads. */
export class Engine {
  private readonly ready = new Map<string, Ready>();
  /** Cells put off, each until the one after it is computed; the last is at work, and on `path` those it computes on the way. */
  private waiting: BookCell[] = [];
  private path: BookCell[] = [];
  private readonly running = new Set<BookCell>();
  private asking: BookCell | undefined;
  private nested = 0;
  private round = 0;
  private readonly live: Workbook;
  private readonly stored: Workbook;
  private lastName = '';
  private lastSheet: BookSheet | undefined;

  constructor(private readonly parts: EngineParts) {
    this.live = this.view((cell) => this.current(cell));
    this.stored = this.view((cell) => this.storedValue(cell));
  }

  /** Computes every cell given, and with them whatever they read. */
  recalculate(cells: Iterable<BookCell>): void {
    this.round++;
    for (const cell of cells) if (cell.round !== this.round) this.settle(cell);
  }

  /** Value of one formula by the stored values of all cells it reads. */
  againstStored(cell: BookCell): Cell | Matrix {
    this.asking = cell;
    return this.evaluated(cell, this.stored);
  }

  /** Value of any formula as if it stood in a cell, by the values now at hand. */
  evaluateText(formula: string, sheet: string, row: number, column: number): Cell | Matrix {
    return evaluate(compile(formula), this.context(this.view(({ value }) => value), sheet, row, column));
  }

  private view(valueOf: (cell: BookCell) => Cell): Workbook {
    const { names } = this.parts;
    return {
      get: (sheet, row, column) => {
        const found = this.sheet(sheet);
        if (!found) return noSheet(sheet);
        const cell = found.at(row, column);
        return cell === undefined ? null : valueOf(cell);
      },
      used: (sheet) => {
        const found = this.sheet(sheet);
        return found ? [found.lastRow, found.lastColumn] : noSheet(sheet);
      },
      named: (context, name) => names.named(context, name),
      structured: (context, text) => names.structured(context, text),
      spill: (reference) => this.spill(reference),
      formula: (sheet, row, column) => this.sheet(sheet)?.at(row, column)?.formula ?? undefined,
      hidden: this.parts.hiddenRow,
    };
  }

  private sheet(name: string): BookSheet | undefined {
    if (name !== this.lastName || !this.lastSheet) {
      this.lastSheet = this.parts.sheets.get(name.toLowerCase());
      this.lastName = name;
    }
    return this.lastSheet;
  }

  private spill({ workbook, sheet, top, left }: Reference): Value {
    const cell = this.sheet(sheet)?.at(top, left);
    if (!cell?.array) return raise('#REF!', 'the cell before # holds no formula that spills');
    const { array } = cell;
    return new Reference(workbook, sheet, array.top, array.left, array.bottom, array.right);
  }

  /** Computes a cell and all that it turns out to need. */
  private settle(first: BookCell): void {
    const goals = [first];
    const taken = new Set<BookCell>();
    while (goals.length > 0) {
      const wide = this.workOff(goals.at(-1)!, taken);
      if (!wide) goals.pop();
      else {
        taken.add(wide);
        goals.push(...this.namedCells(wide));
      }
    }
  }

  /**
   * By a list instead of calls within calls. Gives up for a formula that has been tried often, as a sum over many long
   * chains is: what it names is then computed first, with nothing waiting, so that no order of work looks like a circle.
   */
  private workOff(goal: BookCell, taken: ReadonlySet<BookCell>): BookCell | undefined {
    const tries = new Map<BookCell, number>();
    this.running.clear();
    this.waiting = [goal];
    while (this.waiting.length > 0) {
      const cell = this.waiting.at(-1)!;
      if (cell.round === this.round) {
        this.waiting.pop();
        continue;
      }
      const tried = (tries.get(cell) ?? 0) + 1;
      if (tried > PATIENCE && !taken.has(cell)) return cell;
      tries.set(cell, tried);
      this.nested = 0;
      this.path = [];
      try {
        this.compute(cell);
        this.waiting.pop();
      } catch (thrown) {
        if (!(thrown instanceof Wanted)) throw thrown;
        this.waiting.push(thrown.cell);
      }
    }
    return undefined;
  }

  /** Cells not computed yet that the formula of a cell names by address, table or name. */
  private namedCells(cell: BookCell): BookCell[] {
    const found: BookCell[] = [];
    const context = this.context(this.stored, cell.sheet.name, cell.row, cell.column);
    for (const { sheet, top, left, bottom, right } of referencesIn(cell.formula!, context)) {
      this.sheet(sheet)?.each(top, left, bottom, right, (each) => {
        const source = each.owner ?? each;
        if (source.formula !== null && source.round !== this.round && source !== cell) found.push(source);
      });
    }
    return found;
  }

  private current(cell: BookCell): Cell {
    const source = cell.owner ?? cell;
    if (source.formula !== null && source.round !== this.round) {
      if (this.running.has(source)) return this.cycle(source);
      if (this.nested >= NESTED_FORMULAS) throw new Wanted(source);
      this.compute(source);
    }
    return passedOn(cell.value, cell);
  }

  private compute(cell: BookCell): void {
    this.path.push(cell);
    this.running.add(cell);
    this.nested++;
    try {
      const result = this.evaluated(cell, this.live);
      // A formula that is deep in itself gets the whole stack in a second try.
      if (this.nested > 1 && result instanceof NotSupported && result.message === TOO_DEEP) throw new Wanted(cell);
      keep(cell, result, this.round);
      this.running.delete(cell);
    } catch (thrown) {
      if (!(thrown instanceof Wanted) || this.nested > 1) this.running.delete(cell);
      throw thrown;
    } finally {
      this.nested--;
      this.path.pop();
    }
  }

  /** A formula without a stored value was never computed: its blank must not pass for one. */
  private storedValue(cell: BookCell): Cell {
    const where = `${cell.sheet.name}!${cell.address}`;
    if (cell === this.asking) return new NotSupported('#CYCLE!', `circular reference: ${where} reads itself`);
    if (cell.stored === null && cell.formula !== null) return new NotSupported('#UNSUPPORTED!', `the file holds no value of ${where}`);
    return passedOn(cell.stored, cell);
  }

  private cycle(cell: BookCell): CellError {
    const all = [...this.waiting.slice(0, -1), ...this.path];
    const around = all.slice(Math.max(all.lastIndexOf(cell), 0)).map(({ sheet, address }) => `${sheet.name}!${address}`);
    const shown = around.length > NAMED_IN_CYCLE ? [...around.slice(0, NAMED_IN_CYCLE), '…'] : around;
    return new NotSupported('#CYCLE!', `circular reference: ${[...shown, around[0]].join(' → ')}`);
  }

  private evaluated(cell: BookCell, workbook: Workbook): Cell | Matrix {
    const refusal = this.parts.refusalOf(cell.formula!);
    if (refusal !== undefined) return new NotSupported('#UNSUPPORTED!', refusal);
    const { compiled, writtenFor } = this.compiled(cell);
    return evaluate(compiled, this.context(workbook, cell.sheet.name, cell.row, cell.column, writtenFor));
  }

  private context(workbook: Workbook, sheet: string, row: number, column: number, writtenFor?: Ready['writtenFor']): Context {
    const { functions, now } = this.parts;
    return { workbook, functions, sheet, row, column, writtenFor, now };
  }

  /** Cells that a formula was filled into share one compilation. */
  private compiled({ formula, array, row, column }: BookCell): Ready {
    const oneCell = array === undefined;
    const { key, movable } = templateOf(formula!, row, column);
    const known = oneCell ? key : `{${key}`;
    let ready = this.ready.get(known);
    if (!ready) this.ready.set(known, (ready = { compiled: compile(formula!, { oneCell }), writtenFor: movable ? { row, column } : undefined }));
    return ready;
  }
}

const noSheet = (name: string): CellError => new CellError('#REF!', `there is no sheet ${name}`);
