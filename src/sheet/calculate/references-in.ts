import { tokenize } from '@borgar/fx/xlsx';
import { type Context, Reference } from '../evaluate';
import { areaOf } from '../evaluate/area';
import { TOKENS } from '../formula/shift';

/** The rectangles that a formula names: by address, by table, or by a defined name that stands for one. */
export function referencesIn(formula: string, context: Context): Reference[] {
  const { workbook } = context;
  return tokenize(`=${formula}`, TOKENS).flatMap(({ type, value }) => {
    try {
      const named = type === 'structured' ? workbook.structured(context, value) : type === 'range_named' ? workbook.named(context, value) : undefined;
      if (named instanceof Reference) return [named];
    } catch {
      return []; // what the name or table lacks is told when the formula itself is computed
    }
    const area = type.startsWith('range') ? areaOf(value) : undefined;
    return area ? [new Reference(workbook, area.sheet || context.sheet, area.top, area.left, area.bottom, area.right)] : [];
  });
}
