import type { Matrix } from '../../functions/kernel/cell';
import type { ValueSource } from '../../sheet/explain/explanation';
import type { Box } from '../../sheet/xlsx/address';

/** Sheets larger than this are not read whole. */
const CELLS_AT_MOST = 1_000_000;

/** The values of a workbook as they are now, each sheet asked for once: for looking over many cells. */
export function snapshotOf(source: ValueSource): ValueSource {
  const once = <T>(cache: Map<string, Promise<T>>, key: string, ask: () => Promise<T>): Promise<T> => {
    let answer = cache.get(key);
    if (!answer) cache.set(key, (answer = ask()));
    return answer;
  };
  const used = new Map<string, ReturnType<ValueSource['used']>>();
  const sheets = new Map<string, Promise<Matrix>>();
  const lists = new Map<string, Promise<unknown>>();
  const spills = new Map<string, Promise<Box | undefined>>();
  const usedOf = (sheet: string): ReturnType<ValueSource['used']> => once(used, sheet.toLowerCase(), () => source.used(sheet));
  return {
    used: usedOf,
    cells: async (sheet, box) => {
      const last = await usedOf(sheet);
      if (!last || (last[0] + 1) * (last[1] + 1) > CELLS_AT_MOST) return source.cells(sheet, box);
      const all = await once(sheets, sheet.toLowerCase(), () => source.cells(sheet, { top: 0, left: 0, bottom: last[0], right: last[1] }));
      return Array.from({ length: box.bottom - box.top + 1 }, (_, r) => Array.from({ length: box.right - box.left + 1 }, (__, c) => all[box.top + r]?.[box.left + c] ?? null));
    },
    names: () => once(lists, 'names', () => source.names()) as ReturnType<ValueSource['names']>,
    tables: () => once(lists, 'tables', () => source.tables()) as ReturnType<ValueSource['tables']>,
    spill: (sheet, row, column) => once(spills, `${sheet.toLowerCase()}!${row},${column}`, () => source.spill(sheet, row, column)),
  };
}
