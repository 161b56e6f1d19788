import { type Token, tokenize } from '@borgar/fx/xlsx';
import { type Catalogue, NAMESPACE, isOurName } from '../../functions/kernel/catalogue';
import type { Entry } from '../../functions/kernel/declaration';
import { areaOf, type Area } from '../evaluate/area';
import { catalogue as everyFunction } from '../catalogue';
import { FormulaForms } from '../formula/forms';
import { TOKENS } from '../formula/shift';

/** One call of our functions in a formula. */
export interface CallInFormula {
  readonly entry: Entry;
  /** The call as it stands there. */
  readonly text: string;
  /** Name that stands for this very call in `marked`. */
  readonly mark: string;
  /** Of our calls that it stands inside. */
  readonly depth: number;
}

export interface FormulaCalls {
  /** In the order in which the formula names them: an outer call before those inside it. */
  readonly calls: readonly CallInFormula[];
  /** The formula without its =, every call under its mark. */
  readonly marked: string;
  /** The formula is one call and nothing else. */
  readonly single: boolean;
  readonly areas: readonly Area[];
  /** Everything that may refer to cells, as it is written: addresses, columns of tables, names. Each once. */
  readonly references: readonly string[];
}

const forms = new FormulaForms(everyFunction.entries.map(({ member }) => member.name));

/** A formula as it is typed, without its =, whichever form it came in. */
export const typedFormula = (formula: string): string => forms.toTyped(formula.trim().replace(/^=/, ''));

const isOpening = (token: Token | undefined): boolean => token?.type === 'operator' && token.value === '(';
const isClosing = (token: Token | undefined): boolean => token?.type === 'operator' && token.value === ')';

/** Place of the bracket that closes the call whose name stands at `start`; the end of the formula where none does. */
function endOfCall(tokens: readonly Token[], start: number): number {
  let depth = 0;
  for (let place = start + 1; place < tokens.length; place += 1) {
    if (isOpening(tokens[place])) depth += 1;
    if (isClosing(tokens[place])) depth -= 1;
    if (depth === 0) return place;
  }
  return tokens.length - 1;
}

/** Finds our calls in a formula and gives each a mark of its own, so that a trace tells them apart. */
export function callsInFormula(formula: string, catalogue: Catalogue): FormulaCalls {
  const tokens = tokenize(`=${typedFormula(formula)}`, TOKENS).slice(1);
  const calls: CallInFormula[] = [];
  let single = false;
  /** Where the calls end that are open at this place. */
  let open: number[] = [];
  const marked = tokens.map((token, place) => {
    const entry = token.type === 'func' && isOurName(token.value) ? catalogue.find(token.value) : undefined;
    if (!entry) return token.value;
    const end = endOfCall(tokens, place);
    const mark = `${NAMESPACE}.CALL_${calls.length}`;
    open = open.filter((each) => each > place);
    const depth = open.push(end) - 1;
    calls.push({ entry, mark, depth, text: tokens.slice(place, end + 1).map(({ value }) => value).join('') });
    if (place === 0 && end === tokens.length - 1) single = true;
    return mark;
  });
  const areas = tokens.filter((token) => token.type.startsWith('range')).flatMap((token) => areaOf(token.value) ?? []);
  const references = tokens.filter(({ type }) => type.startsWith('range') || type === 'structured').map(({ value }) => value);
  return { calls, marked: marked.join(''), single, areas, references: [...new Set(references)] };
}
