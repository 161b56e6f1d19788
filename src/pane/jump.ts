import { boxText } from '../sheet/xlsx/address';
import type { Place } from './places';
import { button } from './controls';
import { element } from './dom';
import type { PaneHost } from './host';
import type { Frame } from './view';

/** Selects a place in the sheet; where that cannot be done, the words stand behind the button. */
async function jump({ sheet, box }: Place, host: PaneHost, frame: Frame, from: HTMLElement): Promise<void> {
  const done = await host.select(sheet, boxText(box));
  from.parentElement?.querySelectorAll(':scope > .jw-refused-jump').forEach((each) => each.remove());
  if (done.done) return;
  from.after(element('span', { class: 'jw-refused-jump' }, done.words));
  frame.say(done.words);
}

/** A button that leads to cells. */
export function jumpButton(place: Place, words: string, host: PaneHost, frame: Frame, label?: string): HTMLButtonElement {
  const made: HTMLButtonElement = button(words, () => void jump(place, host, frame, made), 'jw-jump');
  if (label !== undefined) made.setAttribute('aria-label', label);
  return made;
}
