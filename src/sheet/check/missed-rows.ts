import type { BookCell } from '../calculate/cells';
import type { Place } from './places';
import type { Subject } from './subject';
import { isRowOfTotals } from './totals';

/** Columns of a list that are looked at, and columns beside it that show whether a row of text belongs to it. */
const MOST_COLUMNS = 20;

/** A range of several cells that some formula names. */
interface Span {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** Finds what a range leaves out at its ends. */
export class MissedRows {
  /** By the row where they begin, and by that where they end. */
  private spans: { readonly from: Map<string, Span[]>; readonly to: Map<string, Span[]> } | undefined;

  constructor(private readonly subject: Subject) {}

  /**
   * A cell just past an end of a range that is of one kind with those in it; `from` reads the range. Of a list every column
   * counts, and its names; other ranges are judged by the figures of their first column.
   */
  beyond(place: Place, from: BookCell, isList: boolean): BookCell | undefined {
    for (const [inside, past] of [[place.bottom, place.bottom + 1], [place.top, place.top - 1]] as const) {
      const missed = past < 0 ? undefined : this.alike(isList ? place : { ...place, right: place.left }, inside, past, isList);
      if (!missed || (missed.sheet === from.sheet && missed.row === from.row && from.column >= place.left && from.column <= place.right)) continue;
      if (isRowOfTotals(this.subject, place.sheet, past) || (past < place.top && (this.isFirstOfAll(missed) || isHeadingOfFigures(missed, place))) || this.isReadElsewhere(place, past)) continue;
      return missed;
    }
    return undefined;
  }

  private alike({ sheet, left, right }: Place, inside: number, past: number, isList: boolean): BookCell | undefined {
    for (let column = left; column <= Math.min(right, left + MOST_COLUMNS, sheet.lastColumn); column++) {
      const [last, next] = [sheet.at(inside, column), sheet.at(past, column)];
      if (last && next && this.ofOneKind(last, next)) return next;
    }
    if (!isList) return undefined;
    const [last, next] = [sheet.at(inside, left), sheet.at(past, left)];
    return last && next && isText(last) && isText(next) && this.figuresGoOnBeside(last, next) ? next : undefined;
  }

  /** A figure that no heading stands over is the heading itself, as 400 and 690 are of two voltages. */
  private isFirstOfAll(cell: BookCell): boolean {
    const column = this.subject.columnOf(cell);
    return column !== undefined && !column.table && column.heading === '' && column.top === cell.row;
  }

  private ofOneKind(last: BookCell, next: BookCell): boolean {
    if (typeof last.stored !== 'number' || typeof next.stored !== 'number' || this.subject.columnOf(last) !== this.subject.columnOf(next)) return false;
    const template = this.subject.templates.of(last);
    return last.formula === null && next.formula === null ? !last.owner && !next.owner : template !== undefined && template === this.subject.templates.of(next);
  }

  /** Names of a list go on where figures do that stand beside them. */
  private figuresGoOnBeside(last: BookCell, next: BookCell): boolean {
    for (let by = 1; by <= MOST_COLUMNS; by++) {
      const [a, b] = [last.sheet.at(last.row, last.column + by), next.sheet.at(next.row, next.column + by)];
      if (!a || !b) return false;
      if (this.ofOneKind(a, b)) return true;
    }
    return false;
  }

  /** Another range begins where this one ends: the figures are shared out, as the loads of several boards are. Or the row is a heading that is looked up. */
  private isReadElsewhere({ sheet, top, left, bottom }: Place, past: number): boolean {
    const { from, to } = this.allSpans();
    return ((past > bottom ? from : to).get(`${sheet.name}\n${past}`) ?? []).some((span) => span.left <= left && span.right >= left && (span.top > bottom || span.bottom < top));
  }

  private allSpans() {
    if (this.spans) return this.spans;
    const spans = (this.spans = { from: new Map<string, Span[]>(), to: new Map<string, Span[]>() });
    const seen = new Set<string>();
    const add = (to: Map<string, Span[]>, key: string, span: Span): void => void (to.get(key)?.push(span) ?? to.set(key, [span]));
    for (const cell of this.subject.book.formulaCells) {
      for (const { sheet, ...span } of this.subject.wideRangesOf(cell)) {
        const key = `${sheet.name}\n${span.top} ${span.bottom} ${span.left} ${span.right}`;
        if (seen.has(key)) continue;
        seen.add(key);
        add(spans.from, `${sheet.name}\n${span.top}`, span);
        add(spans.to, `${sheet.name}\n${span.bottom}`, span);
      }
    }
    return spans;
  }
}

const isText = ({ formula, stored }: BookCell): boolean => formula === null && typeof stored === 'string';

const isYear = (cell: BookCell | undefined): boolean => typeof cell?.stored === 'number' && Number.isInteger(cell.stored) && cell.stored >= 1900 && cell.stored <= 2100;

/** A row over the figures that counts years, months or cases. */
function isHeadingOfFigures(cell: BookCell, { sheet, top, bottom }: Place): boolean {
  const { row, column } = cell;
  if (isYear(cell) && ![top, bottom].every((each) => isYear(sheet.at(each, column)))) return true;
  const figures: number[] = [];
  let from = column;
  while (from > 0 && typeof sheet.at(row, from - 1)?.stored === 'number') from--;
  for (let at = from, stored = sheet.at(row, at)?.stored; typeof stored === 'number'; stored = sheet.at(row, ++at)?.stored) figures.push(stored);
  const step = figures[1]! - figures[0]!;
  return figures.length > 2 && step !== 0 && figures.every((figure, at) => at === 0 || figure - figures[at - 1]! === step);
}
