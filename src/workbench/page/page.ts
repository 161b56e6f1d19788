/** The frame around the grid: bar, status line, notices. Texts go in as text only. */

const byId = <E extends HTMLElement>(id: string): E => document.getElementById(id) as E;

export interface Page {
  readonly grid: HTMLElement;
  readonly pane: HTMLElement;
  readonly sample: HTMLSelectElement;
  readonly picker: HTMLInputElement;
  readonly buttons: Readonly<Record<'open' | 'save' | 'fold', HTMLButtonElement>>;
  showFile(name: string): void;
  /** Whether there are changes that were not saved. */
  showEdited(edited: boolean): void;
  say(words: string, kind?: 'plain' | 'bad'): void;
  notices(list: readonly string[]): void;
  /** Words in the place of the grid, where no file could be opened. */
  insteadOfGrid(words: string): void;
  foldPane(hidden: boolean): void;
  /** Leads the keyboard to the next part of the page, or the one before: bar, sheet, pane, foot. The sheet keeps the Tab key for its cells. */
  nextPart(step: 1 | -1): void;
  dropping(shown: boolean): void;
}

const listItem = (words: string): HTMLLIElement => Object.assign(document.createElement('li'), { textContent: words });

/** Where the keyboard enters each part of the page; the sheet by the field that takes what is typed into its cells. */
const PARTS = [
  ['bar', '#sample'], ['grid', '.o-grid-composer .o-composer'], ['pane', '[role="tab"][aria-selected="true"]'], ['foot', '#notices:not([hidden]) > summary, a'],
] as const;

function nextPart(step: 1 | -1): void {
  const parts = PARTS.map(([id, entry]) => ({ part: byId(id), entry: byId(id).hidden ? null : byId(id).querySelector<HTMLElement>(entry) })).filter(({ entry }) => entry !== null);
  const here = parts.findIndex(({ part }) => part.contains(document.activeElement));
  const next = here < 0 && step < 0 ? parts.length - 1 : (here + step + parts.length) % parts.length;
  parts[next]?.entry?.focus();
}

export function thePage(): Page {
  const [status, state, notices, fold, pane] = [byId('status'), byId('file-state'), byId<HTMLDetailsElement>('notices'), byId<HTMLButtonElement>('fold'), byId('pane')];
  // An open list lies over the sheets; looking elsewhere closes it.
  document.addEventListener('pointerdown', (event) => { if (event.target instanceof Node && !notices.contains(event.target)) notices.open = false; }, true);
  document.addEventListener('keydown', (event) => { if (event.key === 'Escape') notices.open = false; }, true);
  return {
    grid: byId('grid'),
    pane,
    sample: byId('sample'),
    picker: byId('picker'),
    buttons: { open: byId('open'), save: byId('save'), fold },
    showFile: (name) => {
      byId('file-name').textContent = name;
      document.title = `${name} – Joulewright workbench`;
    },
    showEdited: (edited) => {
      state.textContent = edited ? 'not saved' : '';
      state.classList.toggle('wb-edited', edited);
    },
    say: (words, kind = 'plain') => {
      status.textContent = words;
      status.classList.toggle('wb-bad', kind === 'bad');
    },
    notices: (list) => {
      notices.hidden = list.length === 0;
      notices.open = false;
      byId('notices-title').textContent = list.length === 1 ? '1 remark' : `${list.length} remarks`;
      byId('notice-list').replaceChildren(...list.map(listItem));
    },
    insteadOfGrid: (words) => {
      const line = Object.assign(document.createElement('p'), { className: 'wb-trouble', textContent: words });
      line.setAttribute('role', 'alert');
      byId('grid').replaceChildren(line);
    },
    foldPane: (hidden) => {
      pane.hidden = hidden;
      fold.setAttribute('aria-expanded', String(!hidden));
    },
    nextPart,
    dropping: (shown) => { byId('drop').hidden = !shown; },
  };
}
