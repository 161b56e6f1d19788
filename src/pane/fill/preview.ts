import { explain } from '../../sheet/explain/explain';
import type { ExplainedCall, Explanation } from '../../sheet/explain/explanation';
import type { PaneHost } from '../host';
import type { Target } from './reference';

/** What a formula would give if it stood in a cell, before it does. */
export interface Preview {
  readonly call: ExplainedCall | undefined;
  readonly inner: readonly ExplainedCall[];
  /** Faults by argument, without its name. */
  readonly faults: ReadonlyMap<string, string>;
  /** Why there is no result, where no argument alone is to blame. */
  readonly reason: string;
  /** What single cells hold that the formula names, by the text that names them. */
  readonly held: ReadonlyMap<string, string>;
  /** The formula reads the cell that it is to stand in. */
  readonly circular: boolean;
}

const withoutName = (words: string, name: string): string => (words.startsWith(`${name}: `) ? words.slice(name.length + 2) : words.replace(`missing: ${name}`, 'the cell is blank'));

function faultsIn({ faults, state, reason }: ExplainedCall, names: readonly string[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { argument, words } of faults) if (names.includes(argument) && !found.has(argument)) found.set(argument, withoutName(words, argument));
  // Rules between arguments name the one to be looked at first.
  const blamed = state === 'refused' ? names.find((name) => reason.startsWith(`${name}: `)) : undefined;
  if (blamed !== undefined && found.size === 0) found.set(blamed, withoutName(reason, blamed));
  return found;
}

function inPlace({ precedents }: Explanation, { sheet, row, column }: Target): boolean {
  return precedents.some((each) => each.sheet.toLowerCase() === sheet.toLowerCase() && row >= each.box.top && row <= each.box.bottom && column >= each.box.left && column <= each.box.right);
}

export async function previewOf(formula: string, names: readonly string[], target: Target, host: PaneHost): Promise<Preview> {
  const explanation = await explain({ ...target, formula, value: null }, host.source, host.traits);
  const [call, ...inner] = explanation.calls;
  const faults = call ? faultsIn(call, names) : new Map<string, string>();
  const unexplained = call?.state === 'refused' && faults.size === 0 ? call.reason : '';
  return {
    call, inner, faults, circular: inPlace(explanation, target),
    reason: unexplained || explanation.remark,
    held: new Map(explanation.precedents.map(({ text, value }) => [text, value])),
  };
}
