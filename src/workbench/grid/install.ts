import { teachErrorCodes } from './cell-values';
import type { GridLibrary } from './library';
import { installSheetFormula } from './sheet-formula';
import { installWriting } from './write-cells';

/** The class behind the grid's formulas is not exported; any formula leads to it. */
function anyFormula({ Model, helpers }: GridLibrary): Parameters<typeof installSheetFormula>[0] {
  const data = helpers.createEmptyWorkbookData();
  data.sheets[0]!.cells = { A1: '=1' };
  const { getters } = new Model(data, {}, [], undefined, false);
  const cell = getters.getCell({ sheetId: getters.getActiveSheetId(), col: 0, row: 0 });
  if (!cell?.isFormula) throw new Error('the grid reads no formula');
  return cell.compiledFormula;
}

/** Makes the grid work formulas out as Excel does. To be called once, before the first workbook is opened. */
export function installInGrid(grid: GridLibrary): void {
  teachErrorCodes(grid.registries.errorTypes);
  installSheetFormula(anyFormula(grid));
  installWriting(grid);
}
