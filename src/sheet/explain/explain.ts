import { figure, rounded } from '../../core/figure';
import type { Outcome } from '../../functions/kernel/call';
import { NAMESPACE } from '../../functions/kernel/catalogue';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { argumentsShown, assumedOf, clauseOf, resultShown, stepsOf, workingLine } from '../../functions/kernel/explain';
import { catalogue } from '../catalogue';
import { sameValue } from './agreement';
import { type CallInFormula, type FormulaCalls, callsInFormula } from './calls-in-formula';
import type { Explain, ExplainedCall, ExplainedCell, Explanation } from './explanation';
import { TooMuch } from './loaded-workbook';
import { type Trace, Tracer } from './trace';

const DIGITS = 6;

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  return typeof cell === 'number' ? (Number.isInteger(cell) ? figure(cell) : rounded(cell, DIGITS)) : cell;
}

const valueText = (value: Cell | Matrix): string => (Array.isArray(value) ? `${value.length} × ${value[0]?.length ?? 0} cells` : cellText(value));
const errorOf = (value: Cell | Matrix): CellError | undefined => (value instanceof CellError ? value : undefined);

function explainedCall({ entry, text }: CallInFormula, traced: { outcome: Outcome; times: number } | undefined): ExplainedCall {
  const { declaration, member } = entry;
  const known = { name: `${NAMESPACE}.${member.name}`, text, summary: member.summary, clause: clauseOf(declaration), standingCaution: declaration.caution };
  if (!traced) return { ...known, state: 'not worked', times: 0, result: '', reason: '', line: '', given: [], steps: [], assumed: '', cautions: [] };
  const { outcome, times } = traced;
  const { error } = outcome;
  return {
    ...known,
    times,
    state: error ? 'refused' : 'worked',
    result: error ? error.code : resultShown(outcome, DIGITS) ?? '',
    reason: error ? error.message || 'an argument holds this error' : '',
    line: error ? '' : workingLine(outcome),
    given: argumentsShown(outcome),
    steps: stepsOf(outcome),
    assumed: assumedOf(outcome),
    // Of a refused call the only caution is its reason, which stands above.
    cautions: error ? [] : outcome.cautions,
  };
}

/** What the cell shows; with its unit where the formula is one call and still gives it. */
function shownValue(cell: ExplainedCell, { calls, single }: FormulaCalls, trace: Trace): string {
  const whole = single ? trace.outcomes.get(calls[0]!) : undefined;
  const withUnit = whole && !Array.isArray(cell.value) && sameValue(cell.value, trace.value) ? resultShown(whole.outcome, DIGITS) : undefined;
  return withUnit ?? valueText(cell.value);
}

function explanationOf(cell: ExplainedCell, formula: FormulaCalls, trace: Trace, remark: string): Explanation {
  const unsupported = errorOf(trace.value)?.code === '#UNSUPPORTED!';
  const agrees = unsupported || sameValue(cell.value, trace.value);
  const reason = errorOf(cell.value) && agrees && !unsupported ? errorOf(trace.value)?.message ?? '' : '';
  return {
    calls: formula.calls.map((each) => explainedCall(each, trace.outcomes.get(each))),
    value: shownValue(cell, formula, trace),
    reason,
    disagrees: agrees ? '' : `Worked again from the sheet it gives ${valueText(trace.value)}${reasonOf(trace.value)}; the cell shows ${valueText(cell.value) || 'nothing'}. Recalculate it.`,
    remark: unsupported ? `The formula could not be worked as a whole: ${errorOf(trace.value)!.message}.` : remark,
  };
}

const reasonOf = (value: Cell | Matrix): string => {
  const message = errorOf(value)?.message ?? '';
  return message === '' ? '' : ` (${message})`;
};

const nothing = (cell: ExplainedCell, remark: string): Explanation => ({ calls: [], value: valueText(cell.value), reason: errorOf(cell.value)?.message ?? '', disagrees: '', remark });

/**
 * Works the formula of a cell again from the values of its sheet and tells of each of our calls how it went:
 * arguments, steps, result, source, defaults, cautions, and the reason where it was refused.
 */
export const explain: Explain = async (cell, source, traits) => {
  if (cell.formula.trim() === '') return nothing(cell, valueText(cell.value) === '' ? '' : 'No formula in this cell.');
  const formula = callsInFormula(cell.formula, catalogue);
  if (formula.calls.length === 0) return nothing(cell, 'No JW function in this formula.');
  const tracer = new Tracer(catalogue, formula, cell, source);
  try {
    const trace = await tracer.trace({ traits, blanksAsZero: false });
    if (traits.blankArrivesAsZero && errorOf(cell.value) && !sameValue(cell.value, trace.value)) {
      const zeroes = await tracer.trace({ traits, blanksAsZero: true });
      if (sameValue(cell.value, zeroes.value)) return explanationOf(cell, formula, zeroes, 'A blank cell reached the function as 0.');
    }
    return explanationOf(cell, formula, trace, '');
  } catch (thrown) {
    if (thrown instanceof TooMuch) return nothing(cell, `The working is not shown: ${thrown.message}.`);
    throw thrown;
  }
};
