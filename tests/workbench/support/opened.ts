import type { Cell } from '../../../src/functions/kernel/cell';
import { sheetCells, sheetNamed } from '../../../src/sheet/xlsx/sheet';
import { openWorkbook } from '../../../src/sheet/xlsx/workbook';
import { contentsOf } from '../../../src/workbench/grid/contents';
import { installGuard } from '../../../src/workbench/grid/guard';
import { installInGrid } from '../../../src/workbench/grid/install';
import { agreementOf } from '../../../src/workbench/open/agreement';
import { openFile } from '../../../src/workbench/open/open-file';
import { savedFile } from '../../../src/workbench/save/save-file';
import { type HandMade, handMade } from '../../support/hand-made-workbook';
import { grid, quiet } from './grid';

let installed = false;

/** A workbook file opened in the grid, as the page opens it. */
export function opened(what: HandMade | Uint8Array) {
  quiet();
  installInGrid(grid);
  if (!installed) installGuard(grid);
  installed = true;
  const refusals: string[] = [];
  const bytes = what instanceof Uint8Array ? what : handMade(what);
  const file = openFile(grid, 'works.xlsx', bytes, (words) => refusals.push(words));
  const { getters } = file.model;
  const before = contentsOf(file.model);
  const position = (address: string, sheet = getters.getSheetName(getters.getSheetIds()[0]!)) => ({ sheetId: getters.getSheetIdByName(sheet)!, ...grid.helpers.toCartesian(address) });
  return {
    file, bytes, refusals, position,
    model: file.model,
    agreement: () => agreementOf(file),
    type: (address: string, content: string, sheet?: string) => file.model.dispatch('UPDATE_CELL', { ...position(address, sheet), content }).isSuccessful,
    value: (address: string, sheet?: string): unknown => getters.getEvaluatedCell(position(address, sheet)).value,
    message: (address: string, sheet?: string): string => {
      const cell = getters.getEvaluatedCell(position(address, sheet));
      return 'message' in cell ? cell.message ?? '' : '';
    },
    text: (address: string, sheet?: string): string => {
      const cell = getters.getCell(position(address, sheet));
      return cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : cell?.content ?? '';
    },
    save: () => savedFile(file, before),
  };
}

/** Cells of a file by address, as our own reader finds them. */
export function cellsOf(bytes: Uint8Array, sheet = 'S'): Record<string, { value: Cell; formula: string | null; arrayRef: string | null; dynamic: boolean; style: number }> {
  const workbook = openWorkbook(bytes);
  return Object.fromEntries(sheetCells(workbook, sheetNamed(workbook, sheet)).map(({ address, value, formula, arrayRef, dynamic, style }) => [address, { value, formula, arrayRef, dynamic, style }]));
}

/** A row of cells written as short as can be. */
export const row = (number: number, ...cells: readonly string[]): string => `<row r="${number}">${cells.join('')}</row>`;
export const number = (address: string, value: number, more = ''): string => `<c r="${address}"${more}><v>${value}</v></c>`;
export const text = (address: string, value: string, more = ''): string => `<c r="${address}" t="inlineStr"${more}><is><t xml:space="preserve">${value}</t></is></c>`;
export const formula = (address: string, body: string, value: number | string, attributes = ''): string =>
  `<c r="${address}"${typeof value === 'string' ? ' t="str"' : ''}><f${attributes}>${body}</f><v>${value}</v></c>`;
