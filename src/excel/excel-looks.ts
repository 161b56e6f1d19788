import type { Look } from '../pane/sheet-plan';
import { type Box, addressOf } from '../sheet/xlsx/address';

/** The look of our sheets: slate headings, straw for what is typed, white for what is worked. */

interface LookFacts {
  readonly ink?: string;
  readonly ground?: string;
  readonly size?: number;
  readonly bold?: true;
  readonly italic?: true;
  readonly framed?: true;
  readonly wrapped?: true;
  readonly across?: 'Left' | 'Center';
  /** May be typed into where the sheet is protected. */
  readonly open?: true;
}

const LOOKS: Readonly<Record<Look, LookFacts>> = {
  title: { size: 16, bold: true, ink: '#22313C' },
  label: { bold: true, framed: true },
  plain: { framed: true },
  heading: { bold: true, ink: '#FFFFFF', ground: '#34495A', framed: true, wrapped: true, across: 'Center' },
  unit: { italic: true, size: 9, ink: '#5B6770', ground: '#E6EBED', framed: true, across: 'Center' },
  input: { ink: '#123C69', ground: '#FFF6DC', framed: true, open: true },
  example: { italic: true, ink: '#7A6A3A', ground: '#FFF6DC', framed: true, open: true },
  worked: { framed: true },
  words: { size: 9, ink: '#3C464C', framed: true, wrapped: true, across: 'Left' },
  carried: { size: 8, ink: '#6B757B', framed: true },
  remark: { size: 9, ink: '#5B6770' },
};

const OUTER = ['EdgeTop', 'EdgeBottom', 'EdgeLeft', 'EdgeRight'] as const;

/** Lines inside a range exist only where it has more than one row or column. */
const edgesOf = ({ top, left, bottom, right }: Box) => [...OUTER, ...(bottom > top ? ['InsideHorizontal' as const] : []), ...(right > left ? ['InsideVertical' as const] : [])];

export function dress({ format }: Excel.Range, look: Look, box: Box): void {
  const { ink, ground, size = 10, bold, italic, framed, wrapped, across, open } = LOOKS[look];
  format.font.name = 'Calibri';
  format.font.size = size;
  if (bold) format.font.bold = true;
  if (italic) format.font.italic = true;
  if (ink !== undefined) format.font.color = ink;
  if (ground !== undefined) format.fill.color = ground;
  if (wrapped) format.wrapText = true;
  if (across !== undefined) format.horizontalAlignment = across;
  if (open) format.protection.locked = false;
  format.verticalAlignment = look === 'heading' ? 'Center' : 'Top';
  if (framed) {
    for (const edge of edgesOf(box)) {
      const border = format.borders.getItem(edge);
      border.style = 'Continuous';
      border.color = '#B7C0C4';
    }
  }
}

/** FAIL, not shown and errors stand out. */
export function markVerdicts(range: Excel.Range, { top, left }: Box): void {
  const equal = (word: string, ink: string, ground: string): void => {
    const { cellValue } = range.conditionalFormats.add('CellValue');
    cellValue.format.font.color = ink;
    cellValue.format.fill.color = ground;
    cellValue.rule = { formula1: `="${word}"`, operator: 'EqualTo' };
  };
  equal('FAIL', '#8A1C12', '#F6D3D0');
  equal('not shown', '#6F4E00', '#FFE9B8');
  const { custom } = range.conditionalFormats.add('Custom');
  custom.format.font.color = '#8A1C12';
  custom.format.fill.color = '#E3E3E3';
  custom.rule.formula = `=ISERROR(${addressOf(top, left)})`;
}
