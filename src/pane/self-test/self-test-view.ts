import { version } from '../../core/version';
import { FAMILY_TITLES } from '../../sheet/family-titles';
import { isAgreement } from '../../sheet/published/entry';
import type { Count, Tally } from '../../sheet/published/tally';
import { button } from '../controls';
import { element } from '../dom';
import type { Frame, View } from '../view';
import { comparedRow } from './compared-row';

const titles: Readonly<Record<string, string>> = FAMILY_TITLES;

const counted = ({ agree, of }: Count): string => `${agree} of ${of}`;

/** Runs the published figures through the functions as they stand in this page, and lists each with its source. */
function mount(container: HTMLElement, _host: unknown, frame: Frame): () => void {
  const result = element('div', { class: 'jw-told' });
  const run = async (): Promise<void> => {
    start.disabled = true;
    result.replaceChildren(element('p', { class: 'jw-note' }, 'Running …'));
    // The figures and their sources are only loaded by who wants to see them.
    const [{ published }, { tally }] = await Promise.all([import('../../sheet/published'), import('../../sheet/published/tally')]);
    const found = tally(published);
    result.replaceChildren(...resultOf(found));
    start.disabled = false;
    start.textContent = 'Run again';
    frame.say(headline(found));
  };
  const start = button('Run the self-test', () => void run().catch(() => {
    start.disabled = false;
    result.replaceChildren(element('p', { class: 'jw-reason' }, 'The published figures could not be loaded. Reload the page, then run it again.'));
  }), 'jw-button jw-main');
  container.replaceChildren(element('div', { class: 'jw-form' },
    element('p', { class: 'jw-start' }, `Works figures that others published with the functions of this version (${version}) and compares them in the printed digits.`),
    start, result));
  return () => undefined;
}

const headline = ({ agreement }: Tally): string => `${counted(agreement)} agree`;

function resultOf(found: Tally): HTMLElement[] {
  const { agreement, read, fromMemory, weaker, differing, families } = found;
  const fine = agreement.agree === agreement.of;
  return [
    element('p', { class: fine ? 'jw-headline' : 'jw-headline jw-error' }, headline(found)),
    element('p', { class: 'jw-note' }, `with figures that a publication prints or with the mathematics of its formula: ${counted(read)} read in the publication, ${counted(fromMemory)} from memory of it.`),
    element('p', { class: 'jw-note' }, `Beside them ${counted(weaker)} weaker checks hold (rules, constants, inferred figures): they count as no agreement.`),
    ...(differing.length === 0 ? [] : [element('section', { class: 'jw-family' }, element('h2', {}, 'Do not agree'), element('ul', {}, ...differing.map(comparedRow)))]),
    ...families.map(({ family, compared }) => {
      const strong = compared.filter(({ entry }) => isAgreement(entry));
      const weak = compared.filter(({ entry }) => !isAgreement(entry));
      const of = (list: typeof compared): Count => ({ agree: list.filter(({ agrees }) => agrees).length, of: list.length });
      const section = element('details', { class: 'jw-family' }, element('summary', {},
        element('span', { class: 'jw-name' }, titles[family] ?? family), element('span', { class: 'jw-result' }, [...(strong.length > 0 ? [`${counted(of(strong))} agree`] : []), ...(weak.length > 0 ? [`weaker ${counted(of(weak))}`] : [])].join('; '))));
      // Hundreds of rows are made only where somebody looks.
      section.addEventListener('toggle', () => {
        if (section.open && section.childElementCount === 1) section.append(element('ul', {}, ...[...strong, ...weak].map(comparedRow)));
      });
      return section;
    }),
  ];
}

export const selfTestView: View = { id: 'self-test', title: 'Self-test', mount };
