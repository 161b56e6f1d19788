import { type Token, tokenize } from '@borgar/fx/xlsx';
import { NAMESPACE, isOurName } from '../../functions/kernel/catalogue';
import type { Entry, Member } from '../../functions/kernel/declaration';
import { catalogue } from '../../sheet/catalogue';
import { typedFormula } from '../../sheet/explain/calls-in-formula';

/** A call of one of our functions as a formula: from its arguments to the text and back. */

/** Arguments by parameter; a repeating parameter has as many as there are, every other one. */
export type CallArguments = Readonly<Record<string, readonly string[]>>;

/** The formula with its =. What is left out at the end is left away. */
export function callText({ name, order }: Member, given: CallArguments): string {
  const list = order.flatMap(([parameter, { shape }]) => {
    const own = given[parameter] ?? [];
    return shape === 'repeating' ? own.filter((each) => each !== '') : [own[0] ?? ''];
  });
  while (list.length > 0 && list[list.length - 1] === '') list.pop();
  return `=${NAMESPACE}.${name}(${list.join(',')})`;
}

const OPENING = new Set(['(', '{']);
const CLOSING = new Set([')', '}']);

/** The parts between the brackets of a call that spans all tokens; undefined where it does not. */
function parts(tokens: readonly Token[]): string[] | undefined {
  const list = [''];
  let depth = 0;
  for (const [place, { type, value }] of tokens.entries()) {
    if (place === 0) continue;
    const isSign = type === 'operator';
    if (isSign && CLOSING.has(value)) depth -= 1;
    if (depth === 0 && place > 1) return place === tokens.length - 1 ? list : undefined;
    if (isSign && value === ',' && depth === 1) list.push('');
    else if (depth > 0) list[list.length - 1] += value;
    if (isSign && OPENING.has(value)) depth += 1;
  }
  return undefined;
}

/** The function and arguments of a formula that is one call of ours and nothing else. */
export function readCall(formula: string): { entry: Entry; given: CallArguments } | undefined {
  const tokens = tokenize(`=${typedFormula(formula)}`, { negativeNumbers: false, mergeRefs: true }).slice(1).filter(({ type }, place, all) => type !== 'whitespace' || (place > 0 && place < all.length - 1));
  const name = tokens[0];
  const entry = name?.type === 'func' && isOurName(name.value) ? catalogue.find(name.value) : undefined;
  const list = entry && parts(tokens);
  if (!entry || !list) return undefined;
  const given: Record<string, string[]> = {};
  const { order } = entry.member;
  if (list.length > order.length && order[order.length - 1]?.[1].shape !== 'repeating' && !(order.length === 0 && list[0]!.trim() === '')) return undefined;
  order.forEach(([parameter, { shape }], place) => (given[parameter] = shape === 'repeating' ? list.slice(place) : [list[place]?.trim() ?? '']));
  return { entry, given };
}
