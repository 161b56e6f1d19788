import { type Cell, CellError, type ErrorCode, type Matrix } from '../functions/kernel/cell';
import type { SheetName } from '../sheet/calculate/names';
import type { SheetTable } from '../sheet/calculate/structured';
import type { ValueSource } from '../sheet/explain/explanation';
import type { Box } from '../sheet/xlsx/address';

/** The workbook that is open in Excel, as the pane reads it. Nothing here writes. */

type Work<T> = (context: Excel.RequestContext) => Promise<T>;
/** Runs a batch; waits while a cell is being edited. */
export const inExcel = <T>(work: Work<T>): Promise<T> => Excel.run({ delayForCellEdit: true }, work);

/** Excel limits what one answer may hold; larger ranges are read in pieces. */
export const CELLS_AT_ONCE = 40_000;

/** A value of `range.values`. Blank is told from empty text by the type, and an error from text that looks like one. */
export function cellOfRange(value: unknown, type: string): Cell {
  if (type === 'Empty') return null;
  // Excel knows codes that no formula of ours can give (#BUSY!); they are shown as they are.
  if (type === 'Error') return new CellError(String(value) as ErrorCode);
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value;
  return new CellError('#VALUE!', 'the cell holds a data type, takes a number, text or truth value');
}

export const matrixOfRange = (values: readonly unknown[][], types: readonly unknown[][]): Matrix =>
  values.map((row, r) => row.map((value, c) => cellOfRange(value, String(types[r]![c]))));

const boxOf = ({ rowIndex, columnIndex, rowCount, columnCount }: Excel.Range): Box => ({
  top: rowIndex, left: columnIndex, bottom: rowIndex + rowCount - 1, right: columnIndex + columnCount - 1,
});
const PLACE = 'rowIndex,columnIndex,rowCount,columnCount';

export const knowsSpills = (): boolean => Office.context.requirements.isSetSupported('ExcelApi', '1.12');

export const excelValues: ValueSource = {
  used: (sheet) =>
    inExcel(async (context) => {
      const worksheet = context.workbook.worksheets.getItemOrNullObject(sheet);
      const used = worksheet.getUsedRangeOrNullObject(true);
      used.load(PLACE);
      await context.sync();
      if (worksheet.isNullObject) return undefined;
      if (used.isNullObject) return [-1, -1] as const;
      const { bottom, right } = boxOf(used);
      return [bottom, right] as const;
    }),

  cells: (sheet, { top, left, bottom, right }) =>
    inExcel(async (context) => {
      const worksheet = context.workbook.worksheets.getItem(sheet);
      const width = right - left + 1;
      const height = Math.max(1, Math.floor(CELLS_AT_ONCE / width));
      const rows: Matrix = [];
      for (let row = top; row <= bottom; row += height) {
        const piece = worksheet.getRangeByIndexes(row, left, Math.min(height, bottom - row + 1), width);
        piece.load('values,valueTypes');
        await context.sync();
        rows.push(...matrixOfRange(piece.values, piece.valueTypes));
      }
      return rows;
    }),

  names: () =>
    inExcel(async (context) => {
      const everywhere = context.workbook.names;
      const sheets = context.workbook.worksheets;
      everywhere.load('items/name,items/formula');
      sheets.load('items/name');
      await context.sync();
      const own = sheets.items.map(({ name, names }) => {
        names.load('items/name,items/formula');
        return { sheet: name, names };
      });
      await context.sync();
      const fact = ({ name, formula }: Excel.NamedItem): SheetName => ({ name, text: String(formula).replace(/^=/, '') });
      return [
        ...own.flatMap(({ sheet, names }) => names.items.map((item): SheetName => ({ ...fact(item), sheet }))),
        ...everywhere.items.map(fact),
      ];
    }),

  tables: () =>
    inExcel(async (context) => {
      const tables = context.workbook.tables;
      tables.load('items/name,items/showHeaders,items/showTotals');
      await context.sync();
      const read = tables.items.map((table) => {
        const range = table.getRange();
        range.load(PLACE);
        table.worksheet.load('name');
        table.columns.load('items/name');
        return { table, range };
      });
      await context.sync();
      return read.map(({ table, range }): SheetTable => ({
        name: table.name,
        sheet: table.worksheet.name,
        box: boxOf(range),
        headerRows: table.showHeaders ? 1 : 0,
        totalsRows: table.showTotals ? 1 : 0,
        columns: table.columns.items.map(({ name }) => ({ name })),
      }));
    }),

  spill: async (sheet, row, column) =>
    !knowsSpills()
      ? undefined
      : inExcel(async (context) => {
          const spill = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, 1, 1).getSpillingToRangeOrNullObject();
          spill.load(PLACE);
          await context.sync();
          return spill.isNullObject ? undefined : boxOf(spill);
        }),
};
