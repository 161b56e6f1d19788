import { element } from './dom';

export interface Tabs {
  readonly list: HTMLElement;
  /** Panels in the order of the titles. */
  readonly panels: readonly HTMLElement[];
  /** Marks a tab as the shown one and shows its panel. */
  show(place: number): void;
}

const STEPS: Readonly<Record<string, (place: number, count: number) => number>> = {
  ArrowRight: (place, count) => (place + 1) % count,
  ArrowDown: (place, count) => (place + 1) % count,
  ArrowLeft: (place, count) => (place + count - 1) % count,
  ArrowUp: (place, count) => (place + count - 1) % count,
  Home: () => 0,
  End: (_place, count) => count - 1,
};

/** Tabs by the usual pattern: one stop of the Tab key, arrow keys within. `chosen` hears of every choice of the reader. */
export function tabs(label: string, views: readonly { readonly id: string; readonly title: string }[], chosen: (place: number) => void): Tabs {
  const buttons = views.map(({ id, title }, place) => {
    const button = element('button', { class: 'jw-tab', role: 'tab', id: `jw-tab-${id}`, controls: `jw-view-${id}` }, title);
    button.type = 'button';
    button.addEventListener('click', () => chosen(place));
    return button;
  });
  const panels = views.map(({ id }) => element('section', { class: `jw-view jw-view-${id}`, id: `jw-view-${id}`, role: 'tabpanel', labelledBy: `jw-tab-${id}` }));
  const list = element('div', { class: 'jw-tabs', role: 'tablist', label }, ...buttons);
  list.addEventListener('keydown', (event) => {
    const place = buttons.findIndex((button) => button === document.activeElement);
    const step = STEPS[event.key];
    if (place < 0 || !step || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    const next = step(place, buttons.length);
    buttons[next]!.focus();
    chosen(next);
  });
  const show = (shown: number): void => buttons.forEach((button, place) => {
    button.setAttribute('aria-selected', String(place === shown));
    button.tabIndex = place === shown ? 0 : -1;
    panels[place]!.hidden = place !== shown;
  });
  return { list, panels, show };
}
