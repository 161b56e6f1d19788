import { element } from './dom';
import type { PaneHost } from './host';
import { sharedWatch } from './shared-watch';
import { tabs } from './tabs';
import type { Frame, View } from './view';
import { FIRST_VIEW, views as everyView } from './views';

const STANDING = 'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.';

interface Mounted {
  readonly view: View;
  readonly shown: ((subject: string | undefined) => void)[];
  readonly hidden: (() => void)[];
  end: (() => void) | undefined;
}

/** Builds the pane inside an element of the page; gives a function that takes it down. */
export function mountPane(root: HTMLElement, givenHost: PaneHost, views: readonly View[] = everyView): () => void {
  const host = sharedWatch(givenHost);
  const mounted: Mounted[] = views.map((view) => ({ view, shown: [], hidden: [], end: undefined }));
  // Screen readers hear one line for each cell, not the whole working.
  const spoken = element('p', { class: 'jw-unseen', role: 'status', live: 'polite' });
  const { list, panels, show } = tabs('Views of the pane', views, (place) => open(place, undefined));
  let current: number | undefined;

  const frameOf = (own: number): Frame => ({
    open: (id, subject) => open(views.findIndex((view) => view.id === id), subject),
    say: (words) => {
      if (spoken.textContent !== words) spoken.textContent = words;
    },
    onShow: (listener) => {
      mounted[own]!.shown.push(listener);
      if (current === own && mounted[own]!.end) listener(undefined);
    },
    onHide: (listener) => void mounted[own]!.hidden.push(listener),
  });

  function open(place: number, subject: string | undefined): void {
    const next = mounted[place];
    if (!next || (place === current && subject === undefined)) return;
    if (current !== undefined && current !== place) for (const listener of mounted[current]!.hidden) listener();
    current = place;
    show(place);
    next.end ??= next.view.mount(panels[place]!, host, frameOf(place));
    for (const listener of next.shown) listener(subject);
  }

  root.classList.add('jw-pane');
  root.replaceChildren(list, ...panels, spoken, element('p', { class: 'jw-standing' }, STANDING));
  open(Math.max(0, views.findIndex(({ id }) => id === FIRST_VIEW)), undefined);

  return () => {
    for (const { end } of mounted) end?.();
    root.replaceChildren();
  };
}
