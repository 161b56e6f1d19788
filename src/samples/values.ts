import type { Book } from '../sheet/book';
import { addressOf, parseBox } from '../sheet/xlsx/address';

/** Numbers of the cells behind an absolute reference such as `'Curves'!$A$8:$A$20`, row by row. */
export function valuesIn(book: Book, reference: string): (number | undefined)[] {
  const [, sheet, range] = /^'((?:[^']|'')+)'!(.+)$/.exec(reference) ?? [];
  const box = range === undefined ? undefined : parseBox(range.replace(/\$/g, ''));
  if (!sheet || !box) throw new Error(`not a reference of a chart: ${reference}`);
  const values: (number | undefined)[] = [];
  for (let row = box.top; row <= box.bottom; row += 1) {
    for (let column = box.left; column <= box.right; column += 1) {
      const value = book.value(sheet.replace(/''/g, "'"), addressOf(row, column));
      values.push(typeof value === 'number' ? value : undefined);
    }
  }
  return values;
}
