import * as grid from '@odoo/o-spreadsheet';
import { Book } from '../../../src/workbench/grid/book';
import type { WorkbookFacts } from '../../../src/sheet/xlsx/workbook';
import { installInGrid } from '../../../src/workbench/grid/install';
import { BOOK } from '../../../src/workbench/grid/run';

export { grid };

const PLAIN: WorkbookFacts = {
  sheets: [], names: [], tables: [], date1904: false, strict: false, macros: false, signed: false, externalLinks: 0,
  structureProtected: false, calculation: 'auto', fullPrecision: true, iterative: false,
};

// The grid is made for browsers; the oldest Node that we support lacks this.
const withGroups = Object as unknown as { groupBy?: (items: Iterable<unknown>, keyOf: (item: unknown, index: number) => string) => Record<string, unknown[]> };
withGroups.groupBy ??= (items, keyOf) => {
  const groups: Record<string, unknown[]> = {};
  [...items].forEach((item, index) => { (groups[keyOf(item, index)] ??= []).push(item); });
  return groups;
};

/** The grid tells of its own speed on the console. */
export const quiet = (): void => void jest.spyOn(console, 'debug').mockImplementation(() => undefined);

export interface Shown {
  value: unknown;
  message?: string;
}

/** A grid of one sheet, "Data", made of contents as they are typed. */
export function typedGrid(cells: Record<string, string>, facts: Partial<WorkbookFacts> = {}) {
  quiet();
  installInGrid(grid);
  const data = grid.helpers.createEmptyWorkbookData('Data');
  data.sheets[0]!.cells = cells;
  const model = new grid.Model(data, { custom: { [BOOK]: new Book({ ...PLAIN, ...facts }, new Map()) } }, [], undefined, false);
  const sheetId = model.getters.getActiveSheetId();
  const position = (address: string) => ({ sheetId, ...grid.helpers.toCartesian(address) });
  return {
    model,
    type: (address: string, content: string) => model.dispatch('UPDATE_CELL', { ...position(address), content }),
    shown: (address: string): Shown => {
      const cell = model.getters.getEvaluatedCell(position(address));
      return { value: cell.value, ...('message' in cell && cell.message ? { message: cell.message } : {}) };
    },
    text: (address: string): string => {
      const cell = model.getters.getCell(position(address));
      return cell?.isFormula ? cell.compiledFormula.toFormulaString(model.getters) : cell?.content ?? '';
    },
  };
}
