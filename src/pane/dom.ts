/** Builds elements. Text goes in as text only, so nothing that stands in a sheet is ever read as markup. */

type Child = Node | string | undefined;

export interface Attributes {
  class?: string;
  id?: string;
  role?: string;
  scope?: string;
  open?: boolean;
  label?: string;
  live?: 'polite' | 'off';
  labelledBy?: string;
  controls?: string;
  for?: string;
  href?: string;
  target?: string;
  rel?: string;
}

const set = (element: HTMLElement, { class: className, open, label, live, labelledBy, controls, ...plain }: Attributes): void => {
  if (className !== undefined) element.className = className;
  if (open) element.setAttribute('open', '');
  if (label !== undefined) element.setAttribute('aria-label', label);
  if (live !== undefined) element.setAttribute('aria-live', live);
  if (labelledBy !== undefined) element.setAttribute('aria-labelledby', labelledBy);
  if (controls !== undefined) element.setAttribute('aria-controls', controls);
  for (const [name, value] of Object.entries(plain)) if (value !== undefined) element.setAttribute(name, value);
};

export function element<K extends keyof HTMLElementTagNameMap>(tag: K, attributes: Attributes, ...children: readonly Child[]): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  set(made, attributes);
  made.append(...children.filter((child): child is Node | string => child !== undefined && child !== ''));
  return made;
}

/** A formula that may be broken where a reader would break it. */
export function formulaCode(className: string, formula: string, label?: string): HTMLElement {
  // The = that it begins with is not left alone on a line.
  const pieces = formula.split(/(?<=[,;(+*/&<>]|.=)/);
  const code = element('code', label === undefined ? { class: className } : { class: className, label });
  pieces.forEach((piece, i) => code.append(...(i === 0 ? [piece] : [document.createElement('wbr'), piece])));
  return code;
}
