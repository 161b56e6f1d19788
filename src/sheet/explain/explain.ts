import { type HostTraits, faultsOf } from '../../functions/kernel/call';
import { NAMESPACE } from '../../functions/kernel/catalogue';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { argumentsShown, assumedOf, clauseOf, resultShown, stepsOf, workingLine } from '../../functions/kernel/explain';
import { catalogue } from '../catalogue';
import { roundedCell } from '../rounded-cell';
import { partOf, sameValue } from './agreement';
import { type CallInFormula, type FormulaCalls, callsInFormula } from './calls-in-formula';
import type { Explain, ExplainedCall, ExplainedCell, Explanation, Precedent } from './explanation';
import { TooMuch } from './loaded-workbook';
import { type Trace, Tracer } from './trace';

const DIGITS = 6;

const valueText = (value: Cell | Matrix, digits = DIGITS): string => (Array.isArray(value) ? `${value.length} × ${value[0]?.length ?? 0} cells` : roundedCell(value, digits));
const errorOf = (value: Cell | Matrix): CellError | undefined => (value instanceof CellError ? value : undefined);

/** The innermost call that the error of a call came from, if it only handed it on. */
function originOf({ calls }: FormulaCalls, place: number, { outcomes }: Trace): string | undefined {
  const error = outcomes.get(calls[place]!)?.outcome.error;
  const origin = error && calls.slice(place + 1).reverse().find((each) => outcomes.get(each)?.outcome.error === error);
  return origin && nameOf(origin);
}

const nameOf = ({ entry }: CallInFormula): string => `${NAMESPACE}.${entry.member.name}`;

function explainedCall(formula: FormulaCalls, place: number, trace: Trace, traits: HostTraits): ExplainedCall {
  const found = formula.calls[place]!;
  const { entry, text, depth } = found;
  const traced = trace.outcomes.get(found);
  const { declaration, member } = entry;
  const known = { name: nameOf(found), text, depth, summary: member.summary, clause: clauseOf(declaration), standingCaution: declaration.caution };
  if (!traced) return { ...known, state: 'not worked', times: 0, result: '', reason: '', line: '', given: [], steps: [], faults: [], assumed: '', cautions: [] };
  const { outcome, times } = traced;
  const { error } = outcome;
  const origin = originOf(formula, place, trace);
  return {
    ...known,
    ...(origin === undefined ? {} : { handedOnFrom: origin }),
    times,
    state: error ? 'refused' : 'worked',
    result: error ? error.code : resultShown(outcome, DIGITS) ?? '',
    reason: error ? error.message || 'an argument holds this error' : '',
    line: error ? '' : workingLine(outcome),
    given: error ? [] : argumentsShown(outcome),
    steps: stepsOf(outcome),
    faults: faultsOf(entry, traced.argv, traits),
    assumed: assumedOf(outcome),
    // Of a refused call the only caution is its reason, which stands above.
    cautions: error ? [] : outcome.cautions,
  };
}

/** What the cell shows; with its unit where the formula is one call and still gives it. */
function shownValue(cell: ExplainedCell, { calls, single }: FormulaCalls, trace: Trace): string {
  const whole = single && cell.part === undefined ? trace.outcomes.get(calls[0]!) : undefined;
  const withUnit = whole && !Array.isArray(cell.value) && sameValue(cell.value, trace.value) ? resultShown(whole.outcome, DIGITS) : undefined;
  return withUnit ?? valueText(cell.value);
}

interface Around {
  readonly traits: HostTraits;
  readonly precedents: readonly Precedent[];
}

function explanationOf(cell: ExplainedCell, formula: FormulaCalls, trace: Trace, remark: string, { traits, precedents }: Around): Explanation {
  const unsupported = errorOf(trace.value)?.code === '#UNSUPPORTED!';
  const worked = partOf(trace.value, cell.part);
  const agrees = unsupported || sameValue(cell.value, worked);
  const reason = errorOf(cell.value) && agrees && !unsupported ? errorOf(worked)?.message ?? '' : '';
  return {
    calls: formula.calls.map((_, place) => explainedCall(formula, place, trace, traits)),
    precedents,
    single: formula.single,
    value: shownValue(cell, formula, trace),
    reason,
    disagrees: agrees ? '' : disagreement(worked, cell.value),
    remark: unsupported ? `The formula could not be worked as a whole: ${errorOf(trace.value)!.message}.` : remark,
  };
}

function disagreement(worked: Cell | Matrix, shown: Cell | Matrix): string {
  // What differs in later digits only is told with all of them.
  const digits = valueText(worked) === valueText(shown) ? 15 : DIGITS;
  return `Worked again from the sheet it gives ${valueText(worked, digits) || 'nothing'}${reasonOf(worked)}; the cell shows ${valueText(shown, digits) || 'nothing'}. Recalculate it.`;
}

const reasonOf = (value: Cell | Matrix): string => {
  const message = errorOf(value)?.message ?? '';
  return message === '' ? '' : ` (${message})`;
};

const nothing = (cell: ExplainedCell, remark: string): Explanation => ({ calls: [], precedents: [], single: false, value: valueText(cell.value), reason: errorOf(cell.value)?.message ?? '', disagrees: '', remark });

async function precedentsOf({ references }: FormulaCalls, tracer: Tracer): Promise<Precedent[]> {
  const found: Precedent[] = [];
  for (const text of references) {
    const reference = await tracer.resolve(text);
    if (!reference) continue;
    const { sheet, box, value } = reference;
    const size = `${box.bottom - box.top + 1} × ${box.right - box.left + 1}`;
    found.push({ text, sheet, box, value: value === undefined ? size : valueText(value) || 'blank' });
  }
  return found;
}

/**
 * Works the formula of a cell again from the values of its sheet and tells of each of our calls how it went:
 * arguments, steps, result, source, defaults, cautions, and the reason where it was refused.
 */
export const explain: Explain = async (cell, source, traits) => {
  if (cell.formula.trim() === '') return nothing(cell, valueText(cell.value) === '' ? '' : 'No formula in this cell.');
  const formula = callsInFormula(cell.formula, catalogue);
  const tracer = new Tracer(catalogue, formula, cell, source);
  if (formula.calls.length === 0) return { ...nothing(cell, 'No JW function in this formula.'), precedents: await precedentsOf(formula, tracer) };
  try {
    const trace = await tracer.trace({ traits, blanksAsZero: false });
    const around = { traits, precedents: await precedentsOf(formula, tracer) };
    if (traits.blankArrivesAsZero && errorOf(cell.value) && !sameValue(cell.value, trace.value)) {
      const zeroes = await tracer.trace({ traits, blanksAsZero: true });
      if (sameValue(cell.value, zeroes.value)) return explanationOf(cell, formula, zeroes, 'A blank cell reached the function as 0.', around);
    }
    return explanationOf(cell, formula, trace, '', around);
  } catch (thrown) {
    if (thrown instanceof TooMuch) return nothing(cell, `The working is not shown: ${thrown.message}.`);
    throw thrown;
  }
};
