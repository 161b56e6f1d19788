import { element } from './dom';

/** Labelled controls in the pane's looks. */

export function button(words: string, act: () => void, className = 'jw-button'): HTMLButtonElement {
  const made = element('button', { class: className }, words);
  made.type = 'button';
  made.addEventListener('click', act);
  return made;
}

let fields = 0;

/** A control under its name, with a hint below and perhaps a button beside it. */
export function field(name: string, control: HTMLElement, { hint = '', beside }: { hint?: string; beside?: HTMLButtonElement } = {}): HTMLElement {
  fields += 1;
  control.id = `jw-field-${fields}`;
  const label = element('label', { class: 'jw-field-name' }, name);
  label.htmlFor = control.id;
  const below = hint === '' ? undefined : element('p', { class: 'jw-hint', id: `${control.id}-hint` }, hint);
  if (below) control.setAttribute('aria-describedby', below.id);
  return element('div', { class: 'jw-field' }, label, beside ? element('div', { class: 'jw-with-button' }, control, beside) : control, below);
}

export function textInput(value = '', { placeholder = '', required = false } = {}): HTMLInputElement {
  const made = element('input', { class: 'jw-input' });
  Object.assign(made, { type: 'text', value, placeholder, required, spellcheck: false, autocomplete: 'off' });
  return made;
}

export function choice<T extends string>(options: readonly (readonly [value: T, words: string])[], chosen: T): HTMLSelectElement {
  const made = element('select', { class: 'jw-input' }, ...options.map(([value, words]) => {
    const option = element('option', {}, words);
    option.value = value;
    return option;
  }));
  made.value = chosen;
  return made;
}

/** Marks an input as wrong, or as right again. */
export function markWrong(input: HTMLElement, wrong: boolean): void {
  if (wrong) input.setAttribute('aria-invalid', 'true');
  else input.removeAttribute('aria-invalid');
}
