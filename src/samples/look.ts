import type { Borders, Cell, Fill, Font, Style } from 'exceljs';

/** The look of our sheets: slate headings, straw for what is typed, white for what is worked. */
export const FONT: Partial<Font> = { name: 'Calibri', family: 2, size: 10 };

const solid = (argb: string): Fill => ({ type: 'pattern', pattern: 'solid', fgColor: { argb } });
const hair = { style: 'thin', color: { argb: 'FFB7C0C4' } } as const;
const frame: Partial<Borders> = { top: hair, left: hair, bottom: hair, right: hair };

export const HEADING: Partial<Style> = {
  font: { ...FONT, bold: true, color: { argb: 'FFFFFFFF' } }, fill: solid('FF34495A'), border: frame,
  alignment: { wrapText: true, vertical: 'middle', horizontal: 'center' },
};
export const UNIT: Partial<Style> = {
  font: { ...FONT, italic: true, size: 9, color: { argb: 'FF5B6770' } }, fill: solid('FFE6EBED'), border: frame, alignment: { horizontal: 'center', vertical: 'top' },
};
export const INPUT: Partial<Style> = { font: { ...FONT, color: { argb: 'FF123C69' } }, fill: solid('FFFFF6DC'), border: frame, protection: { locked: false }, alignment: { vertical: 'top' } };
/** A typed cell that was approved: locked. */
export const APPROVED: Partial<Style> = { font: { ...FONT, color: { argb: 'FF3C464C' } }, fill: solid('FFECEFF0'), border: frame, protection: { locked: true }, alignment: { vertical: 'top' } };
/** A typed cell added since: open. */
export const ADDED: Partial<Style> = { ...INPUT, fill: solid('FFDFF0D8') };
/** A typed cell that only shows how a row is filled. */
export const EXAMPLE: Partial<Style> = { ...INPUT, font: { ...FONT, italic: true, color: { argb: 'FF7A6A3A' } } };
export const WORKED: Partial<Style> = { font: FONT, border: frame, alignment: { vertical: 'top' } };
export const WORDS: Partial<Style> = { font: { ...FONT, size: 9, color: { argb: 'FF3C464C' } }, border: frame, alignment: { wrapText: true, vertical: 'top', horizontal: 'left', indent: 1 } };
export const CARRIED: Partial<Style> = { font: { ...FONT, size: 8, color: { argb: 'FF6B757B' } }, border: frame, alignment: { vertical: 'top', shrinkToFit: true } };
export const LABEL: Partial<Style> = { font: { ...FONT, bold: true }, border: frame, alignment: { shrinkToFit: true, vertical: 'top' } };
export const PLAIN: Partial<Style> = { font: FONT, border: frame, alignment: { vertical: 'top' } };
export const TITLE: Partial<Style> = { font: { ...FONT, size: 16, bold: true, color: { argb: 'FF22313C' } } };
export const REMARK: Partial<Style> = { font: { ...FONT, size: 9, color: { argb: 'FF5B6770' } }, alignment: { wrapText: true, vertical: 'top' } };

/** Number format for figures of any size, each with the digits it needs; words stand as they are. */
export const ANY_FIGURE = '[>=1000]#,##0;[>=100]0.0;0.000';

export const dress = (cell: Cell, style: Partial<Style>, numFmt?: string): Cell => Object.assign(cell, style, numFmt === undefined ? {} : { numFmt });

const mark = (background: string, colour: string) => ({
  fill: { type: 'pattern', pattern: 'solid', bgColor: { argb: background } } as Fill, font: { bold: true, color: { argb: colour } },
});
/** Conditional looks of verdicts. */
export const FAILED = mark('FFF6D3D0', 'FF8A1C12');
export const NOT_SHOWN = mark('FFFFE9B8', 'FF6F4E00');
export const IN_ERROR = mark('FFE3E3E3', 'FF8A1C12');
