import { type XmlElement, childNamed, childrenNamed } from './xml/tree';

/** What a cell's style number stands for: positions in the style sheet's own lists, number format, lock. */
export interface CellFormat {
  readonly numberFormatId: number;
  /** Code of the number format; undefined for built-in ones, which the id alone names. */
  readonly numberFormat: string | undefined;
  readonly font: number;
  readonly fill: number;
  readonly border: number;
  /** Has effect on protected sheets only. */
  readonly locked: boolean;
  readonly wrapText: boolean;
}

export function readStyles(root: XmlElement): CellFormat[] {
  const codes = new Map(childrenNamed(childNamed(root, 'numFmts'), 'numFmt').map(({ attributes }) => [attributes.get('numFmtId'), attributes.get('formatCode')]));
  return childrenNamed(childNamed(root, 'cellXfs'), 'xf').map((xf) => {
    const id = (name: string): number => Number(xf.attributes.get(name) ?? 0) || 0;
    const locked = childNamed(xf, 'protection')?.attributes.get('locked');
    const wrap = childNamed(xf, 'alignment')?.attributes.get('wrapText');
    return {
      numberFormatId: id('numFmtId'), numberFormat: codes.get(xf.attributes.get('numFmtId')),
      font: id('fontId'), fill: id('fillId'), border: id('borderId'),
      locked: locked !== '0' && locked !== 'false', wrapText: wrap === '1' || wrap === 'true',
    };
  });
}
