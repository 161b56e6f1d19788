import type { Area } from '../../sheet/evaluate/area';
import type { CellPosition, EvalContext } from './library';

/**
 * The grid works cells out by calls within calls, so a long chain of cells would use up the stack. Where calls get deep,
 * what a formula reads is worked out before it runs, in an order that keeps calls shallow.
 */

/** Formulas within formulas before the cells below are put in order first. */
export const DEEP = 40;
/** Formulas within formulas that are refused: only references that are found while running get here. */
export const TOO_DEEP = 120;

/** Areas that the formula of a cell names; an empty list for a cell without a formula. */
export type AreasOf = (position: CellPosition) => readonly (Area & { sheetId: string })[];

export class Settling {
  private readonly seen = new Set<string>();

  constructor(private readonly context: EvalContext, private readonly areasOf: AreasOf) {}

  /** Works out all cells that the formula of a cell reads, and those that they read, the last ones first. */
  below(start: CellPosition): void {
    const path = [{ position: start, unsettled: this.unsettled(start) }];
    this.seen.add(key(start));
    for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
      const next = top.unsettled.next();
      if (!next.done) {
        this.seen.add(key(next.value));
        path.push({ position: next.value, unsettled: this.unsettled(next.value) });
        continue;
      }
      path.pop();
      if (path.length > 0) this.context.getFormulaResult(top.position);
    }
  }

  /** Formula cells that a cell reads and that have no value yet. */
  private *unsettled(position: CellPosition): Generator<CellPosition> {
    const { getters } = this.context;
    for (const { sheetId, top, left, bottom, right } of this.areasOf(position)) {
      const [lastRow, lastColumn] = [Math.min(bottom, getters.getNumberRows(sheetId) - 1), Math.min(right, getters.getNumberCols(sheetId) - 1)];
      for (let col = left; col <= lastColumn; col++) {
        for (let row = top; row <= lastRow; row++) {
          const each = { sheetId, col, row };
          // A formula that was worked out is never empty.
          if (getters.getCell(each)?.isFormula && getters.getEvaluatedCell(each).type === 'empty' && !this.seen.has(key(each))) yield each;
        }
      }
    }
  }
}

const key = ({ sheetId, row, col }: CellPosition): string => `${sheetId}!${row},${col}`;
