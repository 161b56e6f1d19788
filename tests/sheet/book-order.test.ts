import * as fc from 'fast-check';
import { openBook } from '../../src/sheet/book';
import { handMade } from '../support/hand-made-workbook';

const CELLS = 150;

/** Which cells each cell adds up; long chains are likely, circles possible. */
const graph = fc.array(fc.tuple(fc.array(fc.nat(CELLS - 1), { maxLength: 2 }), fc.nat(60).map((chance) => chance > 0)), { minLength: CELLS, maxLength: CELLS }).chain((rows) =>
  fc.tuple(fc.constant(rows), fc.shuffledSubarray(Array.from({ length: CELLS }, (_, index) => index), { minLength: CELLS }), fc.integer({ min: 0, max: 4 })).map(([links, order, circles]) => {
    // Cells read those that come later in the order, most of them the next one; a few read back.
    const place = new Map(order.map((cell, at) => [cell, at]));
    return order.map((cell, at) => {
      const [read, chain] = links[cell]!;
      const later = read.filter((other) => place.get(other)! > at || (circles > 0 && (other + cell) % 97 < circles));
      return { cell, reads: [...(chain && at + 1 < CELLS ? [order[at + 1]!] : []), ...later] };
    });
  }));

test('any web of formulas gives what a plain walk gives, and its circles with all that hang on them', () => {
  fc.assert(fc.property(graph, (web) => {
    const reads = new Map(web.map(({ cell, reads: others }) => [cell, others]));
    const reaches = (from: number): Set<number> => {
      const seen = new Set<number>();
      const open = [...reads.get(from)!];
      while (open.length > 0) {
        const next = open.pop()!;
        if (!seen.has(next)) {
          seen.add(next);
          open.push(...reads.get(next)!);
        }
      }
      return seen;
    };
    const reach = new Map(web.map(({ cell }) => [cell, reaches(cell)]));
    const inCircle = new Set([...reach].filter(([cell, all]) => all.has(cell)).map(([cell]) => cell));
    const hangs = (cell: number): boolean => inCircle.has(cell) || [...reach.get(cell)!].some((each) => inCircle.has(each));
    const values = new Map<number, number>();
    const valueOf = (cell: number): number => {
      if (!values.has(cell)) values.set(cell, (1 + reads.get(cell)!.reduce((sum, other) => sum + valueOf(other), 0)) % 1e6);
      return values.get(cell)!;
    };
    const rows = Array.from({ length: CELLS }, (_, cell) => `<row r="${cell + 1}"><c r="A${cell + 1}"><f>MOD(1+${reads.get(cell)!.map((other) => `A${other + 1}`).join('+') || '0'},1000000)</f><v>-1</v></c></row>`);
    const book = openBook(handMade({ sheets: { S: rows.join('') } }), { find: () => undefined });
    book.recalculate();
    const expected = Array.from({ length: CELLS }, (_, cell) => (hangs(cell) ? 'circle' : valueOf(cell)));
    expect(book.formulaCells.map(({ value }) => (typeof value === 'number' ? value : 'circle'))).toEqual(expected);
    expect(book.notComputed()).toHaveLength(expected.filter((value) => value === 'circle').length);
  }), { numRuns: 60 });
});
