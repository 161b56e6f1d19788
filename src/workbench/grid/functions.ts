import { clauseOf } from '../../functions/kernel/explain';
import { NAMESPACE } from '../../functions/kernel/catalogue';
import type { Declaration, Entry, Member } from '../../functions/kernel/declaration';
import type { Kind } from '../../functions/kernel/kind';
import { catalogue } from '../../sheet/catalogue';
import { functionNames } from '../../sheet/evaluate';
import { argumentFacts } from '../../sheet/metadata/argument-facts';
import type { GridLibrary, GridResult } from './library';

/**
 * What the composer proposes and explains while a formula is typed. Values never come from here: formulas run through the
 * shared evaluator. Whatever would still run through the grid's own functions says so instead of giving another value.
 */

type Registry = GridLibrary['registries']['functionRegistry'];
type Description = Parameters<Registry['add']>[1];
type ArgumentHelp = Description['args'][number];

const NOT_HERE: GridResult = { value: '#UNSUPPORTED!', message: 'this formula did not pass through the evaluator of the workbench' };
const compute = (): GridResult => ({ ...NOT_HERE });

function argumentHelp(name: string, kind: Kind<unknown>): ArgumentHelp {
  const { about, takes, leftOut } = argumentFacts(kind);
  const isOptional = leftOut !== '';
  return {
    name,
    description: [about, takes, isOptional ? `left out: ${leftOut}` : ''].filter((part) => part !== '').join('; '),
    type: [kind.shape === 'cell' ? 'ANY' : 'RANGE'],
    acceptErrors: true,
    acceptMatrix: true,
    ...(isOptional ? { optional: true } : {}),
    ...(kind.shape === 'repeating' ? { repeating: true } : {}),
    ...(kind.type === 'word' && kind.words ? { proposalValues: Object.entries(kind.words).map(([word, synonyms]) => ({ value: word, label: synonyms.join(', ') })) } : {}),
  };
}

const gives = ({ result }: Member): string => {
  if (result === 'impedance') return 'Gives complex text in mΩ.';
  if (result === 'verdict') return 'Gives pass, FAIL or not shown.';
  if (result === 'table') return 'Fills several cells.';
  return ['text', 'word', 'as asked'].includes(result) ? '' : result === 'ratio' || result === '1' ? 'Gives a ratio.' : `Gives ${result}.`;
};

const aboutFunction = (declaration: Declaration, member: Member): string =>
  [member.summary, gives(member), declaration.caution, `Source: ${clauseOf(declaration)}.`].filter((part) => part !== '').join(' ');

const ours = ({ declaration, member }: Entry): Description => ({
  description: aboutFunction(declaration, member),
  category: NAMESPACE,
  isExported: true,
  args: Object.entries(member.parameters).map(([name, kind]) => argumentHelp(name, kind)),
  compute,
});

/** Functions of Excel that the grid does not list: known to the evaluator, without a page of help here. */
const excels = (name: string): Description => ({
  description: `${name}, as in Excel.`,
  category: 'Excel',
  isExported: true,
  args: [{ name: 'arguments', description: 'as in Excel', type: ['ANY'], optional: true, repeating: true, acceptErrors: true, acceptMatrix: true }],
  compute,
});

/** Puts help for every function that the evaluator knows into the grid, and takes out all that it does not know. */
export function registerFunctions({ registries, createAutocompleteArgumentsProvider }: GridLibrary): void {
  const registry = registries.functionRegistry;
  const known = new Set(functionNames());
  for (const name of registry.getKeys()) {
    const description = registry.get(name);
    // Operators and the like are listed as hidden functions; a plain call of them is unknown to Excel.
    if (!known.has(name) && !description.hidden) registry.remove(name);
    else registry.replace(name, { ...description, compute });
  }
  for (const name of known) if (!registry.contains(name)) registry.add(name, excels(name));
  for (const entry of catalogue.entries) {
    const name = `${NAMESPACE}.${entry.member.name}`;
    const description = ours(entry);
    registry.replace(name, description);
    createAutocompleteArgumentsProvider(name, description.args);
  }
}

/** Argument help opens unfolded; the page shows of it the argument that is being typed. */
export function unfoldArgumentHelp({ components }: GridLibrary): void {
  const parts = components.Composer.components as unknown as Record<string, { prototype: { setup(): void; state: { isCollapsed: boolean } } } | undefined>;
  const help = parts['FunctionDescriptionProvider'];
  if (help) help.prototype.setup = function setup() { this.state.isCollapsed = false; };
}
