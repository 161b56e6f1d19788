import type { Entry } from '../../functions/kernel/declaration';
import { catalogue } from '../../sheet/catalogue';
import { button } from '../controls';
import { element } from '../dom';
import type { PaneHost, Selection } from '../host';
import type { Frame, View } from '../view';
import { type CallArguments, readCall } from './call-text';
import { FillForm } from './form';

const START = 'Say what you want to know; the formula is then filled in here and written into the selected cell.';

/** The form of one function: from arguments to a formula in a cell. */
function mount(container: HTMLElement, host: PaneHost, frame: Frame): () => void {
  let selection: Selection = { kind: 'nothing' };
  let form: FillForm | undefined;
  let stop: (() => void) | undefined;

  const start = (): void => container.replaceChildren(
    element('p', { class: 'jw-start' }, START),
    button('Find a function', () => frame.open('find', ''), 'jw-button jw-main'),
  );
  const show = (entry: Entry, given: CallArguments | undefined): void => {
    form?.end();
    form = new FillForm(entry, host, frame, () => (selection.kind === 'cell' ? selection : undefined));
    container.replaceChildren(form.node);
    form.begin(given);
  };
  /** A function by its name, or a formula whose arguments are to be changed. */
  const open = (subject: string): void => {
    const call = subject.startsWith('=') ? readCall(subject) : undefined;
    const entry = call?.entry ?? catalogue.find(subject);
    if (entry) show(entry, call?.given);
  };

  start();
  frame.onShow((subject) => {
    stop ??= host.watch((told) => {
      selection = told;
      form?.selected();
    });
    if (subject !== undefined) open(subject);
  });
  frame.onHide(() => {
    stop?.();
    stop = undefined;
  });
  return () => {
    stop?.();
    form?.end();
  };
}

export const fillView: View = { id: 'fill', title: 'Fill', mount };
