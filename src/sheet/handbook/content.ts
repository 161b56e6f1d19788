import { version, versionDate } from '../../core/version';
import { type Catalogue, NAMESPACE } from '../../functions/kernel/catalogue';
import type { Declaration, Family, Member } from '../../functions/kernel/declaration';
import { clauseOf } from '../../functions/kernel/explain';
import { FAMILY_TITLES } from '../family-titles';
import { argumentFacts } from '../metadata/argument-facts';
import type { Work, WorkedExample } from './worked';

/** The handbook as plain facts: the Markdown and the page are made from them. */

export interface HandbookArgument {
  readonly name: string;
  readonly about: string;
  readonly takes: string;
  /** Empty where the argument is needed. */
  readonly leftOut: string;
}

export interface HandbookFunction {
  readonly name: string;
  readonly summary: string;
  readonly signature: string;
  readonly gives: string;
  readonly formula: string;
  /** Or the name of the function before it that takes the same. */
  readonly arguments: readonly HandbookArgument[] | string;
}

export interface HandbookDeclaration {
  readonly functions: readonly HandbookFunction[];
  readonly source: string;
  readonly caution: string;
  /** Words of the trade under which it is looked for. */
  readonly tasks: readonly string[];
  /** Only those with a working of their own to show have it. */
  readonly examples: readonly WorkedExample[];
}

export interface HandbookFamily {
  readonly id: Family;
  readonly title: string;
  readonly declarations: readonly HandbookDeclaration[];
}

export const TITLE = 'Handbook of worksheet functions';
/** What a print has to say of where it comes from. */
export const EDITION = `Joulewright core ${version}, ${versionDate}`;

export const RULES: readonly string[] = [
  'A blank is never zero: a needed argument left blank gives #N/A, an optional one its default, and ASSUMED tells which.',
  'A number may carry its unit as text, "63 kA" where kA or A is asked. Another kind of unit gives #VALUE! and names both.',
  'Cautions marked with an example are those of that very call; CAUTION tells those of yours.',
  'Outside the limits given here the answer is #NUM!: nothing is clamped and nothing extrapolated.',
  'Desktop Excel hands a blank cell over as 0. Where 0 has a meaning of its own, write it as text: "0".',
  'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.',
];

const signatureOf = (member: Member): string => {
  const shown = Object.entries(member.parameters).map(([name, kind]) => {
    const label = kind.shape === 'repeating' ? `${name} …` : name;
    return kind.optional ? `[${label}]` : label;
  });
  return `${NAMESPACE}.${member.name}(${shown.join(', ')})`;
};

const RESULTS: Readonly<Record<string, string>> = {
  impedance: 'complex text in mΩ', verdict: 'pass, FAIL or not shown', table: 'a table', ratio: 'a ratio', 1: 'a ratio', word: 'a word', 'as asked': 'what is asked for',
};

const givesOf = ({ result, spill }: Member): string => `${RESULTS[result] ?? result}${spill ? ', filling several cells' : ''}`;

const argumentsOf = (member: Member): HandbookArgument[] =>
  Object.entries(member.parameters).map(([name, kind]) => ({ name, ...argumentFacts(kind) }));

function functionsOf({ members }: Declaration): HandbookFunction[] {
  const read = members.map(argumentsOf);
  return members.map((member, place) => {
    const before = read.findIndex((list, i) => i < place && list.length > 0 && JSON.stringify(list) === JSON.stringify(read[place]));
    return {
      name: member.name,
      summary: member.summary,
      signature: signatureOf(member),
      gives: givesOf(member),
      formula: member.formula,
      arguments: before < 0 ? read[place]! : members[before]!.name,
    };
  });
}

/**
 * The first example of each name shows its working, as far as the core records steps for it;
 * both names of a pair that are worked alike show it once.
 */
function examplesOf({ examples, members }: Declaration, work: Work): WorkedExample[] {
  const waiting = new Set(members.map(({ name }) => name));
  const shown = new Set<string>();
  return examples.map((formula) => {
    const { working, ...example } = work(formula);
    if (working === undefined || !waiting.delete(working.name) || working.steps.length === 0) return example;
    const steps = JSON.stringify(working.steps);
    if (shown.has(steps)) return example;
    shown.add(steps);
    return { ...example, working };
  });
}

const declarationOf = (declaration: Declaration, work: Work): HandbookDeclaration => ({
  functions: functionsOf(declaration),
  source: clauseOf(declaration),
  caution: declaration.caution,
  tasks: declaration.tasks,
  examples: examplesOf(declaration, work),
});

/** Families in one order, each with its declarations in the catalogue's. */
export function handbookContent(catalogue: Catalogue, work: Work): HandbookFamily[] {
  return (Object.entries(FAMILY_TITLES) as [Family, string][]).flatMap(([id, title]) => {
    const declarations = catalogue.declarations.filter(({ family }) => family === id);
    return declarations.length === 0 ? [] : [{ id, title, declarations: declarations.map((declaration) => declarationOf(declaration, work)) }];
  });
}
