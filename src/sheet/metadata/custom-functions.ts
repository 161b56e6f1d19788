import type { Catalogue } from '../../functions/kernel/catalogue';
import type { Declaration, Entry, Member } from '../../functions/kernel/declaration';
import type { Kind, WordList } from '../../functions/kernel/kind';
import { argumentLine } from './argument-facts';

/** The parts of Excel's metadata file that are used here. */
export interface CustomFunctionsMetadata {
  allowErrorForDataTypeAny: true;
  allowCustomDataForDataTypeAny: false;
  functions: FunctionMetadata[];
  enums: EnumMetadata[];
}

export interface FunctionMetadata {
  id: string;
  name: string;
  description: string;
  helpUrl: string;
  parameters: ParameterMetadata[];
  result: { dimensionality: Dimensionality };
}

export interface ParameterMetadata {
  name: string;
  description: string;
  type: 'any';
  dimensionality: Dimensionality;
  optional?: true;
  repeating?: true;
  customEnumId?: string;
}

export interface EnumMetadata {
  id: string;
  type: 'string';
  values: { name: string; stringValue: string; tooltip: string }[];
}

type Dimensionality = 'scalar' | 'matrix';

/** Page of the add-in's own server that Excel's help leads to. */
const HANDBOOK = 'https://localhost:3000/handbook.html';

/** Excel's limits on texts. */
export const DESCRIPTION_LIMIT = { function: 1024, parameter: 512, tooltip: 256 } as const;

const fitting = (text: string, limit: number): string => (text.length <= limit ? text : `${text.slice(0, limit - 1)}…`);

/** What is needed as a range arrives as one; of everything else Excel hands over the single cell. */
const takesRange = (kind: Kind<unknown>): boolean => kind.shape !== 'cell' || kind.type === 'impedance';

/**
 * Both names of a declaration share a list. The id names function and argument, so that it stays as it is
 * when functions are added.
 */
function enumId({ declaration, member }: Entry, parameter: string): string {
  const owner = declaration.members.find((other) => sameWords(other, member, parameter)) ?? member;
  return `${owner.name}.${parameter}`;
}

const sameWords = (a: Member, b: Member, parameter: string): boolean =>
  JSON.stringify(a.parameters[parameter]?.words) === JSON.stringify(b.parameters[parameter]?.words);

const enumOf = (id: string, words: WordList): EnumMetadata => ({
  id,
  type: 'string',
  values: Object.entries(words).map(([word, synonyms]) => ({
    name: word,
    stringValue: word,
    tooltip: fitting(synonyms.length === 0 ? word : `${word}, also ${synonyms.join(', ')}`, DESCRIPTION_LIMIT.tooltip),
  })),
});

/** Excel takes optional parameters at the end of the list only; one before a needed one is left blank between its commas. */
function optionalFrom(kinds: readonly Kind<unknown>[]): number {
  let place = kinds.length;
  while (place > 0 && (kinds[place - 1]!.optional || kinds[place - 1]!.shape === 'repeating')) place -= 1;
  return place;
}

function parameterOf(entry: Entry, name: string, kind: Kind<unknown>, optional: boolean): ParameterMetadata {
  return {
    name,
    description: fitting(argumentLine(kind), DESCRIPTION_LIMIT.parameter),
    // Excel converts typed arguments before the call and hides what was in the cell; "any" leaves them as they are.
    type: 'any',
    dimensionality: takesRange(kind) ? 'matrix' : 'scalar',
    ...(optional ? { optional: true } : {}),
    ...(kind.shape === 'repeating' ? { repeating: true } : {}),
    ...(kind.type === 'word' ? { customEnumId: enumId(entry, name) } : {}),
  };
}

const resultWords = (member: Member): string => {
  if (member.result === 'impedance') return 'Gives complex text in mΩ.';
  if (member.result === 'verdict') return 'Gives pass, FAIL or not shown.';
  if (member.result === 'table') return 'Fills several cells.';
  return ['text', 'word', 'as asked'].includes(member.result) ? '' : member.result === 'ratio' || member.result === '1' ? 'Gives a ratio.' : `Gives ${member.result}.`;
};

const descriptionOf = (declaration: Declaration, member: Member): string =>
  [member.summary, resultWords(member), declaration.caution].filter((part) => part !== '').join(' ');

/** Excel's description of every function in the catalogue, in the catalogue's order. */
export function customFunctionsMetadata(catalogue: Catalogue): CustomFunctionsMetadata {
  const enums = new Map<string, EnumMetadata>();
  const functions = catalogue.entries.map((entry): FunctionMetadata => {
    const { declaration, member } = entry;
    const parameters = Object.entries(member.parameters);
    for (const [name, kind] of parameters) {
      if (kind.type !== 'word' || !kind.words) continue;
      const id = enumId(entry, name);
      if (!enums.has(id)) enums.set(id, enumOf(id, kind.words));
    }
    return {
      id: member.name,
      name: member.name,
      description: fitting(descriptionOf(declaration, member), DESCRIPTION_LIMIT.function),
      helpUrl: `${HANDBOOK}#${member.name}`,
      parameters: parameters.map(([name, kind], place) => parameterOf(entry, name, kind, place >= optionalFrom(parameters.map(([, each]) => each)))),
      result: { dimensionality: member.spill ? 'matrix' : 'scalar' },
    };
  });
  return { allowErrorForDataTypeAny: true, allowCustomDataForDataTypeAny: false, functions, enums: [...enums.values()] };
}
