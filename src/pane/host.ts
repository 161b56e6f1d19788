import type { HostTraits } from '../functions/kernel/call';
import type { Cell, Matrix } from '../functions/kernel/cell';
import type { ExplainedCell, ValueSource } from '../sheet/explain/explanation';
import type { ChartPlan } from './chart-plan';
import type { SheetPlan } from './sheet-plan';

/** What is selected in the sheet. */
export type Selection =
  | { readonly kind: 'nothing' }
  /** The active cell; `within` names the whole selection where it is larger, `spilledFrom` the cell that holds its formula. */
  | ({ readonly kind: 'cell'; readonly address: string; readonly within?: string; readonly spilledFrom?: string } & ExplainedCell)
  /** The host cannot say what is selected; the words are for the reader. */
  | { readonly kind: 'trouble'; readonly words: string };

/** What became of something that was asked of the host. The words say why it was not done, and go to the reader as they are. */
export type Done = { readonly done: true } | Refused;
export interface Refused {
  readonly done: false;
  readonly words: string;
  /** What can be done in its place. */
  readonly instead?: { readonly label: string; act(): void };
}
export const DONE: Done = { done: true };
export const refused = (words: string): Refused => ({ done: false, words });

/** What a cell is to hold: a formula as it is typed, with its =, or a value. A text value stays a text, whatever it looks like. */
export type CellEdit = { readonly sheet: string; readonly address: string } & ({ readonly formula: string } | { readonly value: number | string | boolean | null });

/** A cell with a formula; rows and columns count from 0. */
export interface FormulaCell {
  readonly sheet: string;
  readonly address: string;
  readonly row: number;
  readonly column: number;
  /** With its =, as the host shows it. */
  readonly formula: string;
  readonly value: Cell;
}

/**
 * What the pane needs of the program it stands beside. Nothing here throws for what a reader can do: refusals are words.
 * Reading may throw where the host is busy; the pane says so and goes on.
 */
export interface PaneHost {
  readonly traits: HostTraits;
  /** Cells, names and tables of the open workbook. */
  readonly source: ValueSource;
  /** Tells what is selected, at once and after every change of selection or contents; gives a function that ends it. */
  watch(listener: (selection: Selection) => void): () => void;
  /** Names of the sheets with cells, in order; hidden ones too. */
  sheets(): Promise<readonly string[]>;
  /** Rows of a range, "B2:C9"; null where a cell is blank. Throws RangeError for what is no range or no sheet. */
  read(sheet: string, range: string): Promise<Matrix>;
  /** All cells with a formula: of one sheet, or of the workbook. */
  formulaCells(sheet?: string): Promise<readonly FormulaCell[]>;
  /** Shows a cell or range and selects it. */
  select(sheet: string, range: string): Promise<Done>;
  /** Writes cells, all or none, as one step of undo where the host can. */
  write(edits: readonly CellEdit[]): Promise<Done>;
  /** Adds new sheets, all or none. */
  insertSheets(plans: readonly SheetPlan[]): Promise<Done>;
  /** Draws a chart in a sheet, as one of the host's own. */
  chart(plan: ChartPlan): Promise<Done>;
  /** The workbook as a file, as it stands now. */
  file(): Promise<Uint8Array | Refused>;
}
