import type { Cell } from '../../functions/kernel/cell';
import { addressOf, type Box } from '../../sheet/xlsx/address';
import { cellFromGrid, plainText } from './cell-values';
import type { Model } from './library';

/** Contents of the grid as typed: by sheet, then by address. */
export type Contents = ReadonlyMap<string, ReadonlyMap<string, string>>;

export function contentsOf({ getters }: Model): Contents {
  const sheets = new Map<string, Map<string, string>>();
  for (const sheetId of getters.getSheetIds()) {
    const cells = new Map<string, string>();
    for (const cell of getters.getCells(sheetId)) {
      const content = cell.isFormula ? cell.compiledFormula.toFormulaString(getters) : cell.content;
      if (content === '') continue;
      const { row, col } = getters.getCellPosition(cell.id);
      cells.set(addressOf(row, col), content);
    }
    sheets.set(getters.getSheetName(sheetId), cells);
  }
  return sheets;
}

/** Reads values of the grid by the name of the sheet; rows and columns count from 0. */
export class GridValues {
  private readonly ids: ReadonlyMap<string, string>;

  constructor(private readonly model: Model) {
    const { getters } = model;
    this.ids = new Map(getters.getSheetIds().map((id) => [getters.getSheetName(id).toLowerCase(), id]));
  }

  sheetId(sheet: string): string | undefined {
    return this.ids.get(sheet.toLowerCase());
  }

  /** Value of a cell, errors with their words; null where it is blank or there is no such sheet. */
  at(sheet: string, row: number, column: number): Cell {
    const sheetId = this.sheetId(sheet);
    if (sheetId === undefined) return null;
    const position = { sheetId, row, col: column };
    const cell = this.model.getters.getEvaluatedCell(position);
    if (cell.type !== 'error' && cell.link === undefined) return cellFromGrid({ value: cell.value }, false);
    const message = cell.type === 'error' ? cell.message : undefined;
    return plainText(cell, this.model.getters.getCell(position)) ?? cellFromGrid({ value: cell.value, ...(message ? { message } : {}) }, cell.type === 'error');
  }

  /** Place that the formula of a cell spills over; undefined where it does not. */
  spill(sheet: string, row: number, column: number): Box | undefined {
    const sheetId = this.sheetId(sheet);
    const zone = sheetId === undefined ? undefined : this.model.getters.getSpreadZone({ sheetId, row, col: column });
    return zone && (zone.bottom > zone.top || zone.right > zone.left) ? zone : undefined;
  }

  /** Number format of a cell, undefined for the general one. */
  format(sheet: string, row: number, column: number): string | undefined {
    const sheetId = this.sheetId(sheet);
    return sheetId === undefined ? undefined : this.model.getters.getCell({ sheetId, row, col: column })?.format;
  }

  /** Text of a cell without the apostrophe that marks it as text. */
  literal(sheet: string, row: number, column: number): string {
    const sheetId = this.sheetId(sheet);
    const cell = sheetId === undefined ? undefined : this.model.getters.getCell({ sheetId, row, col: column });
    return cell === undefined || cell.isFormula ? '' : cell.content.replace(/^'/, '');
  }
}

/** What a constant of the grid is for the file: texts as they were typed, all else as the grid reads it. */
export function constantOf(values: GridValues, sheet: string, row: number, column: number): Cell {
  const value = values.at(sheet, row, column);
  return typeof value === 'string' ? values.literal(sheet, row, column) : value;
}
