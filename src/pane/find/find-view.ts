import { NAMESPACE } from '../../functions/kernel/catalogue';
import type { Entry, Family } from '../../functions/kernel/declaration';
import { catalogue } from '../../sheet/catalogue';
import { FAMILY_TITLES } from '../../sheet/family-titles';
import { FunctionFinder } from '../../sheet/find/find-functions';
import { button, textInput } from '../controls';
import { element } from '../dom';
import type { PaneHost } from '../host';
import { recentFunctions } from '../session';
import type { Frame, View } from '../view';

const QUESTION = 'What do you want to know?';
const EXAMPLE = 'will the cable stand it';

/** Finds functions by trade words, by family, and those used last; hands the chosen one to the form. */
function mount(container: HTMLElement, _host: PaneHost, frame: Frame): () => void {
  const finder = new FunctionFinder(catalogue);
  const question = textInput('', { placeholder: `such as: ${EXAMPLE}` });
  question.type = 'search';
  question.setAttribute('aria-label', QUESTION);
  const answers = element('div', { class: 'jw-answers' });
  const open = ({ member }: Entry): void => frame.open('fill', member.name);

  const show = (): void => {
    const asked = question.value.trim();
    if (asked === '') {
      answers.replaceChildren(...recentPart(open), ...families(open));
      return;
    }
    const found = finder.find(asked);
    const heading = found.length === 0 ? `Nothing is found for “${asked}”. All functions, by family:` : `${found.length} ${found.length === 1 ? 'function' : 'functions'}`;
    answers.replaceChildren(...recentPart(open), element('p', { class: 'jw-note' }, heading), ...(found.length === 0 ? families(open) : [functionList(found, open)]));
    frame.say(heading);
  };

  const search = element('form', { class: 'jw-search', role: 'search' }, question);
  search.addEventListener('submit', (event) => {
    event.preventDefault();
    answers.querySelector('button')?.click();
  });
  question.addEventListener('input', show);
  container.addEventListener('keydown', (event) => walk(event, question, answers));
  container.replaceChildren(search, answers);
  frame.onShow((subject) => {
    if (subject !== undefined) {
      question.value = subject;
      question.focus();
    }
    show();
  });
  return () => undefined;
}

export const findView: View = { id: 'find', title: 'Find', mount };

/** Arrow keys go from the question through the answers that are in sight. */
function walk(event: KeyboardEvent, question: HTMLElement, answers: HTMLElement): void {
  if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
  const stops = [question, ...answers.querySelectorAll<HTMLElement>('button, summary')].filter((stop) => stop.offsetParent !== null);
  const place = stops.findIndex((stop) => stop === document.activeElement);
  const next = stops[place + (event.key === 'ArrowDown' ? 1 : -1)];
  if (place < 0 || !next) return;
  event.preventDefault();
  next.focus();
}

function functionButton(entry: Entry, open: (entry: Entry) => void): HTMLElement {
  const { name, summary } = entry.member;
  const made = button('', () => open(entry), 'jw-found');
  made.append(element('span', { class: 'jw-name' }, `${NAMESPACE}.${name}`), element('span', { class: 'jw-summary' }, summary));
  return made;
}

const functionList = (entries: readonly Entry[], open: (entry: Entry) => void): HTMLElement =>
  element('ul', { class: 'jw-list' }, ...entries.map((entry) => element('li', {}, functionButton(entry, open))));

function recentPart(open: (entry: Entry) => void): HTMLElement[] {
  const entries = recentFunctions().flatMap((name) => catalogue.find(name) ?? []);
  if (entries.length === 0) return [];
  const chips = entries.map((entry) => button(`${NAMESPACE}.${entry.member.name}`, () => open(entry), 'jw-chip'));
  return [element('h2', {}, 'Used last'), element('p', { class: 'jw-chips' }, ...chips)];
}

const families = (open: (entry: Entry) => void): HTMLElement[] =>
  (Object.entries(FAMILY_TITLES) as [Family, string][]).map(([family, title]) => {
    const entries = catalogue.entries.filter(({ declaration }) => declaration.family === family);
    return element('details', { class: 'jw-family' },
      element('summary', {}, element('span', {}, title), element('span', { class: 'jw-count' }, String(entries.length))),
      functionList(entries, open));
  });
