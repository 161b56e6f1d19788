import { type Box, addressOf, parseBox } from '../../src/sheet/xlsx/address';

/**
 * A workbook behind the part of Office.js that sheets and charts are made with. It keeps cells and refuses what Excel refuses:
 * blocks of another size than their range, tables over blank or repeated headings or over merged cells, structured references to
 * tables that are not there, and reading what was not loaded.
 */
export interface RecordedSheet {
  readonly cells: Map<string, unknown>;
  readonly formats: Map<string, string>;
  readonly tables: { name: string; box: Box }[];
  readonly merges: Box[];
  /** Every other property that was set and call that was made, by its path. */
  readonly did: string[];
  readonly charts: { range: string; did: string[] }[];
}

/** Takes any property and call and notes it. */
function noted(did: string[], path: string): unknown {
  return new Proxy(() => undefined, {
    get: (_target, name) => (name === 'then' || typeof name === 'symbol' ? undefined : noted(did, `${path}.${name}`)),
    set: (_target, name, value) => Boolean(did.push(`${path}.${String(name)}=${JSON.stringify(value)}`)),
    apply: (_target, _this, args: unknown[]) => {
      did.push(`${path}(${args.map((each) => (each instanceof RecordedRange ? each.address : JSON.stringify(each))).join(',')})`);
      return noted(did, `${path}()`);
    },
  });
}

const cross = (a: Box, b: Box): boolean => a.top <= b.bottom && b.top <= a.bottom && a.left <= b.right && b.left <= a.right;

class RecordedRange {
  constructor(private readonly excel: NotingExcel, private readonly sheet: RecordedSheet, readonly address: string, readonly box: Box) {}
  get format(): unknown {
    return noted(this.sheet.did, `${this.address}.format`);
  }
  get dataValidation(): unknown {
    return noted(this.sheet.did, `${this.address}.dataValidation`);
  }
  get conditionalFormats(): unknown {
    return noted(this.sheet.did, `${this.address}.conditionalFormats`);
  }
  getCell(row: number, column: number): RecordedRange {
    const [top, left] = [this.box.top + row, this.box.left + column];
    return new RecordedRange(this.excel, this.sheet, addressOf(top, left), { top, left, bottom: top, right: left });
  }
  private put(rows: unknown[][], into: (place: string, value: unknown) => void): void {
    const { top, left, bottom, right } = this.box;
    if (rows.length !== bottom - top + 1 || rows.some((row) => row.length !== right - left + 1)) throw new Error(`InvalidArgument: ${rows.length} rows for ${this.address}`);
    rows.forEach((row, r) => row.forEach((value, c) => into(addressOf(top + r, left + c), value)));
  }
  set values(rows: unknown[][]) {
    this.put(rows, (place, value) => this.sheet.cells.set(place, value));
  }
  set numberFormat(rows: unknown[][]) {
    this.put(rows, (place, value) => this.sheet.formats.set(place, String(value)));
  }
  set formulas(rows: unknown[][]) {
    this.put(rows, (place, value) => this.sheet.cells.set(place, this.excel.sound(String(value))));
  }
  copyFrom(source: RecordedRange, kind: string): void {
    if (kind !== 'Formulas') throw new Error(`not recorded: ${kind}`);
    const formula = this.sheet.cells.get(source.address);
    for (let row = this.box.top; row <= this.box.bottom; row += 1) for (let column = this.box.left; column <= this.box.right; column += 1) this.sheet.cells.set(addressOf(row, column), formula);
  }
  merge(): void {
    if (this.sheet.tables.some(({ box }) => cross(box, this.box))) throw new Error(`InvalidOperation: ${this.address} crosses a table`);
    this.sheet.merges.push(this.box);
  }
}

export class NotingExcel {
  readonly sheets = new Map<string, RecordedSheet>();
  readonly names = new Map<string, string>();
  private readonly settling: (() => void)[] = [];

  constructor(sheets: readonly string[] = ['Sheet1']) {
    for (const name of sheets) this.addSheet(name);
  }

  private addSheet(name: string): RecordedSheet {
    const sheet: RecordedSheet = { cells: new Map(), formats: new Map(), tables: [], merges: [], did: [], charts: [] };
    this.sheets.set(name, sheet);
    return sheet;
  }

