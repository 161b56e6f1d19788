import type { Kind } from '../../functions/kernel/kind';
import { argumentFacts } from '../../sheet/metadata/argument-facts';
import { button, markWrong, textInput } from '../controls';
import { element } from '../dom';
import { type FieldReading, type IsName, fieldText, readField } from './field-text';

export interface FieldEvents {
  changed(): void;
  /** The reference that the selected cell has in this formula; undefined where nothing can be taken. */
  picked(): string | undefined;
}

const choicesOf = ({ type, words }: Kind<unknown>): readonly (readonly [word: string, label: string])[] => {
  if (type === 'flag') return [['TRUE', ''], ['FALSE', '']];
  return Object.entries(words ?? {}).map(([word, synonyms]) => [word, synonyms.join(', ')] as const);
};

const SVG = 'http://www.w3.org/2000/svg';

/** Drawn, for the sign is not in every font. */
function crosshair(): SVGSVGElement {
  const picture = document.createElementNS(SVG, 'svg');
  const lines = document.createElementNS(SVG, 'path');
  lines.setAttribute('d', 'M8 1v4M8 11v4M1 8h4M11 8h4M3.5 3.5h9v9h-9z');
  for (const [name, value] of Object.entries({ viewBox: '0 0 16 16', width: '14', height: '14', fill: 'none', stroke: 'currentColor', 'stroke-width': '1.4', 'aria-hidden': 'true' })) picture.setAttribute(name, value);
  picture.append(lines);
  return picture;
}

/** One argument in the form: what it is, what it takes, what was typed, and what is wrong with it. */
export class ArgumentField {
  readonly node: HTMLElement;
  private readonly inputs: HTMLInputElement[] = [];
  private readonly places = element('div', { class: 'jw-places' });
  private readonly wrong: HTMLElement;
  private readonly holds = element('span', { class: 'jw-holds' });
  private readonly listId: string | undefined;

  constructor(readonly name: string, readonly kind: Kind<unknown>, private readonly events: FieldEvents) {
    const id = `jw-fill-${name}`;
    const { about, takes, leftOut } = argumentFacts(kind);
    const choices = choicesOf(kind);
    this.listId = choices.length === 0 ? undefined : `${id}-words`;
    this.wrong = element('p', { class: 'jw-wrong', id: `${id}-wrong` });
    const label = element('label', { class: 'jw-field-name', for: id }, name, element('span', { class: 'jw-about' }, about));
    const hint = [takes, leftOut === '' ? 'needed' : `left out: ${leftOut}`].filter((part) => part !== '').join('; ');
    this.node = element('div', { class: 'jw-field' },
      element('div', { class: 'jw-field-head' }, label, this.holds),
      this.places,
      element('p', { class: 'jw-hint', id: `${id}-hint` }, hint),
      this.wrong,
      this.listId === undefined ? undefined : element('datalist', { id: this.listId }, ...choices.map(([word, words]) => {
        const option = element('option', {}, words);
        option.value = word;
        return option;
      })),
    );
    this.addPlace();
  }

  /** Arguments as the formula holds them. */
  read(isName: IsName): FieldReading[] {
    return this.inputs.map(({ value }) => readField(value, this.kind, isName));
  }

  fill(given: readonly string[], isName: IsName): void {
    while (this.kind.shape === 'repeating' && this.inputs.length <= given.length) this.addPlace();
    given.forEach((argument, place) => void (this.inputs[place]!.value = fieldText(argument, this.kind, isName)));
  }

  get isBlank(): boolean {
    return this.inputs.every(({ value }) => value.trim() === '');
  }

  focus(): void {
    this.inputs[0]!.focus();
  }

  /** Shows what is wrong, or nothing. */
  say(words: string): void {
    if (this.wrong.textContent !== words) this.wrong.textContent = words;
    for (const input of this.inputs) markWrong(input, words !== '');
  }

  /** What the cell that is referred to holds. */
  tell(holds: string): void {
    this.holds.textContent = holds;
  }

  private addPlace(): void {
    const place = this.inputs.length;
    const id = `jw-fill-${this.name}`;
    const { kind } = this;
    const input = textInput('', { placeholder: place === 0 && kind.fallback !== undefined && !Array.isArray(kind.fallback) ? kind.show(kind.fallback) : '' });
    input.id = place === 0 ? id : `${id}-${place + 1}`;
    if (place > 0) input.setAttribute('aria-label', `${this.name} ${place + 1}`);
    input.setAttribute('aria-describedby', `${id}-hint ${id}-wrong`);
    if (this.listId !== undefined) input.setAttribute('list', this.listId);
    const pick = button('', () => this.pick(input), 'jw-pick');
    pick.append(crosshair());
    pick.title = 'Take the selected cell';
    pick.setAttribute('aria-label', `Take the selected cell into ${place === 0 ? this.name : `${this.name} ${place + 1}`}`);
    input.addEventListener('input', () => this.edited());
    this.inputs.push(input);
    this.places.append(element('div', { class: 'jw-with-button' }, input, pick));
  }

  private pick(input: HTMLInputElement): void {
    const reference = this.events.picked();
    if (reference === undefined) return;
    input.value = `=${reference}`;
    input.focus();
    this.edited();
  }

  private edited(): void {
    if (this.kind.shape === 'repeating' && this.inputs[this.inputs.length - 1]!.value.trim() !== '') this.addPlace();
    this.events.changed();
  }
}
