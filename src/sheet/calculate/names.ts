import { type Context, Reference, type Value } from '../evaluate';
import { raise } from '../evaluate/errors';
import { compile, evaluateValue } from '../evaluate/evaluate';
import { SharedFormula } from '../formula/shift';
import { type Box, inBox } from '../xlsx/address';
import { type SheetTable, structuredBox } from './structured';

const SHEET_AND_NAME = /^(?:'((?:[^']|'')+)'!|([^!]+)!)?(.*)$/s;
const NAMES_IN_NAMES = 32;
const OF_ROW = /@|this row/i;

/** A name that a workbook or, where `sheet` is given, one of its sheets defines. The text has no leading =. */
export interface SheetName {
  readonly name: string;
  readonly text: string;
  readonly sheet?: string | undefined;
}

/** Defined names and tables of a book as formulas refer to them. */
export class BookNames {
  private readonly ofWorkbook = new Map<string, SheetName>();
  private readonly ofSheets = new Map<string, SheetName>();
  private readonly tables: readonly SheetTable[];
  private readonly tableNames: ReadonlySet<string>;
  private readonly relative = new Map<SheetName, SharedFormula>();
  private readonly compiled = new Map<string, ReturnType<typeof compile>>();
  private readonly boxes = new Map<string, ReturnType<typeof structuredBox>>();
  private readonly rowPlaces = new Map<string, Box & { readonly sheet: string }>();
  private depth = 0;

  constructor({ names, tables }: { readonly names: readonly SheetName[]; readonly tables: readonly SheetTable[] }) {
    for (const name of names) {
      if (name.sheet === undefined) this.ofWorkbook.set(name.name.toLowerCase(), name);
      else this.ofSheets.set(`${name.sheet.toLowerCase()}!${name.name.toLowerCase()}`, name);
    }
    this.tables = tables;
    this.tableNames = new Set(tables.map((table) => table.name.toLowerCase()));
  }

  /** Value of a name seen from a cell: the sheet's own before the workbook's, then a table's data. */
  named(context: Context, written: string): Value {
    const [, quotedSheet, plainSheet, name = written] = SHEET_AND_NAME.exec(written) ?? [];
    const key = name.toLowerCase();
    const sheet = (quotedSheet?.replace(/''/g, "'") ?? plainSheet ?? context.sheet).toLowerCase();
    const found = this.ofSheets.get(`${sheet}!${key}`) ?? this.ofWorkbook.get(key);
    if (!found) return this.tableNames.has(key) ? this.structured(context, `${name}[]`) : raise('#NAME?', `${written} is not defined in this workbook`);
    if (this.depth >= NAMES_IN_NAMES) return raise('#NAME?', `${written} is defined by itself`);
    this.depth++;
    try {
      const place = { ...context, writtenFor: undefined };
      return evaluateValue(this.formula(found, context), place);
    } finally {
      this.depth--;
    }
  }

  structured(context: Context, text: string): Value {
    const rows = this.rowPlaces.get(text);
    if (rows && context.row >= rows.top && context.row <= rows.bottom) return new Reference(context.workbook, rows.sheet, context.row, rows.left, context.row, rows.right);
    const sameEverywhere = !text.startsWith('[') && !OF_ROW.test(text);
    let place = sameEverywhere ? this.boxes.get(text) : undefined;
    if (!place) place = structuredBox(text, this.tables, context);
    if (sameEverywhere) this.boxes.set(text, place);
    const { sheet, box } = place;
    if (!sameEverywhere && box.top === context.row && box.bottom === context.row) this.keepForRows(text, place, context.row);
    return new Reference(context.workbook, sheet, box.top, box.left, box.bottom, box.right);
  }

  /** What `table[[#This Row],[column]]` means in one row of the table's data it means in all of them. */
  private keepForRows(text: string, { sheet, box: { left, right } }: ReturnType<typeof structuredBox>, row: number): void {
    const table = text.startsWith('[') ? undefined : this.tables.find((each) => each.sheet === sheet && inBox(each.box, row, left));
    const [top, bottom] = table ? [table.box.top + table.headerRows, table.box.bottom - table.totalsRows] : [0, -1];
    if (row >= top && row <= bottom) this.rowPlaces.set(text, { sheet, left, right, top, bottom });
  }

  /** References of a name without $ are meant as seen from A1, and move with the cell that uses it. */
  private formula(name: SheetName, { row, column }: Context): ReturnType<typeof compile> {
    let shared = this.relative.get(name);
    if (!shared) this.relative.set(name, (shared = new SharedFormula(name.text, 0, 0)));
    const text = shared.isRelative ? shared.at(row, column) : name.text;
    let ready = this.compiled.get(text);
    if (!ready) this.compiled.set(text, (ready = compile(text)));
    return ready;
  }
}
