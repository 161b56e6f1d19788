import { type XmlElement, childNamed, childrenNamed, truth } from '../../sheet/xlsx/xml/tree';
import type { Colors } from './colors';
import { type FormatCheck, gridFormat } from './number-formats';

/** How cells look, in the form of the grid. */
export interface GridStyle {
  bold?: boolean;
  italic?: boolean;
  strikethrough?: boolean;
  underline?: boolean;
  align?: 'left' | 'center' | 'right';
  verticalAlign?: 'top' | 'middle' | 'bottom';
  wrapping?: 'overflow' | 'wrap' | 'clip';
  fillColor?: string;
  textColor?: string;
  fontSize?: number;
  rotation?: number;
}

export interface GridBorderLine {
  style: 'thin' | 'medium' | 'thick' | 'dashed' | 'dotted';
  color: string;
}

export type GridBorder = Partial<Record<'top' | 'bottom' | 'left' | 'right', GridBorderLine>>;

/** One of the cell formats of the workbook. */
export interface CellLook {
  readonly style: GridStyle;
  readonly border: GridBorder;
  readonly format: string | undefined;
}

const ALIGN: Readonly<Record<string, GridStyle['align']>> = { left: 'left', center: 'center', centerContinuous: 'center', right: 'right' };
const VERTICAL: Readonly<Record<string, GridStyle['verticalAlign']>> = { top: 'top', center: 'middle' };
const LINES: Readonly<Record<string, GridBorderLine['style']>> = {
  thin: 'thin', hair: 'dotted', dotted: 'dotted', dashed: 'dashed', dashDot: 'dashed', dashDotDot: 'dashed', slantDashDot: 'dashed',
  medium: 'medium', mediumDashed: 'dashed', mediumDashDot: 'dashed', mediumDashDotDot: 'dashed', thick: 'thick', double: 'medium',
};

const isOn = (element: XmlElement | undefined): boolean => element !== undefined && !['0', 'false', 'none'].includes(element.attributes.get('val') ?? '1');

export function fontStyle(font: XmlElement | undefined, colors: Colors): GridStyle {
  const size = Number(childNamed(font, 'sz')?.attributes.get('val'));
  const color = colors(childNamed(font, 'color'));
  return {
    ...(isOn(childNamed(font, 'b')) ? { bold: true } : {}),
    ...(isOn(childNamed(font, 'i')) ? { italic: true } : {}),
    ...(isOn(childNamed(font, 'strike')) ? { strikethrough: true } : {}),
    ...(isOn(childNamed(font, 'u')) ? { underline: true } : {}),
    ...(size > 0 ? { fontSize: size } : {}),
    ...(color === undefined || color === '#000000' ? {} : { textColor: color }),
  };
}

/** Fill of a cell; patterns are shown as their plain colour. A rule's solid fill has its colour in `bgColor`, a cell's in `fgColor`. */
export function fillStyle(fill: XmlElement | undefined, colors: Colors, ofRule: boolean): GridStyle {
  const pattern = childNamed(fill, 'patternFill');
  const kind = pattern?.attributes.get('patternType') ?? (ofRule ? 'solid' : 'none');
  if (kind === 'none') return {};
  const stop = childNamed(childNamed(fill, 'gradientFill'), 'stop');
  const [front, back] = [childNamed(pattern, 'fgColor'), childNamed(pattern, 'bgColor')];
  const color = colors(ofRule ? back ?? front : front ?? back) ?? colors(childNamed(stop, 'color'));
  return color === undefined ? {} : { fillColor: color };
}

function alignment(element: XmlElement | undefined): GridStyle {
  const align = ALIGN[element?.attributes.get('horizontal') ?? ''];
  const turned = Number(element?.attributes.get('textRotation') ?? 0);
  const degrees = turned > 90 && turned <= 180 ? turned - 90 : -turned;
  return {
    ...(align ? { align } : {}),
    verticalAlign: VERTICAL[element?.attributes.get('vertical') ?? ''] ?? 'bottom',
    ...(truth(element, 'wrapText') ? { wrapping: 'wrap' } : {}),
    ...(degrees !== 0 && turned <= 180 ? { rotation: (degrees * Math.PI) / 180 } : {}),
  };
}

function borderOf(border: XmlElement | undefined, colors: Colors): GridBorder {
  const lines: GridBorder = {};
  for (const side of ['left', 'right', 'top', 'bottom'] as const) {
    const element = childNamed(border, side);
    const style = LINES[element?.attributes.get('style') ?? ''];
    if (style) lines[side] = { style, color: colors(childNamed(element, 'color')) ?? '#000000' };
  }
  return lines;
}

/** Number formats by their id, those of the file's own. */
const ownFormats = (styles: XmlElement): Map<number, string> =>
  new Map(childrenNamed(childNamed(styles, 'numFmts'), 'numFmt').map(({ attributes }) => [Number(attributes.get('numFmtId')), attributes.get('formatCode') ?? '']));

/** All cell formats, in the order in which cells refer to them. */
export function cellLooks(styles: XmlElement, colors: Colors, isShown: FormatCheck): CellLook[] {
  const [fonts, fills, borders] = (['fonts', 'fills', 'borders'] as const).map((list) => childNamed(styles, list)?.children ?? []);
  const formats = ownFormats(styles);
  return childrenNamed(childNamed(styles, 'cellXfs'), 'xf').map((xf) => {
    const id = (name: string): number => Number(xf.attributes.get(name) ?? 0) || 0;
    return {
      style: { ...fontStyle(fonts![id('fontId')], colors), ...fillStyle(fills![id('fillId')], colors, false), ...alignment(childNamed(xf, 'alignment')) },
      border: borderOf(borders![id('borderId')], colors),
      format: gridFormat(id('numFmtId'), formats.get(id('numFmtId')), isShown),
    };
  });
}

/** Looks that conditional formats lay over a cell. */
export const ruleLooks = (styles: XmlElement, colors: Colors): GridStyle[] =>
  childrenNamed(childNamed(styles, 'dxfs'), 'dxf').map((look) => ({ ...fontStyle(childNamed(look, 'font'), colors), ...fillStyle(childNamed(look, 'fill'), colors, true) }));
