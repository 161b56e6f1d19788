import { parseBox } from '../../sheet/xlsx/address';
import { type XmlElement, childNamed, childrenNamed, truth } from '../../sheet/xlsx/xml/tree';
import type { Colors } from './colors';
import type { SheetFrame } from './sheet-frame';

/** Widths, heights, frozen panes and the like, in the form of the grid. */

export interface HeaderData {
  size?: number;
  isHidden?: boolean;
}

export interface Layout {
  readonly cols: Record<number, HeaderData>;
  readonly rows: Record<number, HeaderData>;
  readonly panes: { xSplit: number; ySplit: number };
  readonly merges: string[];
  readonly areGridLinesVisible: boolean;
  readonly color: string | undefined;
}

/** Width of a digit of the usual font, in pixels; column widths count in digits. */
const DIGIT = 7;
export const columnPixels = (width: number): number => Math.trunc(((256 * width + Math.trunc(128 / DIGIT)) / 256) * DIGIT);
export const rowPixels = (points: number): number => Math.round((points * 4) / 3);

function columns(root: XmlElement, count: number): Record<number, HeaderData> {
  const sized: Record<number, HeaderData> = {};
  const usual = Number(childNamed(root, 'sheetFormatPr')?.attributes.get('defaultColWidth')) || 9.140625;
  for (let column = 0; column < count; column++) sized[column] = { size: columnPixels(usual) };
  for (const col of childrenNamed(childNamed(root, 'cols'), 'col')) {
    const [min, max, width] = ['min', 'max', 'width'].map((name) => Number(col.attributes.get(name)));
    const isHidden = truth(col, 'hidden') || width === 0;
    for (let column = min! - 1; column < Math.min(max!, count); column++) {
      sized[column] = { ...(width! > 0 ? { size: columnPixels(width!) } : sized[column]), ...(isHidden ? { isHidden } : {}) };
    }
  }
  return sized;
}

function rows({ root, rows: facts }: SheetFrame): Record<number, HeaderData> {
  const sized: Record<number, HeaderData> = {};
  const format = childNamed(root, 'sheetFormatPr');
  const usual = truth(format, 'customHeight') ? Number(format?.attributes.get('defaultRowHeight')) : NaN;
  for (const { row, height, hidden } of facts) {
    sized[row] = { ...(height === undefined ? {} : { size: rowPixels(height) }), ...(hidden ? { isHidden: true } : {}) };
  }
  if (usual > 0) for (const { row, height } of facts) if (height === undefined) sized[row] = { ...sized[row], size: rowPixels(usual) };
  return sized;
}

function panes(root: XmlElement): { xSplit: number; ySplit: number } {
  const pane = childNamed(childNamed(childNamed(root, 'sheetViews'), 'sheetView'), 'pane');
  if (!/^frozen/.test(pane?.attributes.get('state') ?? '')) return { xSplit: 0, ySplit: 0 };
  const split = (name: string): number => Math.max(0, Math.trunc(Number(pane?.attributes.get(name) ?? 0)) || 0);
  return { xSplit: split('xSplit'), ySplit: split('ySplit') };
}

/** Merged areas; the same cell in two of them would trouble the grid, so later ones give way. */
function merges(root: XmlElement): string[] {
  const taken: NonNullable<ReturnType<typeof parseBox>>[] = [];
  return childrenNamed(childNamed(root, 'mergeCells'), 'mergeCell').map(({ attributes }) => attributes.get('ref') ?? '').filter((ref) => {
    const box = parseBox(ref);
    if (!box || (box.top === box.bottom && box.left === box.right)) return false;
    if (taken.some((other) => box.top <= other.bottom && box.bottom >= other.top && box.left <= other.right && box.right >= other.left)) return false;
    taken.push(box);
    return true;
  });
}

/** `columnCount` is the number of columns that the grid shows. */
export function layoutOf(frame: SheetFrame, columnCount: number, colors: Colors): Layout {
  const { root } = frame;
  const view = childNamed(childNamed(root, 'sheetViews'), 'sheetView');
  return {
    cols: columns(root, columnCount),
    rows: rows(frame),
    panes: panes(root),
    merges: merges(root),
    areGridLinesVisible: !['0', 'false'].includes(view?.attributes.get('showGridLines') ?? '1'),
    color: colors(childNamed(childNamed(root, 'sheetPr'), 'tabColor')),
  };
}
