import { teachErrorCodes } from './cell-values';
import type { GridLibrary } from './library';
import { GUARD, type GuardRules } from './guard';
import { BOOK, type GridBook } from './run';
import { installSheetFormula } from './sheet-formula';
import { installWriting } from './write-cells';

type Formula = Parameters<typeof installSheetFormula>[0];

/** Nothing is fixed in the workbooks made here. */
const OPEN: GuardRules = { whyFixed: () => undefined, refused: () => undefined };

function modelOf({ Model, helpers }: GridLibrary, content: string, book?: GridBook): InstanceType<GridLibrary['Model']> {
  const data = helpers.createEmptyWorkbookData();
  data.sheets[0]!.cells = { A1: content };
  return new Model(data, book === undefined ? {} : { custom: { [BOOK]: book, [GUARD]: OPEN } }, [], undefined, false);
}

/** The class behind the grid's formulas is not exported; any formula leads to it. */
function anyFormula(grid: GridLibrary): Formula {
  const { getters } = modelOf(grid, '=1');
  const cell = getters.getCell({ sheetId: getters.getActiveSheetId(), col: 0, row: 0 });
  if (!cell?.isFormula) throw new Error('the grid reads no formula');
  return cell.compiledFormula;
}

/**
 * The class that is replaced is an internal of the grid: another version of it, put in place of ours, might pass the
 * replacement by and show its own results. So a book that answers every formula alike is asked, by a formula that comes
 * with a workbook and by one that is typed.
 * @throws where the grid works a formula out by itself
 */
function proveOurs(grid: GridLibrary): void {
  const answer = 1e6 + Math.floor(Math.random() * 1e6);
  const model = modelOf(grid, '=1+1', { evaluate: () => answer, areas: () => [], running: 0 });
  const sheetId = model.getters.getActiveSheetId();
  model.dispatch('UPDATE_CELL', { sheetId, col: 1, row: 0, content: '=SUM(2,2)' });
  for (const col of [0, 1]) {
    if (model.getters.getEvaluatedCell({ sheetId, col, row: 0 }).value !== answer) throw new Error('the grid works formulas out by itself: this version of it does not fit');
  }
}

/** Makes the grid work formulas out as Excel does. To be called once, before the first workbook is opened. */
export function installInGrid(grid: GridLibrary): void {
  teachErrorCodes(grid.registries.errorTypes);
  installSheetFormula(anyFormula(grid));
  installWriting(grid);
  proveOurs(grid);
}
