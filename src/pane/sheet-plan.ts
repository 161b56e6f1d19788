/** A new sheet as a plan: a host turns it into cells. Addresses are of that sheet; formulas are typed ones with their =. */
export interface SheetPlan {
  readonly name: string;
  /** Widths of columns from A on, in characters. */
  readonly widths: readonly number[];
  readonly cells: readonly PlannedCell[];
  /** Heights of rows in points, by number of the row from 1. */
  readonly heights?: Readonly<Record<number, number>>;
  readonly merges?: readonly string[];
  /** Ranges with their heading row that become tables. Formulas in their rows may use structured references. */
  readonly tables?: readonly { readonly name: string; readonly range: string }[];
  /** Names for cells of this sheet. */
  readonly names?: readonly { readonly name: string; readonly range: string }[];
  readonly validations?: readonly Validation[];
  /** Ranges of verdicts, whose FAIL, not shown and errors are marked. */
  readonly verdicts?: readonly string[];
  /** Rows and columns that stay in sight. */
  readonly freeze?: { readonly rows: number; readonly columns: number };
  readonly print?: PrintSetUp;
}

/** Looks that our sheets know; a host knows what they are. */
export type Look = 'title' | 'label' | 'plain' | 'heading' | 'unit' | 'input' | 'example' | 'worked' | 'words' | 'carried' | 'remark';

export interface PlannedCell {
  /** One cell, or a range whose cells are all alike; a formula is then the one of its first cell, filled on. */
  readonly range: string;
  readonly value?: number | string | boolean;
  readonly formula?: string;
  readonly look?: Look;
  /** Number format, in Excel's code. */
  readonly format?: string;
}

export interface Validation {
  readonly range: string;
  readonly allows: { readonly list: readonly (string | number)[] } | { readonly listFrom: string } | { readonly between: readonly [least: number, greatest: number]; readonly whole?: boolean };
  /** Shown where something else is typed. */
  readonly message: string;
}

export interface PrintSetUp {
  readonly paper: 'A4' | 'A3';
  readonly orientation: 'portrait' | 'landscape';
  readonly area: string;
  /** Rows repeated on every page, from 1. */
  readonly titleRows?: readonly [first: number, last: number];
  readonly header?: { readonly left?: string; readonly right?: string };
}
