import { catalogue } from '../../sheet/catalogue';
import { CLASS_WORDS, FINDING_CLASSES, type Checked, type Finding, checkWorkbook } from '../../sheet/check';
import { parseBox } from '../../sheet/xlsx/address';
import { WorkbookRefusal } from '../../sheet/xlsx/refusal';
import { button } from '../controls';
import { element } from '../dom';
import type { PaneHost } from '../host';
import { jumpButton } from '../jump';
import { sheetPrefix } from '../fill/reference';
import type { Frame } from '../view';

/** The check of the whole file, as the command line makes it, with its findings listed. */

type Outcome = { readonly checked: Checked } | { readonly words: string };

async function checkedFile(host: PaneHost): Promise<Outcome> {
  try {
    const file = await host.file();
    return 'done' in file ? { words: file.words } : { checked: checkWorkbook(file, catalogue) };
  } catch (thrown) {
    return { words: thrown instanceof WorkbookRefusal ? thrown.message : 'The workbook could not be checked: something in it is not understood here.' };
  }
}

function placeOf({ sheet, cell }: Finding, host: PaneHost, frame: Frame): HTMLElement {
  const box = parseBox(cell);
  const words = sheet === '' ? 'workbook' : `${sheetPrefix(sheet)}${cell}`.replace(/!$/, '');
  return box ? jumpButton({ sheet, box }, words, host, frame) : element('span', { class: 'jw-jump-none' }, words);
}

const findingItem = (finding: Finding, host: PaneHost, frame: Frame): HTMLElement => element('li', { class: 'jw-finding' },
  placeOf(finding, host, frame),
  element('span', { class: 'jw-kind' }, finding.kind),
  element('p', {}, finding.reason),
);

function summary({ formulas, checked, notChecked }: Checked): string {
  const rest = notChecked === 0 ? '' : `; ${notChecked} could not be checked and ${notChecked === 1 ? 'is' : 'are'} among the findings or explained by them`;
  return `${checked} of ${formulas} formulas worked again from what the sheets hold${rest}.`;
}

function findingsPart(checked: Checked, sheet: string | undefined, host: PaneHost, frame: Frame): HTMLElement[] {
  const here = checked.findings.filter((finding) => sheet === undefined || finding.sheet === sheet || finding.sheet === '');
  const elsewhere = checked.findings.length - here.length;
  return [
    element('p', { class: 'jw-note' }, summary(checked)),
    ...FINDING_CLASSES.flatMap((each) => {
      const list = here.filter((finding) => finding.class === each);
      if (list.length === 0) return [];
      return [element('h3', {}, `${each}: ${CLASS_WORDS[each]} (${list.length})`), element('ul', { class: 'jw-list' }, ...list.map((finding) => findingItem(finding, host, frame)))];
    }),
    here.length === 0 ? element('p', { class: 'jw-note' }, 'Nothing found here.') : undefined,
    elsewhere === 0 ? undefined : element('p', { class: 'jw-note' }, `${elsewhere} more on other sheets: choose the whole workbook above.`),
  ].filter((part) => part !== undefined);
}

export interface CheckPart {
  readonly node: HTMLElement;
  /** Lists what was found for another sheet, or for all. */
  show(sheet: string | undefined): void;
}

export function checkPart(host: PaneHost, frame: Frame): CheckPart {
  const answer = element('div', { class: 'jw-check' });
  let outcome: Outcome | undefined;
  let scope: string | undefined;
  const show = (): void => {
    if (!outcome) return;
    answer.replaceChildren(...('words' in outcome ? [element('p', { class: 'jw-trouble' }, outcome.words)] : findingsPart(outcome.checked, scope, host, frame)));
  };
  const run = async (): Promise<void> => {
    answer.replaceChildren(element('p', { class: 'jw-note' }, 'Checking…'));
    // The line above is to be seen before the work begins.
    await new Promise((resolve) => setTimeout(resolve, 30));
    outcome = await checkedFile(host);
    show();
    frame.say('words' in outcome ? outcome.words : `${outcome.checked.findings.length} findings`);
  };
  const node = element('section', { class: 'jw-check-part', label: 'Check' },
    element('h2', {}, 'Check'),
    element('p', { class: 'jw-note' }, 'Looks for what a checker looks for: values that their formulas do not give, overwritten formulas, wrong units, unlike neighbours.'),
    element('p', { class: 'jw-actions' }, button('Check', () => void run())),
    answer,
  );
  return {
    node,
    show: (sheet) => {
      scope = sheet;
      show();
    },
  };
}
