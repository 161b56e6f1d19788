import type { Style, Worksheet } from 'exceljs';
import { INPUT, LABEL, PLAIN, REMARK, TITLE, UNIT, WORKED, dress } from './look';

export interface Document {
  works: string;
  number: string;
  revision: string;
  date: Date;
}

const A3 = 8;

/** Letters of a column, from 1. */
export function letters(column: number): string {
  let text = '';
  for (let n = column; n > 0; n = Math.floor((n - 1) / 26)) text = String.fromCharCode(65 + ((n - 1) % 26)) + text;
  return text;
}

export const INVENTED = 'Invented data: a sample.';
const CAUTION = 'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.';

export type LegendEntry = readonly [string, Partial<Style>];
const LEGEND: readonly LegendEntry[] = [['typed in', INPUT], ['worked out', WORKED], ['unit', UNIT]];

/** Widths without which the words of the title block would be cut: its labels, its signatures, the legend. */
const BLOCK_WIDTHS: Readonly<Record<number, number>> = { 1: 11.2, 6: 11.2, 10: 11.2 };

/** Rows that the title block takes; sheets go on below it. */
export const FIRST_FREE_ROW = 7;

/** Title, document facts, signatures and the legend of the cell styles. */
export function titleBlock(sheet: Worksheet, title: string, document: Document, lastColumn: number, { remark = INVENTED, legend = [] }: { remark?: string; legend?: readonly LegendEntry[] } = {}): void {
  sheet.mergeCells(1, 1, 1, Math.max(lastColumn, 4));
  dress(sheet.getCell(1, 1), TITLE).value = title;
  sheet.getRow(1).height = 26;
  for (const [column, width] of Object.entries(BLOCK_WIDTHS)) sheet.getColumn(Number(column)).width = Math.max(width, sheet.getColumn(Number(column)).width ?? 0);
  const facts: [string, string | Date][] = [['Works', document.works], ['Document', document.number], ['Revision', document.revision], ['Date', document.date]];
  facts.forEach(([label, value], i) => {
    const row = 2 + i;
    dress(sheet.getCell(row, 1), LABEL).value = label;
    sheet.mergeCells(row, 2, row, 5);
    for (let column = 2; column <= 5; column += 1) dress(sheet.getCell(row, column), PLAIN, value instanceof Date ? 'yyyy-mm-dd' : '@');
    sheet.getCell(row, 2).value = value;
    sheet.getCell(row, 2).alignment = { horizontal: 'left', vertical: 'top' };
  });
  ['Prepared', 'Checked', 'Approved'].forEach((label, i) => {
    dress(sheet.getCell(2 + i, 6), LABEL).value = label;
    sheet.mergeCells(2 + i, 7, 2 + i, 8);
    for (const column of [7, 8]) dress(sheet.getCell(2 + i, column), PLAIN);
  });
  [...LEGEND, ...legend].forEach(([text, style], i) => {
    const cell = dress(sheet.getCell(2 + (i % LEGEND.length), 10 + Math.floor(i / LEGEND.length)), style);
    cell.value = text;
    cell.alignment = { horizontal: 'center', vertical: 'top' };
  });
  sheet.mergeCells(6, 1, 6, Math.max(lastColumn, 10));
  dress(sheet.getCell(6, 1), REMARK).value = `${remark} ${CAUTION}`;
  sheet.getCell(6, 1).alignment = { vertical: 'middle', wrapText: false };
}

/** A3 landscape, one page wide unless said otherwise, headings repeated. */
export function printSetUp(sheet: Worksheet, document: Document, area: { rows: number; columns: number; pagesWide?: number }, titleRows?: [number, number]): void {
  sheet.pageSetup = {
    paperSize: A3 as never, orientation: 'landscape', fitToPage: true, fitToWidth: area.pagesWide ?? 1, fitToHeight: 0, horizontalCentered: true,
    margins: { left: 0.4, right: 0.4, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 },
    printArea: `A1:${letters(area.columns)}${area.rows}`,
    ...(titleRows ? { printTitlesRow: `${titleRows[0]}:${titleRows[1]}` } : {}),
    ...(area.pagesWide === undefined ? {} : { printTitlesColumn: 'A:A' }),
  };
  sheet.headerFooter.oddHeader = `&L&"Calibri,Bold"${document.works}&R${document.number} rev ${document.revision}`;
  sheet.headerFooter.oddFooter = '&L&F / &A&CPage &P of &N&RPrinted &D &T';
  sheet.properties.defaultRowHeight = 15;
  sheet.views = [{ state: 'normal', showGridLines: false, ...sheet.views[0] }];
  for (let column = 1; column <= area.columns; column += 1) {
    const { width } = sheet.getColumn(column);
    if (width === undefined) sheet.getColumn(column).width = 10.7;
  }
}
