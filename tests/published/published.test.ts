import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { parseComplex } from '../../src/core/complex';
import type { Argument, Cell } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { run } from '../support/run';

/**
 * Figures that others published, against ours. `tolerance` is half a unit of the last printed digit, or the difference that the entry states.
 * Only the kinds "printed" and "maths" are agreement with a publication; the others say what they are.
 */
interface Nested { function: string; args: PublishedArgument[]; part?: string }
type PublishedArgument = Cell | Cell[][] | Nested;
interface Published extends Nested {
  id: string;
  part?: 're' | 'im' | 'abs';
  printed: string;
  expected: number | string;
  tolerance?: number;
  source: string;
  edition: string;
  clause?: string;
  seen: 'read' | 'from memory';
  kind: 'printed' | 'maths' | 'rule' | 'constant' | 'arithmetic' | 'inferred' | 'identity' | 'verdict';
  note?: string;
}

const isNested = (argument: PublishedArgument): argument is Nested => typeof argument === 'object' && argument !== null && 'function' in argument;

function partOf(value: unknown, part: string): number {
  const z = parseComplex(String(value));
  if (!z) throw new Error(`no impedance: ${String(value)}`);
  return part === 're' ? z.re : part === 'im' ? z.im : Math.hypot(z.re, z.im);
}

function answer({ function: name, args, part }: Nested): unknown {
  const value = run(name, ...args.map((argument) => (isNested(argument) ? (answer(argument) as Argument) : (argument as Argument))));
  return part === undefined ? value : partOf(value, part);
}

const entries = readdirSync(__dirname).filter((name) => name.endsWith('.json')).sort()
  .flatMap((name) => JSON.parse(readFileSync(join(__dirname, name), 'utf8')) as Published[]);

test('every entry has a name of its own, a function of ours and says where it comes from', () => {
  expect(new Set(entries.map(({ id }) => id)).size).toBe(entries.length);
  for (const entry of entries) {
    expect(catalogue.find(entry.function)).toBeDefined();
    expect(['read', 'from memory']).toContain(entry.seen);
    expect(['printed', 'maths', 'rule', 'constant', 'arithmetic', 'inferred', 'identity', 'verdict']).toContain(entry.kind);
    for (const text of [entry.printed, entry.source, entry.edition]) expect(text).toMatch(/\S/);
    if (typeof entry.expected === 'number') expect(entry.tolerance).toBeGreaterThan(0);
  }
});

test.each(entries.map((entry) => [entry.id, entry.kind, entry] as const))('%s (%s)', (_id, _kind, entry) => {
  const value = answer(entry);
  if (typeof entry.expected === 'string') return void expect(value).toBe(entry.expected);
  expect(typeof value).toBe('number');
  // A hair above the tolerance, for a figure that lies on it exactly.
  expect(Math.abs((value as number) - entry.expected)).toBeLessThanOrEqual(entry.tolerance! * (1 + 1e-9));
});
