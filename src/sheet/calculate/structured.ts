import { parseStructRef } from '@borgar/fx/xlsx';
import { raise } from '../evaluate/errors';
import { type Box, inBox } from '../xlsx/address';

/** A table as references to it need it; its place includes header and totals rows. */
export interface SheetTable {
  readonly name: string;
  readonly sheet: string;
  readonly box: Box;
  readonly headerRows: 0 | 1;
  readonly totalsRows: 0 | 1;
  readonly columns: readonly { readonly name: string }[];
}

interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** The cells that a structured reference (`cables[csa_mm2]`, `cables[[#This Row],[In]]`, `[@In]`) names, seen from a cell. */
export function structuredBox(text: string, tables: readonly SheetTable[], from: Place): { sheet: string; box: Box } {
  const parsed = parseStructRef(text);
  if (!parsed) return raise('#REF!', `${text} is no reference to a table`);
  const { table: name = '', columns = [], sections = [] } = parsed;
  const table = name === '' ? tables.find((each) => same(each.sheet, from.sheet) && inBox(each.box, from.row, from.column)) : tables.find((each) => same(each.name, name));
  if (!table) return raise('#REF!', name === '' ? `${text} stands in no table` : `no table named ${name}`);
  const places = columns.map((column) => {
    const place = table.columns.findIndex((each) => same(each.name, column));
    return place >= 0 ? place : raise('#REF!', `no column ${column} in ${table.name}`);
  });
  const across = places.length === 0 ? { left: table.box.left, right: table.box.right } : { left: table.box.left + Math.min(...places), right: table.box.left + Math.max(...places) };
  return { sheet: table.sheet, box: { ...rowsOf(table, sections.map((section) => section.toLowerCase().replace('#', '')), text, from.row), ...across } };
}

function rowsOf({ box, headerRows, totalsRows, name }: SheetTable, sections: readonly string[], text: string, row: number): { top: number; bottom: number } {
  const data = { top: box.top + headerRows, bottom: box.bottom - totalsRows };
  const has = (section: string): boolean => sections.includes(section);
  if (has('this row') || has('@')) {
    return row >= data.top && row <= data.bottom ? { top: row, bottom: row } : raise('#VALUE!', `${text}: this row is no row of ${name}`);
  }
  if (has('all')) return { top: box.top, bottom: box.bottom };
  if (sections.length === 0 || (has('data') && sections.length === 1)) return data;
  const top = has('headers') ? (headerRows ? box.top : undefined) : has('data') ? data.top : data.bottom + 1;
  const bottom = has('totals') ? (totalsRows ? box.bottom : undefined) : has('data') ? data.bottom : box.top;
  return top === undefined || bottom === undefined ? raise('#REF!', `${name} has no such row`) : { top, bottom };
}
