import { type Catalogue, NAMESPACE } from '../../functions/kernel/catalogue';
import type { Declaration, Family, Member } from '../../functions/kernel/declaration';
import { clauseOf } from '../../functions/kernel/explain';
import { argumentFacts } from '../metadata/argument-facts';

/** The handbook as plain facts, one page for people and one for Excel's help made from it. */

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
  readonly examples: readonly { readonly formula: string; readonly answer: string }[];
}

export interface HandbookFamily {
  readonly title: string;
  readonly declarations: readonly HandbookDeclaration[];
}

export const TITLE = 'Handbook of worksheet functions';

export const RULES: readonly string[] = [
  'A blank is never zero: a needed argument left blank gives #N/A, an optional one its default, and ASSUMED tells which.',
  'A number may carry its unit as text, "63 kA" where kA or A is asked. Another kind of unit gives #VALUE! and names both.',
  'Outside the limits given here the answer is #NUM!: nothing is clamped and nothing extrapolated.',
  'Desktop Excel hands a blank cell over as 0. Where 0 has a meaning of its own, write it as text: "0".',
  'A calculation aid, not a design approval: local codes, the maker’s current data and a licensed engineer decide.',
];

const FAMILIES: Readonly<Record<Family, string>> = {
  impedance: 'Impedances of the elements',
  fault: 'Fault currents at one place',
  network: 'Boards and couplers',
  cable: 'Conductors',
  curve: 'Time-current curves',
  duty: 'Let-through and adequacy',
  selectivity: 'Selectivity and back-up',
  hazard: 'Forces and arc energy',
  life: 'After the fault, and cost',
  check: 'Checking aids',
};

/** What a worked example answers, as a cell shows it. */
export type Worked = (formula: string) => string;

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

const declarationOf = (declaration: Declaration, worked: Worked): HandbookDeclaration => ({
  functions: functionsOf(declaration),
  source: clauseOf(declaration),
  caution: declaration.caution,
  examples: declaration.examples.map((formula) => ({ formula, answer: worked(formula) })),
});

/** Families in one order, each with its declarations in the catalogue's. */
export function handbookContent(catalogue: Catalogue, worked: Worked): HandbookFamily[] {
  return Object.entries(FAMILIES).flatMap(([family, title]) => {
    const declarations = catalogue.declarations.filter((declaration) => declaration.family === family);
    return declarations.length === 0 ? [] : [{ title, declarations: declarations.map((declaration) => declarationOf(declaration, worked)) }];
  });
}
