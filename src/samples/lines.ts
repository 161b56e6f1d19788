import type { Style, Workbook, Worksheet } from 'exceljs';
import { fileFormula } from './formula-text';
import { CARRIED, HEADING, INPUT, PLAIN, REMARK, UNIT, WORKED, dress } from './look';

/** One named figure a line: label, value, unit, name, remark. */
export interface Line {
  label: string;
  /** A typed figure or word; of a worked line the formula as it is typed. */
  value: number | string;
  unit?: string;
  /** Defined name of the value's cell. */
  name?: string;
  format?: string;
  remark?: string;
  /** Lines of text that the value takes; two unless said otherwise. */
  lines?: number;
  /** Complex text, carried on with all its digits and so written small. */
  carried?: true;
  /** Name of the list that the cell chooses from. */
  list?: string;
}

/** Widths of a sheet of lines. */
export const LINE_WIDTHS = [44, 36, 9, 18, 4, 12, 14, 14, 4, 14] as const;
export const LINE_COLUMNS = LINE_WIDTHS.length;

export const setLineWidths = (sheet: Worksheet): void => LINE_WIDTHS.forEach((width, i) => void (sheet.getColumn(i + 1).width = width + 0.7));

interface Validations { dataValidations: { add(range: string, rule: object): void } }

/** Writes a block of lines under a heading; gives the first free row after it. */
export function addLines(workbook: Workbook, sheet: Worksheet, top: number, title: string, lines: readonly Line[], worked: boolean, inputLook: Partial<Style> = INPUT): number {
  [title, 'value', 'unit', 'name', 'remark'].forEach((text, i) => {
    const cell = dress(sheet.getCell(top, i < 4 ? i + 1 : 6), HEADING);
    cell.value = text;
    if (i === 0 || i === 4) cell.alignment = { horizontal: 'left' };
  });
  lines.forEach((line, i) => {
    const row = top + 1 + i;
    const isText = line.format === '@';
    dress(sheet.getCell(row, 1), PLAIN).value = line.label;
    const cell = dress(sheet.getCell(row, 2), line.carried ? CARRIED : worked ? WORKED : inputLook, line.format);
    if (!line.carried) cell.alignment = { horizontal: isText ? 'left' : 'right', wrapText: isText, vertical: 'top' };
    cell.value = worked ? { formula: fileFormula(String(line.value), '') } : line.value;
    if (isText && worked) sheet.getRow(row).height = 14 * (line.lines ?? 2);
    dress(sheet.getCell(row, 3), UNIT).value = line.unit ?? null;
    dress(sheet.getCell(row, 4), UNIT).value = line.name ?? null;
    if (line.remark !== undefined) dress(sheet.getCell(row, 6), REMARK).value = line.remark;
    if (line.remark !== undefined) sheet.getCell(row, 6).alignment = { wrapText: false, vertical: 'top' };
    if (line.name !== undefined) workbook.definedNames.add(`'${sheet.name}'!$B$${row}`, line.name);
    if (line.list !== undefined) (sheet as unknown as Validations).dataValidations.add(`B${row}`, { type: 'list', formulae: [line.list], allowBlank: true, showErrorMessage: true, errorStyle: 'stop', error: 'Choose from the list' });
  });
  return top + lines.length + 1;
}
