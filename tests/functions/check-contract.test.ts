import { type Cell, CellError, type Matrix } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { clauseOf } from '../../src/functions/kernel/explain';
import { catalogue } from '../../src/sheet/catalogue';
import { valueOf } from '../support/evaluate';

/** The functions that ask about others must answer for every function of the package, with its own examples. */

const outerName = (formula: string): string => /^=JW\.([A-Z0-9_]+)\(/.exec(formula)![1]!;

/** Examples of a function: its own, or those of the other name of its pair where the arguments are the same. */
function examplesOf({ declaration, member }: Entry): string[] {
  const own = declaration.examples.filter((formula) => outerName(formula) === member.name);
  if (own.length > 0) return own;
  const names = Object.keys(member.parameters).join();
  const alike = declaration.members.filter(({ parameters }) => Object.keys(parameters).join() === names).map(({ name }) => name);
  return declaration.examples.filter((formula) => alike.includes(outerName(formula))).map((formula) => formula.replace(`=JW.${outerName(formula)}(`, `=JW.${member.name}(`));
}

/** The same call, asked about. */
const asked = (question: string, formula: string): Cell | Matrix => {
  const [, name, rest] = /^=JW\.([A-Z0-9_]+)\((.*)$/s.exec(formula)!;
  return valueOf(`=JW.${question}("${name}"${rest === ')' ? '' : ','}${rest}`);
};

const nonsense = /undefined|NaN|Infinity|\[object|null\b/;
const sound = (text: unknown): string => {
  expect(typeof text).toBe('string');
  expect(text).not.toMatch(nonsense);
  return text as string;
};

test('every function has an example that can be typed as it stands', () => {
  for (const entry of catalogue.entries) expect([entry.member.name, examplesOf(entry).length]).toEqual([entry.member.name, expect.any(Number)]);
  expect(catalogue.entries.filter((entry) => examplesOf(entry).length === 0).map(({ member }) => member.name)).toEqual([]);
});

describe.each(catalogue.entries.map((entry) => [entry.member.name, entry] as const))('%s', (name, entry) => {
  const { member, declaration } = entry;
  test('CLAUSE', () => {
    const clause = sound(valueOf(`=JW.CLAUSE("${name}")`));
    expect(clause).toBe(clauseOf(declaration));
    for (const { source } of declaration.basis) expect(clause).toContain(source);
    expect(clause).not.toBe('');
  });

  if (!['text', 'word', 'table'].includes(member.result)) test('its steps are taken down', () => {
    const tables = examplesOf(entry).map((formula) => asked('SHOW_STEPS', formula)).filter(Array.isArray) as Matrix[];
    expect(tables.some((steps) => steps.some(([step]) => String(step).includes(' = ')))).toBe(true);
  });

  test.each(examplesOf(entry))('%s', (formula) => {
    const value = valueOf(formula);
    const refused = value instanceof CellError;
    if (refused) expect(value.message).not.toMatch(/internal fault|^$/);

    const cautions = sound(asked('CAUTION', formula));
    if (refused) expect(cautions).toBe(`input: ${value.message}`);
    else expect(cautions).not.toMatch(/^input: /);
    if (value === 'not shown') expect(cautions).not.toBe('');

    const range = sound(asked('VALID_RANGE', formula));
    if (!refused) expect(range).toBe('inside');
    else expect(range).not.toMatch(/^inside$|^$/);

    for (const question of ['SHOW_WORKING', 'SHOW_STEPS', 'ASSUMED']) if (refused) expect(asked(question, formula)).toEqual(value);
    if (refused) return;

    const assumed = sound(asked('ASSUMED', formula));
    const named = assumed === '' ? [] : assumed.split('; ').map((part) => part.split('=')[0]!);
    const optional = Object.entries(member.parameters).filter(([, kind]) => kind.optional).map(([key]) => key);
    expect(optional.filter((key) => named.includes(key))).toEqual(named);

    const working = sound(asked('SHOW_WORKING', formula));
    if (member.formula !== '') expect(working.startsWith(member.formula)).toBe(true);
    for (const [key, kind] of Object.entries(member.parameters)) if (!kind.optional && !kind.datum && kind.shape !== 'repeating') expect(working).toContain(`${key} `);

    const steps = asked('SHOW_STEPS', formula) as Matrix;
    expect(steps[0]).toEqual(['step', 'value']);
    for (const row of steps.slice(1, -1)) expect(row.map(sound)).toHaveLength(2);
    const last = Array.isArray(value) ? `${value.length} rows` : value;
    expect(steps[steps.length - 1]).toEqual([name, last]);
  });
});
