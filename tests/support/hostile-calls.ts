import fc from 'fast-check';
import { type Argument, CellError } from '../../src/functions/kernel/cell';
import type { Kind } from '../../src/functions/kernel/kind';
import { catalogue } from '../../src/sheet/catalogue';
import { hostile } from './curves';
import { run } from './run';

/** Figures from the least to the greatest that a kind allows, even in their logarithms; the ends come up often. */
function figures({ bounds }: Kind<unknown>): fc.Arbitrary<unknown> {
  if (!bounds) return fc.constant(1);
  if (bounds.listed) return fc.constantFrom(...bounds.listed);
  const low = bounds.atLeast ?? bounds.above ?? 0;
  const high = bounds.upTo ?? bounds.below ?? 1e9;
  const inside = low < 0 ? fc.double({ min: low, max: high, noNaN: true }) : fc.double({ min: Math.log(Math.max(low, 1e-12)), max: Math.log(high), noNaN: true }).map(Math.exp);
  return fc.oneof({ weight: 4, arbitrary: inside }, { weight: 1, arbitrary: fc.constantFrom(low, high, 1e-300, 1) });
}

/** What the kind asks for, as far as its own facts say. */
function allowed(kind: Kind<unknown>): fc.Arbitrary<unknown> {
  if (kind.words) return fc.constantFrom(...Object.keys(kind.words));
  if (kind.type === 'count') return fc.constantFrom(...(kind.bounds?.listed ?? [1, 2, 3]));
  if (kind.type === 'flag') return fc.boolean();
  if (kind.type === 'text') return fc.constantFrom('F1', 'f 1', 'F2');
  if (kind.type === 'impedance') return fc.constantFrom<unknown>('1.05+5.68i', '1E-300', '1E300i', 0, '0', [[1e300, 1e300]], 5);
  if (kind.type === 'impedances') return fc.constantFrom<unknown>([['4.2+3.1i'], ['5.0+3.7i']], [[1e-300], [1e300]], [[0], [1]], '3i', [['1E300+1E300i'], ['1E-300i'], [7]]);
  if (kind.type === 'points') return fc.constantFrom<unknown>([[5, 5.6], [100, 22]], [[1e-300, 1e-300], [299, 1e300]], [['kA', 'kA'], [1, 1e-300], [1.0000001, 1e300], [300, 1e300]]);
  return figures(kind);
}

/** Free text is shown as it was typed, so these two words are no fault in it. */
const anything = (kind: Kind<unknown>): fc.Arbitrary<unknown> => (kind.type === 'text' ? hostile.filter((value) => value !== 'NaN' && value !== 'Infinity') : hostile);

/** What the user typed may stand in quotes. */
const unquoted = (message: string): string => message.replace(/"[^"]*"/g, 'text');

/**
 * A function under arguments of which most are allowed and some are anything: it answers a finite figure, a word, or an error
 * with its reason, and its cautions never show an inner fault.
 */
export function answersCleanly(name: string): void {
  const kinds = Object.values(catalogue.find(name)!.member.parameters);
  const argv = fc.tuple(...kinds.map((kind) => fc.oneof({ weight: 12, arbitrary: allowed(kind) }, { weight: 1, arbitrary: anything(kind) }, { weight: kind.optional ? 6 : 1, arbitrary: fc.constant(null) })));
  fc.assert(fc.property(argv, (args) => {
    const value = run(name, ...(args as Argument[]));
    if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
    else if (value instanceof CellError) expect(unquoted(value.message)).not.toMatch(/^$|internal fault|NaN|undefined|Infinity/);
    else expect(['pass', 'FAIL', 'not shown']).toContain(value);
    for (const question of ['CAUTION', 'SHOW_WORKING']) {
      const answer = run(question, name, ...(args as Argument[]));
      expect(unquoted(answer instanceof CellError ? answer.message : String(answer))).not.toMatch(/internal fault|undefined|NaN|Infinity/);
    }
  }), { numRuns: 400 });
}

/** A function under any arguments at all, too few and one too many among them. */
export function answersSoundly(name: string): void {
  const count = Object.keys(catalogue.find(name)!.member.parameters).length;
  fc.assert(fc.property(fc.array(hostile, { minLength: 0, maxLength: count + 1 }), (args) => {
    const value = run(name, ...(args as Argument[]));
    for (const cell of Array.isArray(value) ? value.flat() : [value]) {
      if (typeof cell === 'number') expect(Number.isFinite(cell)).toBe(true);
      else if (cell instanceof CellError) expect(unquoted(cell.message)).not.toMatch(/^$|internal fault|NaN|undefined|Infinity/);
      else expect(cell).not.toMatch(/NaN|undefined|null/);
    }
    expect(run('CAUTION', name, ...(args as Argument[]))).not.toMatch(/internal fault|undefined/);
  }), { numRuns: 400 });
}

/** Names of a family. */
export const namesOf = (family: string): string[] => catalogue.entries.filter(({ declaration }) => declaration.family === family).map(({ member }) => member.name);