  /** A formula whose structured references name tables that are there. */
  sound(formula: string): string {
    if (!formula.startsWith('=')) throw new Error(`no formula: ${formula}`);
    const tables = [...this.sheets.values()].flatMap((sheet) => sheet.tables.map(({ name }) => name));
    for (const [, table] of formula.replace(/"[^"]*"/g, '').matchAll(/(?<![\w\]])([A-Za-z]\w*)\[/g)) if (!tables.includes(table!)) throw new Error(`InvalidArgument: no table ${table} for ${formula}`);
    return formula;
  }

  private collection(items: () => { name: string }[], more: object): object {
    let loaded: { name: string }[] | undefined;
    let wanted = false;
    this.settling.push(() => {
      if (wanted) loaded = items();
    });
    return Object.defineProperty({ load: () => (wanted = true), ...more }, 'items', { get: () => {
      if (!loaded) throw new Error('PropertyNotLoaded: items');
      return loaded;
    } });
  }

  private worksheet(name: string): object {
    const sheet = this.sheets.get(name);
    if (!sheet) return { isNullObject: true, load: () => undefined };
    const range = (address: string): RecordedRange => {
      const box = parseBox(address);
      if (!box) throw new Error(`InvalidArgument: ${address}`);
      return new RecordedRange(this, sheet, address, box);
    };
    return {
      isNullObject: false, name, load: () => undefined,
      getRange: range,
      getRangeByIndexes: (row: number, column: number, rows: number, columns: number) => range(`${addressOf(row, column)}:${addressOf(row + rows - 1, column + columns - 1)}`),
      activate: () => sheet.did.push('activate()'),
      freezePanes: noted(sheet.did, 'freezePanes'), pageLayout: noted(sheet.did, 'pageLayout'),
      tables: { add: (address: string, headers: boolean) => this.addTable(sheet, range(address), headers) },
      charts: { add: (_type: string, source: RecordedRange) => {
        const did: string[] = [];
        sheet.charts.push({ range: source.address, did });
        return new Proxy(noted(did, 'chart') as object, { get: (target, key) => (key === 'series'
          ? { load: () => undefined, items: [], add: (called: string) => noted(did, `series ${called}`) }
          : (target as Record<string | symbol, unknown>)[key]) });
      } },
    };
  }

  private addTable(sheet: RecordedSheet, { box, address }: RecordedRange, headers: boolean): { name: string } {
    const headings = Array.from({ length: box.right - box.left + 1 }, (_, i) => sheet.cells.get(addressOf(box.top, box.left + i)));
    if (!headers || headings.some((heading) => typeof heading !== 'string' || heading === '')) throw new Error(`InvalidArgument: blank heading in ${address}`);
    if (new Set(headings.map((heading) => String(heading).toLowerCase())).size !== headings.length) throw new Error(`InvalidArgument: a heading comes twice in ${address}`);
    if (sheet.merges.some((merged) => cross(merged, box))) throw new Error(`InvalidOperation: merged cells in ${address}`);
    if (sheet.tables.some((other) => cross(other.box, box))) throw new Error(`InvalidOperation: tables cross in ${address}`);
    const table = { name: '', box };
    sheet.tables.push(table);
    return table;
  }

  /** The globals that the host's modules use. */
  globals(): { Excel: object; Office: object } {
    const context = {
      sync: async () => this.settling.forEach((settle) => settle()),
      workbook: {
        worksheets: this.collection(() => [...this.sheets.keys()].map((name) => ({ name })), {
          add: (name: string) => {
            if (this.sheets.has(name)) throw new Error('ItemAlreadyExists');
            this.addSheet(name);
            return this.worksheet(name);
          },
          getItem: (name: string) => this.worksheet(name), getItemOrNullObject: (name: string) => this.worksheet(name),
        }),
        tables: this.collection(() => [...this.sheets.values()].flatMap((sheet) => sheet.tables), {}),
        names: this.collection(() => [...this.names.keys()].map((name) => ({ name })), {
          add: (name: string, { address }: RecordedRange) => {
            if (!/^[A-Za-z_]\w*$/.test(name) || parseBox(name)) throw new Error(`InvalidArgument: ${name}`);
            this.names.set(name, address);
          },
        }),
        protection: { load: () => undefined, protected: false },
      },
    };
    return {
      Excel: { run: async (first: unknown, second?: unknown) => ((second ?? first) as (given: typeof context) => Promise<unknown>)(context) },
      Office: { context: { requirements: { isSetSupported: () => true } } },
    };
  }
}
