import { catalogue } from '../../src/sheet/catalogue';
import { FormulaForms } from '../../src/sheet/formula/forms';
import { addressOf, parseAddress } from '../../src/sheet/xlsx/address';
import { handMade } from './hand-made-workbook';

const forms = new FormulaForms(catalogue.entries.map(({ member }) => member.name));

/** What is typed into a cell; text with = in front is a formula as people type it. */
export type Typed = number | string | boolean | null;

export interface TypedTable {
  readonly name: string;
  readonly sheet: string;
  /** Cell of the first heading; units stand in the row above it. */
  readonly at: string;
  readonly columns: readonly { readonly name: string; readonly unit?: string; readonly formula?: string }[];
  /** Typed cells, in the order of the columns without a formula. */
  readonly rows: readonly (readonly Typed[])[];
}

export interface TypedBook {
  /** Cells by address. */
  readonly sheets: Readonly<Record<string, Readonly<Record<string, Typed>>>>;
  readonly tables?: readonly TypedTable[];
  /** Defined names: `Un_V` → `Sources!$B$2`. */
  readonly names?: Readonly<Record<string, string>>;
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

/** A workbook out of what is typed into it; it holds no values of formulas yet. */
export function typedBook({ sheets, tables = [], names = {} }: TypedBook): Uint8Array {
  const grids = new Map(Object.entries(sheets).map(([name, cells]) => [name, new Map(Object.entries(cells).map(([address, typed]) => [address, { typed, table: undefined as string | undefined }]))]));
  const parts = tables.map((table, number) => ({ sheet: table.sheet, xml: laidOut(table, grids.get(table.sheet)!, number + 1) }));
  return handMade({
    sheets: Object.fromEntries([...grids].map(([name, cells]) => [name, rowsXml(cells)])), tables: parts,
    names: Object.entries(names).map(([name, text]) => `<definedName name="${name}">${escaped(text)}</definedName>`).join(''),
  });
}

type Grid = Map<string, { typed: Typed; table: string | undefined }>;

function laidOut({ name, at, columns, rows }: TypedTable, cells: Grid, id: number): string {
  const { row, column } = parseAddress(at)!;
  columns.forEach((each, i) => {
    if (each.unit !== undefined) cells.set(addressOf(row - 1, column + i), { typed: each.unit, table: undefined });
    cells.set(addressOf(row, column + i), { typed: each.name, table: undefined });
  });
  rows.forEach((given, n) => {
    const left = [...given];
    columns.forEach((each, i) => cells.set(addressOf(row + 1 + n, column + i), { typed: each.formula ?? left.shift() ?? null, table: name }));
  });
  const ref = `${at}:${addressOf(row + rows.length, column + columns.length - 1)}`;
  const list = columns.map(({ name: heading, formula }, i) => `<tableColumn id="${i + 1}" name="${escaped(heading)}">${formula === undefined ? '' : `<calculatedColumnFormula>${escaped(forms.toFile(formula.slice(1), name))}</calculatedColumnFormula>`}</tableColumn>`);
  return `<table id="${id}" name="${name}" displayName="${name}" ref="${ref}"><autoFilter ref="${ref}"/><tableColumns count="${columns.length}">${list.join('')}</tableColumns></table>`;
}

function rowsXml(cells: Grid): string {
  const rows = new Map<number, [number, string][]>();
  for (const [address, { typed, table }] of cells) {
    if (typed === null) continue;
    const { row, column } = parseAddress(address)!;
    const own = rows.get(row) ?? [];
    rows.set(row, own);
    own.push([column, cellXml(address, typed, table)]);
  }
  return [...rows].sort(([a], [b]) => a - b).map(([row, own]) => `<row r="${row + 1}">${own.sort(([a], [b]) => a - b).map(([, xml]) => xml).join('')}</row>`).join('');
}

function cellXml(address: string, typed: Exclude<Typed, null>, table: string | undefined): string {
  if (typeof typed === 'number') return `<c r="${address}"><v>${typed}</v></c>`;
  if (typeof typed === 'boolean') return `<c r="${address}" t="b"><v>${Number(typed)}</v></c>`;
  if (typed.startsWith('=')) return `<c r="${address}"><f>${escaped(forms.toFile(typed.slice(1), table))}</f></c>`;
  return `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${escaped(typed)}</t></is></c>`;
}
