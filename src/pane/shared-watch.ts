import type { PaneHost, Selection } from './host';

/** A host that is watched once however many views listen; whoever comes later hears at once what was told last. */
export function sharedWatch(host: PaneHost): PaneHost {
  const listeners = new Set<(selection: Selection) => void>();
  let last: Selection | undefined;
  let end: (() => void) | undefined;
  const tell = (selection: Selection): void => {
    last = selection;
    for (const listener of [...listeners]) listener(selection);
  };
  const watch = (listener: (selection: Selection) => void): (() => void) => {
    listeners.add(listener);
    if (end) {
      if (last) listener(last);
    } else end = host.watch(tell);
    return () => {
      listeners.delete(listener);
      if (listeners.size > 0) return;
      end?.();
      end = last = undefined;
    };
  };
  // A host may be a class: its methods stay where they are.
  return Object.create(host, { watch: { value: watch } }) as PaneHost;
}
