import { type CellEdit, DONE, type Done, type FormulaCell, type PaneHost, type Refused, refused } from '../pane/host';
import { asTypedText } from '../pane/typed-text';
import { addressOf, parseAddress, parseBox } from '../sheet/xlsx/address';
import { WorkbookRefusal } from '../sheet/xlsx/refusal';
import { type Contents, GridValues, contentsOf } from './grid/contents';
import { type GridEdit, writeCells } from './grid/write-cells';
import type { OpenFile } from './open/open-file';
import { savedFile } from './save/save-file';

/** What the pane does in the grid. What Save could not write back is refused here as it is in the grid itself. */

type Edits = Pick<PaneHost, 'sheets' | 'read' | 'formulaCells' | 'select' | 'write' | 'insertSheets' | 'chart' | 'file'>;

const NO_SHEETS = 'New sheets are not written into an open file here, nor charts, which need one. Add them in a spreadsheet program, or start from a sample workbook, which has them.';
const NO_CHARTS = 'Charts are not written into an open file here. The pane shows them; draw them in a spreadsheet program, or start from a sample workbook, which has them.';

/** Leads to the list of samples in the bar of the page. */
function chooseSample(): void {
  const list = document.getElementById('sample');
  if (!(list instanceof HTMLSelectElement)) return;
  list.focus();
  list.showPicker?.();
}
const sampleInstead = (words: string): Refused => ({ ...refused(words), instead: { label: 'Choose a sample workbook', act: chooseSample } });

const typed = (edit: CellEdit): string => {
  if ('formula' in edit) return edit.formula;
  const { value } = edit;
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return typeof value === 'string' ? asTypedText(value) : String(value).toUpperCase();
};

function gridEdit({ model, whyFixed }: OpenFile, values: GridValues, edit: CellEdit): GridEdit | Refused {
  const sheetId = values.sheetId(edit.sheet);
  if (sheetId === undefined) return refused(`There is no sheet ${edit.sheet}.`);
  const place = parseAddress(edit.address);
  if (!place) return refused(`${edit.address} is no cell.`);
  const { getters } = model;
  if (place.row >= getters.getNumberRows(sheetId) || place.column >= getters.getNumberCols(sheetId)) return refused(`${edit.address} is beyond the rows and columns that are shown here.`);
  const why = whyFixed(edit.sheet, place.row, place.column);
  return why === undefined ? { sheetId, row: place.row, col: place.column, content: typed(edit) } : refused(why);
}

const isRefused = (edit: GridEdit | Refused): edit is Refused => 'done' in edit;

function write(file: OpenFile, edits: readonly CellEdit[]): Done {
  const values = new GridValues(file.model);
  const made = edits.map((edit) => gridEdit(file, values, edit));
  const first = made.find(isRefused);
  if (first) return first;
  return writeCells(file.model, made as GridEdit[]) ? DONE : refused('The grid did not take it. Finish what is being typed in a cell, then try again.');
}

function select({ model }: OpenFile, sheet: string, range: string): Done {
  const { getters } = model;
  const sheetId = new GridValues(model).sheetId(sheet);
  const box = parseBox(range);
  if (sheetId === undefined || !box) return refused(sheetId === undefined ? `There is no sheet ${sheet}.` : `${range} is no range.`);
  if (!getters.isSheetVisible(sheetId)) return refused(`The sheet ${sheet} is hidden.`);
  if (sheetId !== getters.getActiveSheetId()) model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo: sheetId });
  const [lastRow, lastColumn] = [getters.getNumberRows(sheetId) - 1, getters.getNumberCols(sheetId) - 1];
  if (box.top > lastRow || box.left > lastColumn) return refused(`${range} is beyond the rows and columns that are shown here.`);
  const zone = { top: box.top, left: box.left, bottom: Math.min(box.bottom, lastRow), right: Math.min(box.right, lastColumn) };
  model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone }, { scrollIntoView: true });
  return DONE;
}

function formulaCells({ model: { getters }, model }: OpenFile, sheet: string | undefined): FormulaCell[] {
  const values = new GridValues(model);
  return getters.getSheetIds().filter((id) => sheet === undefined || getters.getSheetName(id).toLowerCase() === sheet.toLowerCase()).flatMap((id) => {
    const name = getters.getSheetName(id);
    return getters.getCells(id).flatMap((cell) => {
      if (!cell.isFormula) return [];
      const { row, col: column } = getters.getCellPosition(cell.id);
      return [{ sheet: name, address: addressOf(row, column), row, column, formula: cell.compiledFormula.toFormulaString(getters), value: values.at(name, row, column) }];
    }).sort((a, b) => a.row - b.row || a.column - b.column);
  });
}

function saved(file: OpenFile, before: Contents): Uint8Array | Refused {
  try {
    return savedFile(file, before).bytes;
  } catch (thrown) {
    if (thrown instanceof WorkbookRefusal) return refused(thrown.message);
    throw thrown;
  }
}

/** To be made while the grid still holds what the file does. */
export function gridEdits(file: OpenFile, source: PaneHost['source']): Edits {
  const before = contentsOf(file.model);
  const { getters } = file.model;
  return {
    sheets: async () => getters.getSheetIds().map((id) => getters.getSheetName(id)),
    read: async (sheet, range) => {
      const box = parseBox(range);
      if (!box || new GridValues(file.model).sheetId(sheet) === undefined) throw new RangeError(`${sheet}!${range} is no range of this workbook`);
      return source.cells(sheet, box);
    },
    formulaCells: async (sheet) => formulaCells(file, sheet),
    select: async (sheet, range) => select(file, sheet, range),
    write: async (edits) => write(file, edits),
    insertSheets: async () => sampleInstead(NO_SHEETS),
    chart: async () => sampleInstead(NO_CHARTS),
    file: async () => saved(file, before),
  };
}
