import type { BookCell } from '../calculate/cells';
import type { Template, Templates } from './templates';

/** Rows of a block that hold one content, and in how many stretches. */
interface Stretches {
  cells: number;
  count: number;
}

const CONSTANT = Symbol('constant');
type Content = Template | typeof CONSTANT;

/** What recurs in a column: lines of two or three kinds in turn, or rows of another kind among the rest. */
export class Patterns {
  private known: Map<Content, Stretches> | undefined;

  constructor(private readonly templates: Templates, private readonly cells: readonly BookCell[]) {}

  /**
   * Whether content like that of a cell stands in several places, and is not rare beside the usual formula: in three places or
   * more half as often will do, in two it must be as common.
   */
  recurs(cell: BookCell, usual: Template): boolean {
    const own = this.all().get(this.contentOf(cell));
    const all = this.all().get(usual);
    return own !== undefined && all !== undefined && own.count > 1 && own.cells * (own.count > 2 ? 2 : 1) >= all.cells;
  }

  private contentOf = (cell: BookCell): Content => this.templates.of(cell) ?? CONSTANT;

  private all(): Map<Content, Stretches> {
    if (this.known) return this.known;
    const known = new Map<Content, Stretches>();
    let last: Content | undefined;
    for (const cell of this.cells) {
      const content = this.contentOf(cell);
      const stretches = known.get(content) ?? { cells: 0, count: 0 };
      stretches.cells++;
      if (content !== last) stretches.count++;
      known.set(content, stretches);
      last = content;
    }
    return (this.known = known);
  }
}
