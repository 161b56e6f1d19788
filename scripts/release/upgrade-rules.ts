import type { Catalogue } from '../../src/functions/kernel/catalogue';
import type { CustomFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';

/**
 * What a new version may not change of a released one, because formulas in people's files stand on it: Excel ties a saved formula to the id of
 * its function and to the places of its arguments.
 */
export interface ReleasedParameter {
  name: string;
  dimensionality: string;
  optional?: true;
  repeating?: true;
  /** Nothing but its words is taken. */
  listed?: true;
  /** Every word that is taken, synonyms among them. */
  words?: string[];
}

export interface ReleasedFunction {
  id: string;
  name: string;
  result: string;
  parameters: ReleasedParameter[];
}

export interface Released {
  version: string;
  functions: ReleasedFunction[];
}

/** The part of functions.json that formulas stand on, with the words that arguments take; descriptions and help addresses may change. */
export function releasedPart(version: string, metadata: CustomFunctionsMetadata, catalogue: Catalogue): Released {
  const wordsOf = (id: string, name: string): string[] => Object.entries(catalogue.find(id)?.member.parameters[name]?.words ?? {}).flatMap(([word, synonyms]) => [word, ...synonyms]);
  return {
    version,
    functions: metadata.functions.map(({ id, name, result, parameters }) => ({
      id, name, result: result.dimensionality,
      parameters: parameters.map((each) => ({
        name: each.name, dimensionality: each.dimensionality,
        ...(each.optional ? { optional: true as const } : {}),
        ...(each.repeating ? { repeating: true as const } : {}),
        ...(each.customEnumId === undefined ? {} : { listed: true as const }),
        ...(wordsOf(id, each.name).length === 0 ? {} : { words: wordsOf(id, each.name) }),
      })),
    })),
  };
}

/** One function a line, so that a comparison of two releases reads well. */
export const releasedText = ({ version, functions }: Released): string =>
  `{\n"version": ${JSON.stringify(version)},\n"functions": [\n${functions.map((each) => JSON.stringify(each)).join(',\n')}\n]\n}\n`;

function parameterFaults(where: string, before: ReleasedParameter, now: ReleasedParameter): string[] {
  const faults: string[] = [];
  if (before.optional && !now.optional) faults.push(`${where} was optional and is needed now`);
  if (before.dimensionality !== now.dimensionality) faults.push(`${where} was a ${before.dimensionality} and is a ${now.dimensionality} now`);
  if (Boolean(before.repeating) !== Boolean(now.repeating)) faults.push(`${where} ${before.repeating ? 'was' : 'is now'} repeating`);
  for (const word of before.words ?? []) if (!now.words?.includes(word)) faults.push(`${where} no longer takes "${word}"`);
  if (!before.listed && now.listed) faults.push(`${where} took any value and takes a list of words now`);
  return faults;
}

function functionFaults(before: ReleasedFunction, now: ReleasedFunction): string[] {
  const faults: string[] = [];
  if (before.name !== now.name) faults.push(`${before.id}: the name was ${before.name} and is ${now.name} now`);
  if (before.result !== now.result) faults.push(`${before.id}: the result was a ${before.result} and is a ${now.result} now`);
  before.parameters.forEach((parameter, place) => {
    const [where, kept] = [`${before.id}, argument ${place + 1} (${parameter.name})`, now.parameters[place]];
    if (kept?.name === parameter.name) faults.push(...parameterFaults(where, parameter, kept));
    else if (now.parameters.some(({ name }) => name === parameter.name)) faults.push(`${where} has moved`);
    else faults.push(`${where} is gone${kept === undefined ? '' : `; ${kept.name} stands there`}`);
  });
  const added = now.parameters.slice(before.parameters.length).filter(({ name }) => !before.parameters.some((parameter) => parameter.name === name));
  for (const { name, optional } of added) if (!optional) faults.push(`${before.id}: the new argument ${name} must be optional`);
  if (added.length > 0 && before.parameters.some(({ repeating }) => repeating)) faults.push(`${before.id}: nothing may follow a repeating argument, got ${added[0]!.name}`);
  return faults;
}

/** Rules that the new metadata breaks, in words; none where every saved formula keeps its meaning. New functions are free. */
export function upgradeFaults(before: Released, now: Released): string[] {
  const byId = new Map(now.functions.map((each) => [each.id, each]));
  return before.functions.flatMap((each) => {
    const kept = byId.get(each.id);
    return kept === undefined ? [`${each.id} is gone: formulas that call it would break`] : functionFaults(each, kept);
  });
}
