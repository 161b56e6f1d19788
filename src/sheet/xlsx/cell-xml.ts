import { type Cell, CellError } from '../../functions/kernel/cell';
import type { CellEdit } from './edit';
import type { CellFormula, StoredCell } from './read-cells';
import type { CellPlace } from './scan';
import { withAttribute } from './xml/attributes';
import { encodeEscapes, encodeXml, needsPreserve } from './xml/text';

/** How the sheet writes its elements: the prefix of their names with its colon, or nothing. */
export type Prefix = string;

/** A double as text that reads back to the same double. */
export const numberText = (value: number): string => (value === 0 ? '0' : String(value).replace('e', 'E'));

const preserve = (text: string): string => (needsPreserve(text) ? ' xml:space="preserve"' : '');

interface Content { readonly type: string | undefined; readonly xml: string }

/** A value in a cell. Text beside a formula, or inside an array, is of another type than text that was entered. */
function valueContent(value: Cell, computed: boolean, prefix: Prefix): Content {
  const v = (text: string, space = ''): string => `<${prefix}v${space}>${text}</${prefix}v>`;
  if (value === null) return { type: undefined, xml: '' };
  if (typeof value === 'number') return { type: undefined, xml: v(numberText(value)) };
  if (typeof value === 'boolean') return { type: 'b', xml: v(value ? '1' : '0') };
  if (value instanceof CellError) return { type: 'e', xml: v(value.code) };
  const text = encodeXml(encodeEscapes(value));
  if (computed) return { type: 'str', xml: v(text, preserve(value)) };
  return { type: 'inlineStr', xml: `<${prefix}is><${prefix}t${preserve(value)}>${text}</${prefix}t></${prefix}is>` };
}

export function formulaXml(formula: string, arrayRef: string | null | undefined, prefix: Prefix): string {
  const array = arrayRef == null ? '' : ` t="array" ref="${arrayRef}"`;
  return `<${prefix}f${array}${preserve(formula)}>${encodeXml(encodeEscapes(formula))}</${prefix}f>`;
}

/** A cell that the sheet does not hold yet; '' where there is nothing to hold. */
export function newCellXml(address: string, edit: CellEdit, { inArray, prefix, metadata }: Standing): string {
  const formula = typeof edit.formula === 'string' ? formulaXml(edit.formula, edit.arrayRef, prefix) : '';
  const content = valueContent(edit.value ?? null, formula !== '' || inArray, prefix);
  if (formula === '' && content.xml === '' && edit.style === undefined) return '';
  let tag = `<${prefix}c r="${address}">`;
  if (edit.style !== undefined) tag = withAttribute(tag, 's', String(edit.style));
  tag = withAttribute(tag, 't', content.type);
  if (formula !== '') tag = withAttribute(tag, 'cm', metadata);
  return closed(tag, formula + content.xml, prefix);
}

/** How a cell stands among the others of its sheet. */
export interface Standing {
  /** It belongs to the area of an array. */
  readonly inArray: boolean;
  /** Its formula is shared so far and is to be written out. */
  readonly unshared?: boolean;
  readonly prefix: Prefix;
  /** Mark of a spilling array, where its formula is one. */
  readonly metadata: string | undefined;
}

/** An existing cell with its edit; the same text where the edit changes nothing. */
export function editedCellXml(text: string, place: CellPlace, stored: StoredCell, edit: CellEdit, { inArray, unshared = false, prefix, metadata }: Standing): string {
  const rewritten = changesFormula(edit, stored);
  const given = edit.value === undefined && rewritten ? stored.value : edit.value;
  const restyled = edit.style !== undefined && edit.style !== stored.style;
  const revalued = given !== undefined && (rewritten || !sameStored(given, stored.value));
  if (!rewritten && !revalued && !restyled && !unshared) return text.slice(place.start, place.end);

  const slice = (part: { start: number; end: number } | undefined): string => (part ? text.slice(part.start, part.end) : '');
  let formula = slice(place.formula);
  if (rewritten) formula = edit.formula == null ? '' : formulaXml(edit.formula, edit.arrayRef, prefix);
  else if (unshared) formula = formulaXml(stored.formula!, null, prefix);
  let tag = text.slice(place.start, place.openEnd);
  let value = slice(place.value) + slice(place.inline);
  if (revalued) {
    const content = valueContent(given, formula !== '' || inArray, prefix);
    tag = withAttribute(withAttribute(tag, 't', content.type), 'vm', undefined);
    value = content.xml;
  }
  if (rewritten) tag = withAttribute(tag, 'cm', formula === '' ? undefined : metadata);
  if (restyled) tag = withAttribute(tag, 's', edit.style === 0 ? undefined : String(edit.style));
  return closed(tag, formula + value + restOf(text, place), prefix);
}

/** Whether an edit gives the cell another formula than it has. */
export const changesFormula = (edit: CellEdit, now: CellFormula): boolean =>
  edit.formula !== undefined && !(edit.formula === now.formula && (edit.arrayRef ?? null) === now.arrayRef);

/** What else stands in a cell (extension lists) keeps its place at the end. */
function restOf(text: string, place: CellPlace): string {
  let rest = '';
  let at = place.openEnd;
  const known = [place.formula, place.value, place.inline].filter((part) => part !== undefined).sort((a, b) => a.start - b.start);
  for (const part of known) {
    rest += text.slice(at, part.start);
    at = part.end;
  }
  rest += text.slice(at, place.closeStart);
  return rest.trim() === '' ? '' : rest;
}

function closed(tag: string, content: string, prefix: Prefix): string {
  const open = tag.replace(/\s*\/?>$/, '');
  return content === '' ? `${open}/>` : `${open}>${content}</${prefix}c>`;
}

/** Equal as a file stores them: errors by code, numbers by value. */
export function sameStored(a: Cell, b: Cell): boolean {
  return a instanceof CellError ? b instanceof CellError && a.code === b.code : a === b;
}
