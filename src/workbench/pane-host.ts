import { plainHost } from '../functions/kernel/call';
import type { ValueSource } from '../sheet/explain/explanation';
import type { PaneHost, Selection } from '../pane/host';
import { addressOf, boxText } from '../sheet/xlsx/address';
import { GridValues } from './grid/contents';
import type { OpenFile } from './open/open-file';
import { gridEdits } from './pane-edits';

/** What the pane sees of the grid. */

/** The grid tells of every step while it works; the pane reads once it comes to rest. */
const REST_MS = 40;

const sourceOf = ({ model, workbook }: OpenFile): ValueSource => {
  const values = new GridValues(model);
  return {
    used: async (sheet) => {
      const id = values.sheetId(sheet);
      return id === undefined ? undefined : [model.getters.getNumberRows(id) - 1, model.getters.getNumberCols(id) - 1];
    },
    cells: async (sheet, { top, left, bottom, right }) =>
      Array.from({ length: bottom - top + 1 }, (_, row) => Array.from({ length: right - left + 1 }, (__, column) => values.at(sheet, top + row, left + column))),
    names: async () => workbook.facts.names,
    tables: async () => workbook.facts.tables,
    spill: async (sheet, row, column) => values.spill(sheet, row, column),
  };
};

function selectionOf({ model }: OpenFile): Selection {
  const { getters } = model;
  const position = getters.getActivePosition();
  const sheet = getters.getSheetName(position.sheetId);
  const { row, col: column } = position;
  const values = new GridValues(model);
  const zone = getters.getSelectedZone();
  const address = addressOf(row, column);
  const within = boxText(zone);
  const shown = { address, sheet, value: values.at(sheet, row, column), ...(within === address || getters.isInMerge(position) ? {} : { within }) };
  const formula = (at: typeof position): string => {
    const cell = getters.getCell(at);
    return cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : '';
  };
  const from = getters.getArrayFormulaSpreadingOn(position);
  if (from && (from.row !== row || from.col !== column)) {
    return { kind: 'cell', ...shown, row: from.row, column: from.col, formula: formula(from), spilledFrom: addressOf(from.row, from.col), part: [row - from.row, column - from.col] };
  }
  return { kind: 'cell', ...shown, row, column, formula: formula(position) };
}

export const gridPaneHost = (file: OpenFile, source = sourceOf(file)): PaneHost => ({
  traits: plainHost,
  source,
  ...gridEdits(file, source),
  watch(listener) {
    let waiting: ReturnType<typeof setTimeout> | undefined;
    let last = '';
    const read = (): void => {
      const selection = selectionOf(file);
      // A redraw without a change must not fold up what the reader has opened.
      const told = JSON.stringify(selection);
      if (told !== last) listener(selection);
      last = told;
    };
    const owner = {};
    const soon = (): void => {
      clearTimeout(waiting);
      waiting = setTimeout(read, REST_MS);
    };
    file.model.on('update', owner, soon);
    read();
    return () => {
      clearTimeout(waiting);
      file.model.off('update', owner);
    };
  },
});
