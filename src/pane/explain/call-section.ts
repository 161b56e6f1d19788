import { bareName } from '../../functions/kernel/catalogue';
import type { ExplainedCall } from '../../sheet/explain/explanation';
import { element, formulaCode } from '../dom';

export interface CallView {
  open: boolean;
  /** The formula is nothing but this call, so its text stands above already. */
  alone: boolean;
  /** Reason that stands above already. */
  knownReason: string;
}

const reasonOf = ({ handedOnFrom, reason }: ExplainedCall, known: string): string => {
  if (handedOnFrom !== undefined) return `Hands on the error of ${handedOnFrom}.`;
  return reason === known ? '' : reason;
};

/** A verdict is seen before it is read. */
export const verdictClass = (result: string): string => ({ FAIL: 'jw-fails', 'not shown': 'jw-not-shown' })[result] ?? '';

/** Deeper calls are not indented further: the pane is narrow. */
const DEEPEST_SHOWN = 4;

/** One call of our functions: result, reason of a refusal, working, source, defaults, cautions. */
export function callSection(call: ExplainedCall, { open, alone, knownReason }: CallView): HTMLElement {
  const reason = reasonOf(call, knownReason);
  const level = call.depth === 0 ? '' : ` jw-inner jw-depth-${Math.min(call.depth, DEEPEST_SHOWN)}`;
  return element('details', { class: `jw-call jw-${call.state.replace(' ', '-')}${level}`, open },
    element('summary', {},
      element('span', { class: 'jw-name' }, call.name),
      call.depth === 0 ? undefined : element('span', { class: 'jw-unseen' }, `inside, level ${call.depth}`),
      element('span', { class: `jw-result ${verdictClass(call.result)}`.trim() }, call.state === 'not worked' ? 'not needed here' : call.result),
    ),
    element('p', { class: 'jw-summary' }, `${call.summary} `, handbookLink(call)),
    alone ? undefined : formulaCode('jw-text', call.text),
    reason === '' ? undefined : element('p', { class: 'jw-reason' }, reason),
    call.state === 'worked' && call.line !== '' ? element('p', { class: 'jw-line' }, call.line) : undefined,
    call.times > 1 ? element('p', { class: 'jw-note' }, `Worked ${call.times} times in this formula; the last one is shown.`) : undefined,
    workingTable(call),
    facts(call),
  );
}

/** The handbook stands beside the page of every host. */
const handbookLink = ({ name }: ExplainedCall): HTMLElement =>
  element('a', { href: `handbook.html#${bareName(name)}`, target: '_blank', rel: 'noopener', label: `Handbook: ${name}` }, 'Handbook');

const row = (...cells: readonly HTMLElement[]): HTMLElement => element('tr', {}, ...cells);

/** A figure keeps its unit on its line; only what is longer may be broken. */
const LONGEST_FIGURE = 26;
const figure = (text: string): HTMLElement => element('td', text.length <= LONGEST_FIGURE ? { class: 'jw-short' } : {}, text);

function workingTable({ given, steps }: ExplainedCall): HTMLElement | undefined {
  if (given.length === 0 && steps.length === 0) return undefined;
  return element('table', { class: 'jw-working' },
    element('caption', { class: 'jw-unseen' }, 'Working'),
    element('thead', { class: 'jw-unseen' }, row(element('th', { scope: 'col' }, 'quantity'), element('th', { scope: 'col' }, 'value'))),
    element('tbody', { class: 'jw-given' }, ...given.map(({ name, text }) => row(element('th', { scope: 'row' }, name), figure(text)))),
    steps.length === 0 ? undefined : element('tbody', { class: 'jw-steps' },
      ...steps.map(({ step, inputs, value }) => row(
        element('th', { scope: 'row' }, step, inputs === '' ? undefined : element('span', { class: 'jw-inputs' }, inputs)),
        figure(value),
      ))),
  );
}

const INSIDE = 'every argument is inside its bounds';

function limits({ state, faults, handedOnFrom }: ExplainedCall, known: string): string {
  if (state === 'not worked' || handedOnFrom !== undefined) return '';
  if (faults.length === 0) return state === 'worked' ? INSIDE : 'each argument by itself is inside its bounds';
  const words = faults.map((fault) => fault.words);
  return words.length === 1 && words[0] === known ? '' : words.join('; ');
}

function facts(call: ExplainedCall): HTMLElement {
  const { assumed, cautions, standingCaution, clause, reason } = call;
  const pairs: [string, string, string][] = [
    ['Caution', cautions.join('; '), 'jw-caution'],
    ['Defaults', assumed, ''],
    ['Limits', limits(call, reason), ''],
    ['Source', clause, ''],
    ['Note', standingCaution, ''],
  ];
  return element('dl', { class: 'jw-facts' },
    ...pairs.filter(([, text]) => text !== '').flatMap(([term, text, className]) => [
      element('dt', { class: className }, term),
      element('dd', { class: className }, text),
    ]));
}
