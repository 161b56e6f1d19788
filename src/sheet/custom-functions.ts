import { call, plainHost } from '../functions/kernel/call';
import { type Catalogue, isOurName } from '../functions/kernel/catalogue';
import { catalogue } from './catalogue';
import type { CustomFunction, CustomFunctions } from './evaluate/context';

/** The functions of a catalogue as the evaluator calls them, under the names that formulas and files use. */
export function customFunctionsOf(functions: Catalogue): CustomFunctions {
  const made = new Map<string, CustomFunction>();
  for (const entry of functions.entries) made.set(entry.member.name, (args) => call(functions, entry, args, plainHost).value);
  return { find: (name) => (isOurName(name) ? made.get(functions.find(name)?.member.name ?? '') : undefined) };
}

/** All worksheet functions. */
export const customFunctions = customFunctionsOf(catalogue);
