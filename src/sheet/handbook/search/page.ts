import { holds, searchable, termsOf } from './find';

/** The search of the handbook's page: leaves standing what holds every word of the query, and says how much that is. */

/** What of a section is searched, beside its names. */
const SEARCHED = '.summary, .tasks, .arguments tbody, .source';

interface Listed {
  readonly section: HTMLElement;
  readonly headings: readonly HTMLElement[];
  readonly links: readonly Element[];
  readonly names: string;
  readonly text: string;
}

const all = <E extends Element = HTMLElement>(root: ParentNode, selector: string): E[] => [...root.querySelectorAll<E>(selector)];
const byId = <E extends HTMLElement = HTMLElement>(id: string): E => document.getElementById(id) as E;

const box = byId<HTMLInputElement>('query');
const found = byId('found');
const contents = byId<HTMLDetailsElement>('contents');
const main = document.querySelector('main')!;
const rules = main.querySelector<HTMLElement>('.rules')!;

const linkOf = new Map(all(contents, 'li').map((item) => [item.textContent!.trim(), item]));

const listed: readonly Listed[] = all(main, 'section').map((section) => {
  const headings = all(section, 'h3');
  const names = headings.map(({ id }) => id);
  return {
    section,
    headings,
    links: names.map((name) => linkOf.get(name)!),
    names: searchable(names.join(' ')),
    text: searchable([...names, ...all(section, SEARCHED).map((part) => all(part, 'th, td').map((cell) => cell.textContent).join(' ') || part.textContent)].join(' ')),
  };
});
const functions = listed.reduce((sum, { headings }) => sum + headings.length, 0);

const hide = (element: Element, hidden: boolean): void => void element.toggleAttribute('hidden', hidden);

/** A family stands as long as one of its functions does. */
function foldFamilies(): void {
  for (const family of [...all(main, '.part'), ...all(contents, 'nav > div')]) hide(family, !family.querySelector('section:not([hidden]), li:not([hidden])'));
}

const words = (count: number): string =>
  count === 0 ? 'No function has all these words. Try fewer, or the beginning of one: cab, fuse, 60909.' : `${count} of ${functions} functions`;

function search(): void {
  const terms = termsOf(box.value);
  let count = 0;
  for (const { section, headings, links, text } of listed) {
    const stands = holds(text, terms);
    hide(section, !stands);
    for (const link of links) hide(link, !stands);
    if (stands) count += headings.length;
  }
  foldFamilies();
  hide(rules, terms.length > 0);
  hide(contents, count === 0);
  found.textContent = terms.length === 0 ? '' : words(count);
}

/** To the first function that has the words in its name, or else to the first that stands. */
function goToFirst(): void {
  const terms = termsOf(box.value);
  const standing = listed.filter(({ section }) => !section.hidden);
  const first = standing.find(({ names }) => holds(names, terms)) ?? standing[0];
  const heading = first?.headings.find(({ id }) => holds(searchable(id), terms)) ?? first?.headings[0];
  if (terms.length === 0 || !heading) return;
  location.hash = heading.id;
  heading.querySelector('a')!.focus();
}

function clear(): void {
  box.value = '';
  search();
}

/** An address that names a function shows it, whatever was searched for before. */
function showTarget(): void {
  const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  if (!target?.closest('[hidden]')) return;
  clear();
  target.scrollIntoView();
}

box.addEventListener('input', () => {
  search();
  // What was found begins at the top, wherever one had read before.
  scrollTo({ top: 0 });
});
box.addEventListener('keydown', (event) => {
  if (event.isComposing) return;
  if (event.key === 'Enter') goToFirst();
  else if (event.key === 'Escape') clear();
  else return;
  event.preventDefault();
});
document.addEventListener('keydown', (event) => {
  if (event.key !== '/' || event.ctrlKey || event.metaKey || event.altKey || event.target === box) return;
  event.preventDefault();
  box.focus();
  box.select();
});
window.addEventListener('hashchange', showTarget);

// In a narrow window the contents would stand before everything else.
contents.open = matchMedia('(min-width: 60em)').matches;
byId('search').hidden = false;
// A page that is shown again may still hold the words of before.
search();
