import type { Cell } from '../../../src/functions/kernel/cell';
import { addressOf, boxText, parseAddress, parseBox, type Box } from '../../../src/sheet/xlsx/address';

/**
 * Stands in for Microsoft's script on the page: a workbook of a few cells behind the same calls, as strict as the
 * real one. A property that was not loaded and synced throws; a missing item fails the sync; only values and formulas of
 * ranges are writable, in blocks of the range's size, and they are there after the sync.
 */

interface FakeCell {
  value: Cell | { error: string };
  formula?: string;
  spills?: string;
}
export interface FakeWorkbook {
  sheets: Record<string, Record<string, FakeCell>>;
  names?: { name: string; formula: string; sheet?: string }[];
  tables?: { name: string; sheet: string; at: string; columns: string[] }[];
  hidden?: string[];
  /** Protected sheets with the cells in them that are not locked. */
  unlocked?: Record<string, string[]>;
  /** The file, as numbers of its bytes. */
  file?: number[];
}

type Facts = Record<string, unknown>;
class OfficeError extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

let workbook: FakeWorkbook = { sheets: { Sheet1: {} } };
let selection = { sheet: 'Sheet1', areas: ['A1'] };
/** What the next batches fail with. */
let failing: string | undefined;
let syncs = 0;
/** How batches were run that wrote something. */
const wrote: { options: unknown; addresses: string[] }[] = [];
const listeners = { selection: new Set<() => void>(), change: new Set<() => void>() };

class Context {
  readonly objects: (() => void)[] = [];
  /** Changes that wait for the sync. */
  readonly changes: (() => void)[] = [];
  readonly written: string[] = [];
  async sync(): Promise<void> {
    syncs += 1;
    await Promise.resolve();
    if (failing !== undefined) throw new OfficeError(failing);
    const changes = this.changes.splice(0);
    for (const change of changes) change();
    for (const settle of this.objects) settle();
    if (changes.length > 0) listeners.change.forEach((listener) => listener());
  }
  readonly workbook = officeObject(this, () => ({}), {
    getActiveCell: () => range(this, selection.sheet, parseBox(firstCell(selection.areas[0]!))!),
    getSelectedRanges: () => officeObject(this, () => ({ address: selection.areas.map((area) => `${sheetText(selection.sheet)}!${area}`).join(',') })),
    names: collection(this, () => (workbook.names ?? []).filter(({ sheet }) => sheet === undefined)),
    tables: collection(this, () => (workbook.tables ?? []).map(({ name }) => ({ name, showHeaders: true, showTotals: false })), (facts) => tableParts(this, String(facts['name']))),
    worksheets: collection(this, () => Object.keys(workbook.sheets).map((name) => ({ name })), (facts) => sheetParts(this, String(facts['name'])), {
      getItem: (name: string) => worksheet(this, name, true),
      getItemOrNullObject: (name: string) => worksheet(this, name, false),
      onChanged: handlers(this, listeners.change),
      onCalculated: handlers(this, listeners.change),
    }),
    onSelectionChanged: handlers(this, listeners.selection),
  });
}

const firstCell = (area: string): string => area.split(':')[0]!;
const sheetText = (sheet: string): string => (/^\w+$/.test(sheet) ? sheet : `'${sheet.replace(/'/g, "''")}'`);
const handlers = (context: Context, list: Set<() => void>) => ({
  add: (listener: () => void) => {
    list.add(listener);
    return { context, remove: () => list.delete(listener) };
  },
});

/** An object whose facts can be read only after load and sync. `undefined` facts are a null object; with `needed` they fail the sync. */
function officeObject(context: Context, facts: () => Facts | undefined, parts: Facts = {}, needed = false, write?: (name: string, value: unknown) => boolean): unknown {
  const wanted = new Set<string>();
  const loaded = new Map<string, unknown>();
  let isNull: boolean | undefined;
  context.objects.push(() => {
    const now = facts();
    if (!now && needed) throw new OfficeError('ItemNotFound');
    isNull = now === undefined;
    for (const name of wanted) loaded.set(name, now?.[name]);
  });
  const load = (text: string): void => text.split(',').forEach((name) => wanted.add(name.trim()));
  return new Proxy({}, {
    get: (_target, name) => {
      if (name === 'load') return load;
      if (name === 'then' || typeof name === 'symbol') return undefined;
      if (name in parts) return parts[name];
      if (name === 'isNullObject' && isNull !== undefined) return isNull;
      if (loaded.has(name) && !isNull) return loaded.get(name);
      throw new OfficeError(`PropertyNotLoaded: ${name}`);
    },
    set: (_target, name, value) => {
      if (write?.(String(name), value)) return true;
      throw new Error(`written: ${String(name)}`);
    },
  });
}

