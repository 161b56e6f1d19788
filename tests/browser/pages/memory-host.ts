import { type Cell, CellError, type ErrorCode, type Matrix } from '../../../src/functions/kernel/cell';
import type { ChartPlan } from '../../../src/pane/chart-plan';
import { type CellEdit, DONE, type Done, type FormulaCell, type PaneHost, type Selection, refused } from '../../../src/pane/host';
import type { SheetPlan } from '../../../src/pane/sheet-plan';
import { catalogue } from '../../../src/sheet/catalogue';
import { callsInFormula } from '../../../src/sheet/explain/calls-in-formula';
import { Tracer } from '../../../src/sheet/explain/trace';
import { addressOf, parseAddress, parseBox } from '../../../src/sheet/xlsx/address';
import { type FakeSheets, fakeSource } from '../../support/fake-sheets';

/** A workbook in memory behind the pane: formulas that are written get the value that our own evaluator gives. */
export class MemoryHost implements PaneHost {
  readonly traits = { blankArrivesAsZero: false };
  source;
  readonly formulas = new Map<string, string>();
  readonly inserted: SheetPlan[] = [];
  readonly charts: ChartPlan[] = [];
  // The pane derives its own host from this one, so that what changes stands inside objects.
  readonly seen = { shown: '' };
  /** Words with which the next requests are refused. */
  refusal = '';
  private listener: ((selection: Selection) => void) | undefined;
  private selected: Selection = { kind: 'nothing' };

  constructor(private readonly book: FakeSheets) {
    this.source = fakeSource(book);
  }

  watch(listener: (selection: Selection) => void): () => void {
    this.listener = listener;
    listener(this.selected);
    return () => (this.listener = undefined);
  }

  at(sheet: string, range: string): void {
    const box = parseBox(range)!;
    const address = addressOf(box.top, box.left);
    this.selected = {
      kind: 'cell', sheet, address, row: box.top, column: box.left, formula: this.formulas.get(`${sheet}!${address}`) ?? '', value: this.book.cells[sheet]?.[address] ?? null,
      ...(range === address ? {} : { within: range }),
    };
    this.listener?.(this.selected);
  }

  async sheets(): Promise<string[]> {
    return Object.keys(this.book.cells);
  }
  async read(sheet: string, range: string): Promise<Matrix> {
    const box = parseBox(range);
    if (!box || !this.book.cells[sheet]) throw new RangeError(`${sheet}!${range} is no range of this workbook`);
    return this.source.cells(sheet, box);
  }
  async formulaCells(sheet?: string): Promise<FormulaCell[]> {
    return [...this.formulas].flatMap(([place, formula]) => {
      const [name, address] = place.split('!') as [string, string];
      return sheet !== undefined && sheet !== name ? [] : [{ sheet: name, address, ...parseAddress(address)!, formula, value: this.book.cells[name]![address] ?? null }];
    });
  }
  async select(sheet: string, range: string): Promise<Done> {
    this.seen.shown = `${sheet}!${range}`;
    return DONE;
  }
  async write(edits: readonly CellEdit[]): Promise<Done> {
    if (this.refusal !== '') return refused(this.refusal);
    for (const edit of edits) {
      if ('value' in edit) this.book.cells[edit.sheet]![edit.address] = edit.value;
    }
    for (const edit of edits) if ('formula' in edit) await this.calculate(edit.sheet, edit.address, edit.formula);
    return DONE;
  }
  async calculate(sheet: string, address: string, formula: string): Promise<void> {
    const { row, column } = parseAddress(address)!;
    const cell = { sheet, row, column, formula, value: null };
    const { value } = await new Tracer(catalogue, callsInFormula(formula, catalogue), cell, this.source).trace({ traits: this.traits, blanksAsZero: false });
    this.formulas.set(`${sheet}!${address}`, formula);
    this.book.cells[sheet]![address] = Array.isArray(value) ? value[0]![0]! : value;
  }
  async insertSheets(plans: readonly SheetPlan[]): Promise<Done> {
    if (this.refusal !== '') return { done: false, words: this.refusal };
    this.inserted.push(...plans);
    return DONE;
  }
  async chart(plan: ChartPlan): Promise<Done> {
    if (this.refusal !== '') return refused(this.refusal);
    this.charts.push(plan);
    return DONE;
  }
  async file(): Promise<Uint8Array> {
    return new Uint8Array();
  }
  cells(sheet: string): Record<string, Cell> {
    return this.book.cells[sheet] ?? {};
  }
}

/** Errors cross from the test as { error: code }. */
export const revived = <T>(value: T): T => {
  if (typeof value !== 'object' || value === null) return value;
  if ('error' in value) return new CellError(value.error as ErrorCode) as T;
  if (Array.isArray(value)) return value.map(revived) as T;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, revived(each)])) as T;
};
