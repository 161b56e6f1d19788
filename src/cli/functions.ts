import type { Entry } from '../functions/kernel/declaration';
import { clauseOf } from '../functions/kernel/explain';
import type { Kind } from '../functions/kernel/kind';
import { boundsWords } from '../functions/kernel/number';
import { wordsShown } from '../functions/kernel/kinds';
import { catalogue } from '../sheet/catalogue';
import { FunctionFinder } from '../sheet/find/find-functions';
import { optionsOf } from './options';
import { CouldNotRun, DONE, type Terminal, columns, oneLine } from './terminal';

/** Lists the functions, finds some by trade words, or tells all about one. */
export async function functionsCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { positionals, values } = optionsOf(args, { find: { type: 'boolean' } });
  if (values.find) return findSome(positionals.join(' '), terminal);
  const [name] = positionals;
  if (name === undefined) {
    list(catalogue.entries, terminal);
    return DONE;
  }
  const entry = catalogue.find(name);
  if (!entry) throw new CouldNotRun(`no function named ${oneLine(name)}; joulewright functions lists them`);
  for (const line of about(entry)) terminal.out(line);
  return DONE;
}

function findSome(words: string, terminal: Terminal): number {
  if (words.trim() === '') throw new CouldNotRun('--find needs words to look for');
  const found = new FunctionFinder(catalogue).find(words);
  if (found.length === 0) throw new CouldNotRun(`no function is found for ${oneLine(words)}; joulewright functions lists all`);
  list(found, terminal);
  return DONE;
}

function list(entries: readonly Entry[], terminal: Terminal): void {
  const rows = entries.map(({ declaration, member }) => [declaration.family, `JW.${member.name}`, member.summary]);
  for (const line of columns(rows)) terminal.out(line);
}

const limits = (kind: Kind<unknown>): string => {
  const parts = [
    kind.words ? wordsShown(kind.words) : '',
    kind.bounds ? boundsWords(kind.bounds, kind.unit) : '',
    kind.fallback !== undefined ? `left out: ${kind.show(kind.fallback)}` : kind.fallbackWords !== undefined ? `left out: ${kind.fallbackWords}` : kind.optional ? 'may be left out' : '',
  ];
  return parts.filter((part) => part !== '').join('; ');
};

function about({ declaration, member }: Entry): string[] {
  const parameters = Object.entries(member.parameters);
  const shown = parameters.map(([key, kind]) => `${kind.optional ? `[${key}]` : key}${kind.shape === 'repeating' ? ' …' : ''}`);
  return [
    `JW.${member.name}(${shown.join(', ')}) → ${member.result}`,
    member.summary,
    '',
    ...columns(parameters.map(([key, kind]) => [`  ${key}`, kind.about, limits(kind)])),
    '',
    ...(member.formula === '' ? [] : [`Formula  ${member.formula}`]),
    `Source   ${clauseOf(declaration)}`,
    ...(declaration.tasks.length === 0 ? [] : [`Also     ${declaration.tasks.join('; ')}`]),
    ...(declaration.caution === '' ? [] : [`Caution  ${declaration.caution}`]),
    ...declaration.examples.map((example, i) => `${i === 0 ? 'Example' : '       '}  ${example}`),
  ];
}