function collection(context: Context, facts: () => Facts[], parts: (facts: Facts) => Facts = () => ({}), own: Facts = {}): unknown {
  const wanted = new Set<string>();
  let items: unknown[] | undefined;
  context.objects.push(() => {
    if (wanted.size === 0 || items) return;
    items = facts().map((each) => {
      for (const name of wanted) if (!(name in each)) throw new OfficeError(`InvalidProperty: ${name}`);
      return Object.assign(Object.create(null), each, parts(each));
    });
  });
  return {
    ...own,
    load: (text: string) => text.split(',').forEach((name) => wanted.add(name.trim().replace(/^items\//, ''))),
    get items() {
      if (!items) throw new OfficeError('PropertyNotLoaded: items');
      return items;
    },
  };
}

const cellsOf = (sheet: string): Record<string, FakeCell> | undefined => {
  const found = Object.keys(workbook.sheets).find((each) => each.toLowerCase() === sheet.toLowerCase());
  return found === undefined ? undefined : workbook.sheets[found];
};

const sheetParts = (context: Context, name: string): Facts => ({
  names: collection(context, () => (workbook.names ?? []).filter(({ sheet }) => sheet === name)),
});

function worksheet(context: Context, name: string, needed: boolean): unknown {
  return officeObject(context, () => (cellsOf(name) ? { name, visibility: workbook.hidden?.includes(name) ? 'Hidden' : 'Visible' } : undefined), {
    activate: () => context.changes.push(() => void (selection = { sheet: name, areas: ['A1'] })),
    getRange: (address: string) => range(context, name, parseBox(address)),
    protection: officeObject(context, () => ({ protected: workbook.unlocked?.[name] !== undefined })),
    getUsedRangeOrNullObject: () => range(context, name, usedBox(name)),
    getRangeByIndexes: (top: number, left: number, rows: number, columns: number) => range(context, name, { top, left, bottom: top + rows - 1, right: left + columns - 1 }),
  }, needed);
}

function usedBox(sheet: string): Box | undefined {
  const places = Object.keys(cellsOf(sheet) ?? {}).map((address) => parseAddress(address)!);
  if (places.length === 0) return undefined;
  const rows = places.map(({ row }) => row);
  const columns = places.map(({ column }) => column);
  return { top: Math.min(...rows), left: Math.min(...columns), bottom: Math.max(...rows), right: Math.max(...columns) };
}

const typeOf = (value: FakeCell['value']): string =>
  value === null ? 'Empty' : typeof value === 'object' ? 'Error' : typeof value === 'number' ? 'Double' : typeof value === 'boolean' ? 'Boolean' : 'String';
const shown = (value: FakeCell['value']): unknown => (value === null ? '' : typeof value === 'object' && 'error' in value ? value.error : value);

function range(context: Context, sheet: string, box: Box | undefined): unknown {
  const facts = (): Facts | undefined => {
    if (!box || !cellsOf(sheet)) return undefined;
    const rows = Array.from({ length: box.bottom - box.top + 1 }, (_, r) => Array.from({ length: box.right - box.left + 1 }, (__, c) => cellsOf(sheet)![addressOf(box.top + r, box.left + c)] ?? { value: null }));
    return {
      address: `${sheetText(sheet)}!${boxText(box)}`, rowIndex: box.top, columnIndex: box.left, rowCount: rows.length, columnCount: rows[0]!.length,
      values: rows.map((row) => row.map(({ value }) => shown(value))),
      valueTypes: rows.map((row) => row.map(({ value }) => typeOf(value))),
      // In every cell that a formula fills, Excel tells that formula.
      formulas: rows.map((row, r) => row.map(({ value, formula }, c) => formula ?? spillingOver(sheet, box.top + r, box.left + c) ?? shown(value))),
    };
  };
  const spillOf = (): Box | undefined => parseBox(cellsOf(sheet)?.[boxText(box!)]?.spills ?? '');
  const spillParent = (): Box | undefined => {
    const found = Object.entries(cellsOf(sheet) ?? {}).find(([, { spills }]) => spills !== undefined && inside(parseBox(spills)!, box!));
    return found && parseBox(found[0]);
  };
  const put = (name: string, rows: unknown): boolean => {
    if (!box || (name !== 'values' && name !== 'formulas')) return false;
    const block = rows as unknown[][];
    if (block.length !== box.bottom - box.top + 1 || block.some((row) => row.length !== box.right - box.left + 1)) throw new OfficeError('InvalidArgument');
    block.forEach((row, r) => row.forEach((value, c) => {
      const address = addressOf(box.top + r, box.left + c);
      context.written.push(`${sheet}!${address}`);
      context.changes.push(() => void (cellsOf(sheet)![address] = writtenCell(value)));
    }));
    return true;
  };
  return officeObject(context, facts, {
    select: () => context.changes.push(() => {
      selection = { sheet, areas: [boxText(box!)] };
      listeners.selection.forEach((listener) => listener());
    }),
    format: { protection: officeObject(context, () => box && { locked: !(workbook.unlocked?.[sheet] ?? []).includes(boxText(box)) }) },
    worksheet: officeObject(context, () => ({ name: sheet })),
    getSpillingToRangeOrNullObject: () => range(context, sheet, spillOf()),
    getSpillParentOrNullObject: () => range(context, sheet, spillParent()),
  }, false, put);
}

function spillingOver(sheet: string, row: number, column: number): string | undefined {
  const place = { top: row, left: column, bottom: row, right: column };
  return Object.values(cellsOf(sheet) ?? {}).find(({ spills }) => spills !== undefined && inside(parseBox(spills)!, place))?.formula;
}

/** What is typed stays a text behind an apostrophe; a formula waits for Excel to work it out. */
function writtenCell(value: unknown): FakeCell {
  if (typeof value !== 'string') return { value: value as Cell };
  if (value.startsWith('=')) return { value: { error: '#BUSY!' }, formula: value };
  return { value: value === '' ? null : value.replace(/^'/, '') };
}

const inside = (outer: Box, inner: Box): boolean => inner.top >= outer.top && inner.bottom <= outer.bottom && inner.left >= outer.left && inner.right <= outer.right;

function tableParts(context: Context, name: string): Facts {
  const table = workbook.tables!.find((each) => each.name === name)!;
  return {
    getRange: () => range(context, table.sheet, parseBox(table.at)!),
    worksheet: officeObject(context, () => ({ name: table.sheet })),
    columns: collection(context, () => table.columns.map((column) => ({ name: column }))),
  };
}

const run = async (first: unknown, second?: unknown): Promise<unknown> => {
  const work = (second ?? first) as (context: Context) => Promise<unknown>;
  const context = first instanceof Context ? first : new Context();
  const result = await work(context);
  if (context.written.length > 0) wrote.push({ options: second ? first : undefined, addresses: context.written });
  return result;
};

const SLICE = 1000;
/** The file in slices, as Excel hands it over; one file may be open at a time. */
let fileOpen = false;
function getFileAsync(type: string, _options: unknown, told: (result: unknown) => void): void {
  const { file } = workbook;
  if (type !== 'compressed' || !file || fileOpen) return told({ status: 'failed', error: { code: 5001 } });
  fileOpen = true;
  told({
    status: 'succeeded',
    value: {
      size: file.length, sliceCount: Math.ceil(file.length / SLICE),
      getSliceAsync: (index: number, heard: (result: unknown) => void) => setTimeout(() => heard({ status: 'succeeded', value: { data: file.slice(index * SLICE, (index + 1) * SLICE) } })),
      closeAsync: (heard: () => void) => {
        fileOpen = false;
        heard();
      },
    },
  });
}

const associated: Record<string, unknown> = {};

Object.assign(window, {
  Excel: { run },
  Office: {
    HostType: { Excel: 'Excel' },
    onReady: (ready: (facts: { host: string }) => void) => void Promise.resolve().then(() => ready({ host: 'Excel' })),
    FileType: { Compressed: 'compressed' },
    context: { requirements: { isSetSupported: () => true }, document: { getFileAsync } },
  },
  CustomFunctions: { associate: (id: string, implementation: unknown) => (associated[id] = implementation) },
  fake: {
    open: (next: FakeWorkbook) => {
      workbook = next;
    },
    select: (sheet: string, ...areas: string[]) => {
      selection = { sheet, areas };
      listeners.selection.forEach((listener) => listener());
    },
    change: (sheet: string, address: string, cell: FakeCell) => {
      workbook.sheets[sheet]![address] = cell;
      listeners.change.forEach((listener) => listener());
    },
    fail: (code: string | undefined) => {
      failing = code;
    },
    selection: () => `${selection.sheet}!${selection.areas.join(',')}`,
    cell: (sheet: string, address: string) => workbook.sheets[sheet]![address],
    wrote: () => wrote.splice(0),
    facts: () => ({ associated: Object.keys(associated).length, syncs, listening: listeners.selection.size + listeners.change.size }),
  },
});
