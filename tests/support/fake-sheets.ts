import type { Cell, Matrix } from '../../src/functions/kernel/cell';
import type { SheetName } from '../../src/sheet/calculate/names';
import type { SheetTable } from '../../src/sheet/calculate/structured';
import type { ValueSource } from '../../src/sheet/explain/explanation';
import { parseAddress, parseBox } from '../../src/sheet/xlsx/address';

export interface FakeSheets {
  /** Cells by sheet and address. */
  cells: Record<string, Record<string, Cell>>;
  names?: SheetName[];
  tables?: { name: string; sheet: string; at: string; columns: string[]; totalsRows?: 1 }[];
  spills?: Record<string, string>;
}

/** A workbook of a few cells, as a host would supply it; takes down what was asked. */
export function fakeSource({ cells, names = [], tables = [], spills = {} }: FakeSheets): ValueSource & { asked: string[] } {
  const asked: string[] = [];
  const sheetOf = (name: string): Map<string, Cell> | undefined => {
    const found = Object.keys(cells).find((each) => each.toLowerCase() === name.toLowerCase());
    return found === undefined ? undefined : new Map(Object.entries(cells[found]!).map(([address, cell]) => { const { row, column } = parseAddress(address)!; return [`${row},${column}`, cell]; }));
  };
  const tableFacts = (): SheetTable[] => tables.map(({ name, sheet, at, columns, totalsRows = 0 as const }) => ({
    name, sheet, box: parseBox(at)!, headerRows: 1, totalsRows, columns: columns.map((column) => ({ name: column })),
  }));
  return {
    asked,
    used: async (sheet) => {
      asked.push(`used ${sheet}`);
      const filled = sheetOf(sheet);
      if (!filled) return undefined;
      const places = [...filled.keys()].map((key) => key.split(',').map(Number) as [number, number]);
      return [Math.max(-1, ...places.map(([row]) => row)), Math.max(-1, ...places.map(([, column]) => column))];
    },
    cells: async (sheet, { top, left, bottom, right }) => {
      asked.push(`${sheet} ${top},${left}:${bottom},${right}`);
      const filled = sheetOf(sheet)!;
      const rows: Matrix = [];
      for (let row = top; row <= bottom; row += 1) rows.push(Array.from({ length: right - left + 1 }, (_, i) => filled.get(`${row},${left + i}`) ?? null));
      return rows;
    },
    names: async () => names,
    tables: async () => tableFacts(),
    spill: async (sheet, row, column) => {
      const key = Object.keys(spills).find((each) => { const place = parseAddress(each.replace(/^.*!/, ''))!; return each.startsWith(`${sheet}!`) && place.row === row && place.column === column; });
      return key === undefined ? undefined : parseBox(spills[key]!);
    },
  };
}
