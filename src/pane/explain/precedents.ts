import type { Precedent } from '../../sheet/explain/explanation';
import { element } from '../dom';
import type { PaneHost } from '../host';
import { jumpButton } from '../jump';
import { placeText } from '../places';
import type { Frame } from '../view';

/** What a cell holds, in words where there is nothing to see. */
export const heldText = (value: string): string => (value === '' ? 'blank' : value.trim() === '' ? 'a space' : value);

/** The cells that the formula reads, each with what it holds and a way there. */
export function precedentsPart(precedents: readonly Precedent[], host: PaneHost, frame: Frame): HTMLElement | undefined {
  if (precedents.length === 0) return undefined;
  const item = (precedent: Precedent): HTMLElement => element('li', {},
    jumpButton(precedent, precedent.text, host, frame, `Go to ${placeText(precedent)}`),
    element('span', { class: 'jw-held' }, heldText(precedent.value)));
  return element('ul', { class: 'jw-precedents', label: 'Cells that it reads' }, ...precedents.map(item));
}
