import { Complex, complex, complexText } from '../../core/complex';
import { counted, rounded } from '../../core/figure';
import type { Stated, Step } from '../../core/working';
import { Recorder } from '../../core/working';
import type { Outcome } from './call';
import type { Basis, Declaration, Member } from './declaration';
import type { Kind } from './kind';

/** What an outcome says in words: working, steps, defaults, clause. Every host shows these and words none of its own. */

/** Standard, edition and clause in one line. */
export const clauseOf = (declaration: Declaration): string => declaration.basis.map(basisText).join('; ');

const basisText = ({ source, clause, fromMemory }: Basis): string =>
  `${source}${clause === undefined ? '' : `, ${clause}`}${fromMemory ? ' (from memory)' : ''}`;

export const roundedImpedance = (z: Complex, digits: number): string =>
  complexText(complex(Number(z.re.toPrecision(digits)), Number(z.im.toPrecision(digits))));

const quantityText = (value: number | string | Complex, unit: string | undefined, digits: number): string => {
  const shown = typeof value === 'number' ? rounded(value, digits) : value instanceof Complex ? roundedImpedance(value, digits) : value;
  return unit === undefined || unit === '' || unit === '1' || typeof value === 'string' ? shown : `${shown} ${unit}`;
};

const statedText = (stated: Stated, digits: number): string =>
  Array.isArray(stated) ? quantityText(stated[0], stated[1], digits) : quantityText(stated as number | string | Complex, undefined, digits);

/** Unit behind a result that is a quantity, or nothing for a ratio. */
function resultUnit(member: Member, args: Readonly<Record<string, unknown>>): string | undefined {
  if (member.unit) return member.unit(args as Record<string, unknown>);
  if (member.result === 'impedance') return 'mΩ';
  if (member.result === 'ratio') return undefined;
  // Money is in whatever the sheet is in: no unit stands behind it, though "a year" may.
  return member.result.replace(/^money\s*/, '');
}

/** The arguments after conversion and defaults, each with its unit; what was left out without a default is not listed. */
export function argumentsShown(outcome: Outcome): { name: string; text: string }[] {
  const { member } = outcome.entry;
  const args = outcome.args ?? {};
  return Object.entries(member.parameters).flatMap(([name, kind]) => {
    const text = shownArgument(kind, args[name]);
    return text === undefined ? [] : [{ name, text }];
  });
}

const shownArgument = (kind: Kind<unknown>, value: unknown): string | undefined => (value === undefined ? kind.fallbackWords : kind.show(value));

/** Defaults that the call used because they were left out: "c=1.05; runs=1". */
export function assumedOf(outcome: Outcome): string {
  const { parameters } = outcome.entry.member;
  return outcome.leftOut.flatMap((name) => {
    const kind = parameters[name]!;
    if (kind.fallback !== undefined) return [`${name}=${bare(kind, kind.fallback)}`];
    return kind.fallbackWords === undefined ? [] : [`${name}=${kind.fallbackWords}`];
  }).join('; ');
}

const bare = (kind: Kind<unknown>, value: unknown): string => (typeof value === 'number' ? String(value) : kind.show(value));

/** The result with its unit, to so many figures; undefined where the call was refused. */
export function resultShown(outcome: Outcome, digits = 4): string | undefined {
  const { result, value, args = {}, entry } = outcome;
  if (result === undefined) return undefined;
  if (typeof value === 'number') return quantityText(value, resultUnit(entry.member, args), digits);
  if (result instanceof Complex) return quantityText(result, resultUnit(entry.member, args), digits);
  if (Array.isArray(value)) return counted(value.length, 'row');
  return String(value);
}

/** Working in one line: formula in symbols; arguments with units; result to 4 figures. */
export function workingLine(outcome: Outcome): string {
  const args = argumentsShown(outcome).map(({ name, text }) => `${name} ${text}`).join(', ');
  const parts = [outcome.entry.member.formula, args, resultShown(outcome) ?? ''];
  return parts.filter((part) => part !== '').join('; ');
}

export interface ExplainedStep {
  step: string;
  value: string;
  /** The figures that went into the step. */
  inputs: string;
}

const explainStep = ({ symbol, formula, inputs, result }: Step): ExplainedStep => ({
  step: `${symbol} = ${formula}`,
  value: statedText(result, 6),
  inputs: Object.entries(inputs).map(([name, stated]) => `${name} ${statedText(stated, 6)}`).join(', '),
});

/** The steps that the core took down for this call. */
export const stepsOf = (outcome: Outcome): ExplainedStep[] => (outcome.work instanceof Recorder ? outcome.work.steps.map(explainStep) : []);
