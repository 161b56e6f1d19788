const MARKS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Characters that pages do not show, or that turn the direction of what follows, are told by their number. */
const HIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g; // eslint-disable-line no-control-regex

/** Text of a workbook as text of a page, wherever it stands in it. */
export const escapeHtml = (text: string): string =>
  text.replace(HIDDEN, (character) => `⟨${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}⟩`).replace(/[&<>"']/g, (mark) => MARKS[mark]!);

/** Markup whose holes are filled with escaped text; what is markup already is handed in as such. */
export class Markup {
  constructor(readonly text: string) {}
}

type Hole = string | number | Markup | readonly Markup[];

const filled = (hole: Hole): string => {
  if (hole instanceof Markup) return hole.text;
  return typeof hole === 'object' ? hole.map((each) => each.text).join('') : escapeHtml(String(hole));
};

export const markup = (parts: TemplateStringsArray, ...holes: Hole[]): Markup =>
  new Markup(parts.reduce((text, part, place) => text + filled(holes[place - 1]!) + part));

export const NOTHING = new Markup('');
