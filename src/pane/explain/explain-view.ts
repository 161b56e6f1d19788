import { explain } from '../../sheet/explain/explain';
import { typedFormula } from '../../sheet/explain/calls-in-formula';
import type { Explanation } from '../../sheet/explain/explanation';
import { button } from '../controls';
import { element, formulaCode } from '../dom';
import type { PaneHost, Selection } from '../host';
import type { Frame, View } from '../view';
import { callSection, verdictClass } from './call-section';
import { heldText, precedentsPart } from './precedents';

const START = 'Select a cell with a JW formula to see its working, source and cautions, or find the function for what you want to know.';

type SelectedCell = Extract<Selection, { kind: 'cell' }>;

/** Shows the working of the selected cell while it is in sight. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  const body = element('div', { class: 'jw-body' });
  container.replaceChildren(body);

  let turn = 0;
  /** What stands there now, so that a recalculation that changes nothing does not fold up what the reader opened. */
  let standing = { cell: '', all: '' };
  const show = (line: string, ...content: readonly HTMLElement[]): void => {
    standing = { cell: '', all: '' };
    body.replaceChildren(...content);
    frame.say(line);
  };
  const select = async (selection: Selection): Promise<void> => {
    turn += 1;
    const mine = turn;
    if (selection.kind === 'nothing') return show(START, ...firstUse(frame));
    if (selection.kind === 'trouble') return show(selection.words, element('p', { class: 'jw-trouble' }, selection.words));
    const explanation = await explain(selection, host.source, host.traits).catch((): Explanation => NOTHING);
    // Another cell was selected meanwhile.
    if (mine !== turn) return;
    const now = { cell: JSON.stringify([selection.sheet, selection.address, selection.formula]), all: JSON.stringify([selection, explanation]) };
    if (now.all === standing.all) return;
    const sameCell = now.cell === standing.cell;
    const before = sameCell ? [...body.querySelectorAll('details')] : [];
    const focused = before.findIndex((each) => each.contains(document.activeElement));
    show(spokenLine(selection, explanation), ...cellContent(selection, explanation, before.map(({ open }) => open), { host, frame }));
    body.querySelectorAll('summary')[focused]?.focus();
    standing = now;
  };

  let stop: (() => void) | undefined;
  const end = (): void => {
    turn += 1;
    stop?.();
    stop = undefined;
  };
  frame.onShow(() => (stop ??= host.watch((selection) => void select(selection))));
  frame.onHide(end);
  return end;
}

export const explainView: View = { id: 'explain', title: 'Explain', mount };

const NOTHING: Explanation = { calls: [], precedents: [], single: false, value: '', reason: '', disagrees: '', remark: 'The working of this cell could not be read. Select it again.' };

/** The call that an error comes from is open, wherever it stands. */
const isCause = ({ state, handedOnFrom }: Explanation['calls'][number]): boolean => state === 'refused' && handedOnFrom === undefined;

const spokenLine = ({ address }: SelectedCell, { value, reason, remark }: Explanation): string =>
  [`${address}: ${heldText(value)}`, reason, remark].filter((part) => part !== '').join('. ');

/** One sentence and one button: what there is to do where nothing is to be explained. */
const firstUse = (frame: Frame): HTMLElement[] => [element('p', { class: 'jw-start' }, START), button('Find a function', () => frame.open('find', ''), 'jw-button jw-main')];

/** Running text stands as text, not as a figure. */
const LONGEST_FIGURE = 24;
const isRunningText = ({ formula, value }: SelectedCell, shown: string): boolean => typeof value === 'string' && (shown.length > LONGEST_FIGURE || (formula === '' && /\s/.test(value)));
const valueClass = (cell: SelectedCell, { value, reason }: Explanation): string =>
  ['jw-value', reason !== '' ? 'jw-error' : isRunningText(cell, value) ? 'jw-words' : verdictClass(value)].filter((name) => name !== '').join(' ');

interface Around {
  readonly host: PaneHost;
  readonly frame: Frame;
}

function cellContent(cell: SelectedCell, explanation: Explanation, opened: readonly boolean[], { host, frame }: Around): HTMLElement[] {
  const { calls, value, reason, disagrees, remark, single, precedents } = explanation;
  const parts: (HTMLElement | undefined)[] = [
    element('div', { class: 'jw-cell' },
      element('h2', {}, cell.address, cell.within === undefined ? undefined : element('span', { class: 'jw-within' }, ` in ${cell.within}`)),
      element('p', { class: valueClass(cell, explanation) }, heldText(value)),
      cell.spilledFrom === undefined ? undefined : element('p', { class: 'jw-note' }, `Filled by the formula in ${cell.spilledFrom}.`),
    ),
    reason === '' ? undefined : element('p', { class: 'jw-reason' }, reason),
    cell.formula === '' ? undefined : formulaCode('jw-formula', `=${typedFormula(cell.formula)}`, 'formula'),
    disagrees === '' ? undefined : element('p', { class: 'jw-disagrees' }, disagrees),
    remark === '' ? undefined : element('p', { class: 'jw-note' }, remark),
    precedentsPart(precedents, host, frame),
    ...(calls.length === 0 && remark !== NOTHING.remark ? firstUse(frame) : []),
    ...calls.map((call, i) => callSection(call, { open: opened[i] ?? (i === 0 || isCause(call)), alone: calls.length === 1, knownReason: reason })),
    single && calls[0] ? element('p', { class: 'jw-actions' }, button('Change its arguments', () => frame.open('fill', `=${typedFormula(cell.formula)}`))) : undefined,
  ];
  return parts.filter((part) => part !== undefined);
}
