import type { App as AppClass } from '@odoo/owl';
import type { GridLibrary, Model } from '../grid/library';

export interface GridView {
  /** Takes the grid off the page. */
  end(): void;
}

export interface GridViewParts {
  readonly grid: GridLibrary;
  readonly App: typeof AppClass;
  readonly templates: string;
}

const words = (text: unknown): string => (typeof text === 'string' ? text : String((text as { text?: unknown } | undefined)?.text ?? ''));

/** Puts a model on the page; what the grid has to say goes to `say`. */
export async function mountGrid(parts: GridViewParts, root: HTMLElement, model: Model, say: (text: string) => void): Promise<GridView> {
  const place = document.createElement('div');
  place.style.height = '100%';
  root.replaceChildren(place);
  // The menu of a sheet's tab offers nothing that Save writes.
  place.addEventListener('contextmenu', (event) => { if (event.target instanceof Element && event.target.closest('.o-sheet-list')) event.stopPropagation(); }, true);
  const app = new parts.App(parts.grid.Spreadsheet, {
    props: {
      model,
      notifyUser: (notice: unknown) => say(words(notice)),
      raiseError: (text: unknown, after?: () => void) => {
        say(words(text));
        after?.();
      },
      askConfirmation: (text: unknown, confirm: () => void, cancel?: () => void) => (window.confirm(words(text)) ? confirm() : cancel?.()),
    },
    templates: parts.templates,
    dev: false,
  });
  await app.mount(place);
  return { end: () => app.destroy() };
}
