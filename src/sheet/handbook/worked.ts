import { Recorder } from '../../core/working';
import { type Outcome, call, plainHost } from '../../functions/kernel/call';
import { CellError, type Cell } from '../../functions/kernel/cell';
import { type ExplainedStep, argumentsShown, assumedOf, resultShown, stepsOf } from '../../functions/kernel/explain';
import { catalogue } from '../catalogue';
import { compile, emptyWorkbook, evaluate } from '../evaluate';
import type { CustomFunctions } from '../evaluate/context';
import { callsInFormula } from '../explain/calls-in-formula';
import { roundedCell } from '../rounded-cell';

/** How the core came to the answer of a call, as SHOW_STEPS tells it. */
export interface ShownWorking {
  readonly name: string;
  readonly given: readonly { readonly name: string; readonly text: string }[];
  /** Defaults taken for what was left out. */
  readonly assumed: string;
  readonly steps: readonly ExplainedStep[];
  /** With its unit. */
  readonly result: string;
}

export interface WorkedExample {
  readonly formula: string;
  /** As the cells show it: a single text, or the rows of a spill. */
  readonly answer: readonly (readonly string[])[];
  /** Of this very call. */
  readonly cautions: readonly string[];
  /** Where the formula is one call that was not refused. */
  readonly working?: ShownWorking;
}

/** Works an example of a declaration out, in a cell without any sheet around it. */
export type Work = (formula: string) => WorkedExample;

/** A page is read, not computed with: figures are rounded, which also keeps it the same on every machine. */
const DIGITS = 7;

const cellText = (cell: Cell): string => {
  if (cell instanceof CellError && cell.message !== '') return `${cell.code} ${cell.message}`;
  return roundedCell(cell, DIGITS) || '(empty)';
};

/** Our functions with their steps taken down; an outer call ends after those in its arguments, so the last is the outermost. */
function recorded(): { functions: CustomFunctions; last: () => Outcome | undefined } {
  let last: Outcome | undefined;
  const find: CustomFunctions['find'] = (name) => {
    const entry = catalogue.find(name);
    return entry && ((args) => (last = call(catalogue, entry, args, plainHost, new Recorder())).value);
  };
  return { functions: { find }, last: () => last };
}

const workingOf = (outcome: Outcome): ShownWorking => ({
  name: outcome.entry.member.name,
  given: argumentsShown(outcome),
  assumed: assumedOf(outcome),
  steps: stepsOf(outcome),
  result: resultShown(outcome, DIGITS) ?? '',
});

export const worked: Work = (formula) => {
  const { functions, last } = recorded();
  const value = evaluate(compile(formula.replace(/^=/, '')), { workbook: emptyWorkbook, functions, sheet: '', row: 0, column: 0 });
  const outcome = callsInFormula(formula, catalogue).single ? last() : undefined;
  return {
    formula,
    answer: Array.isArray(value) ? value.map((row) => row.map(cellText)) : [[cellText(value)]],
    // Of a refused call the only caution is its reason, which the answer tells.
    cautions: outcome === undefined || outcome.error ? [] : outcome.cautions,
    ...(outcome === undefined || outcome.error ? {} : { working: workingOf(outcome) }),
  };
};
