import semantics from '../fixtures/excel-semantics.json';
import { typedGrid } from './support/grid';

type Stated = number | string | boolean | { text: string } | { error: string } | { formula: string };

const typed = (stated: Stated): string => {
  if (typeof stated !== 'object') return typeof stated === 'boolean' ? String(stated).toUpperCase() : String(stated);
  if ('text' in stated) return `'${stated.text}`;
  return 'error' in stated ? stated.error : `=${stated.formula}`;
};

const cells = Object.fromEntries(Object.entries(semantics.cells as Record<string, Stated>).map(([address, stated]) => [address, typed(stated)]));

/** In a row of the cells that the cases read (@ asks for it), with room for a spill. */
const AT = 'M3';
const sheet = typedGrid(cells);

/** Cases that the grid refuses in words instead of showing a value. There are none. */
const REFUSED: readonly string[] = [];

describe("Excel's own results in the grid", () => {
  it('has all of the cases', () => expect(semantics.cases).toHaveLength(215));

  it.each(semantics.cases.map(({ formula, expected }) => [formula, expected as Stated] as const))('=%s', (formula, expected) => {
    sheet.type(AT, `=${formula}`);
    const { value, message } = sheet.shown(AT);
    sheet.type(AT, '');
    if (REFUSED.includes(formula)) {
      expect(value).toBe('#UNSUPPORTED!');
      expect(message).toMatch(/\w/);
    } else expect(value).toBe(typeof expected === 'object' ? (expected as { error: string }).error : expected);
  });
});
