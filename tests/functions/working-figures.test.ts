import { Complex, parseComplex } from '../../src/core/complex';
import { type Unit, convert, unitOf } from '../../src/core/units';
import { Recorder, type Stated, type Step } from '../../src/core/working';
import { type Outcome, call } from '../../src/functions/kernel/call';
import type { Argument } from '../../src/functions/kernel/cell';
import type { Entry } from '../../src/functions/kernel/declaration';
import { catalogue } from '../../src/sheet/catalogue';
import { arithmetic } from '../support/arithmetic';
import { exampleArguments } from '../support/hostile-tuples';

/** The working as a reader follows it with a calculator, by the examples of all declarations. */
// Examples are worked inside of the tests, so that mutation tests see which test reaches what.
const entries = catalogue.entries.map((entry) => ({ entry, name: entry.member.name }));

const workingsOf = (entry: Entry): { argv: readonly Argument[]; outcome: Outcome; steps: readonly Step[] }[] =>
  exampleArguments(entry).map((argv) => {
    const work = new Recorder();
    const outcome = call(catalogue, entry, argv, undefined, work);
    return { argv, outcome, steps: work.steps };
  });

const close = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.abs(b);

/** Factors to the coherent units of the SI; a temperature stays in °C, only differences of it count. */
const SI: Partial<Record<Unit, number>> = {
  kV: 1e3, mV: 1e-3, kA: 1e3, 'mΩ': 1e-3, mm: 1e-3, in: 0.0254, 'mm²': 1e-6, 'mm³': 1e-9, ms: 1e-3, h: 3600, kW: 1e3, kVA: 1e3, MVA: 1e6,
  'J/cm²': 1e4, 'mΩ/m': 1e-3, 'N/mm²': 1e6, 'A√s/mm²': 1e6,
};

/** Ways to key a figure in: as it stands or in units of the SI, per cent as a number or as a ratio. */
const ways = [true, false].flatMap((si) => [0.01, 1].map((perCent) => ({ si, perCent })));

function keyedIn(stated: Stated, { si, perCent }: (typeof ways)[number]): number {
  const [figure, unit] = Array.isArray(stated) ? (stated as readonly [number, Unit]) : [stated, '1' as Unit];
  return Number(figure instanceof Complex ? NaN : figure) * (unit === '%' ? perCent : si ? (SI[unit] ?? 1) : 1);
}

/** With what a reader takes out of the inputs himself: angular frequency, resistance and reactance. */
function readable(inputs: Step['inputs']): Step['inputs'] {
  const [z, f] = [inputs.Z, inputs.f].map((stated) => (Array.isArray(stated) ? (stated[0] as unknown) : undefined));
  return { ...inputs, ...(typeof f === 'number' && { ω: 2 * Math.PI * f }), ...(z instanceof Complex && { R: [z.re, 'mΩ'], X: [z.im, 'mΩ'] }) };
}

/** What the formula makes of the inputs against what the step states, one way and the other; undefined where it is no arithmetic of real figures. */
function agrees({ formula, inputs, result }: Step): boolean | undefined {
  const cases = ways.flatMap((way) => {
    const figures = Object.entries(readable(inputs)).map(([name, stated]) => [name, keyedIn(stated, way)] as const);
    const found = arithmetic(formula, Object.fromEntries(figures.filter(([, figure]) => !Number.isNaN(figure))));
    return ways.filter(({ si }) => si === way.si).map((resultWay) => ({ found, stated: keyedIn(result, resultWay) }));
  });
  if (cases.some(({ found, stated }) => found === undefined || Number.isNaN(stated))) return undefined;
  return cases.some(({ found, stated }) => close(found!, stated));
}

test.each(entries)('$name: what a formula makes of its inputs is what the step states', ({ entry }) => {
  expect(workingsOf(entry).flatMap(({ steps }) => steps.filter((step) => agrees(step) === false))).toEqual([]);
});

test('most formulas can be followed so', () => {
  const formulas = new Map(entries.flatMap(({ entry }) => workingsOf(entry)).flatMap(({ steps }) => steps.map((step) => [step.formula, agrees(step)])));
  expect([...formulas.values()].filter((followed) => followed === true).length).toBeGreaterThan(formulas.size / 2);
});

/** Inputs that come of tables, or are found on the way: sums of impedances, edges of curves, equivalent sizes, lines of a release. */
const FOUND_ON_THE_WAY = new Set(['|Z1+Z2|', '|Z1+Z2+Z0|', 'X"d', 'W1', 'H1', 'K', 'β', 'θi', 'θf', 'from', 'to', 'I²t of I²t/I²', 'I²t of max(level, I²t/I²)']);

type Known = readonly [figure: number, unit: Unit | undefined];

function knownFigures(value: unknown, unit?: Unit): Known[] {
  if (typeof value === 'number') return [[value, unit]];
  if (value instanceof Complex) return [value.re, value.im, value.abs()].map((part) => [part, 'mΩ'] as const);
  if (Array.isArray(value)) return value.flatMap((one) => knownFigures(one, unit));
  if (typeof value !== 'string') return [];
  const [, figure, written] = /^([\d.]+) ?(\S+)$/.exec(value) ?? [];
  const z = parseComplex(value);
  return z ? knownFigures(z) : figure === undefined ? [] : [[Number(figure), unitOf(written!)]];
}

/** Arguments as typed and as read, and the result. */
function knownBefore({ entry, args, value }: Outcome, argv: readonly unknown[]): Known[] {
  const units = Object.values(entry.member.parameters).map((kind) => ('unit' in kind ? unitOf(String(kind.unit)) : undefined));
  return [...argv.flatMap((one, at) => knownFigures(one, units[at])), ...Object.values(args ?? {}).flatMap((one) => knownFigures(one)), ...knownFigures(value, unitOf(entry.member.result))];
}

function strangers({ argv, outcome, steps }: ReturnType<typeof workingsOf>[number]): unknown[] {
  const known = knownBefore(outcome, argv);
  const strange: unknown[] = [];
  for (const { formula, inputs, result } of steps) {
    for (const [name, stated] of Object.entries(inputs)) {
      // Nought is what is not there.
      if (!Array.isArray(stated) || typeof stated[0] !== 'number' || stated[0] === 0 || [name, `${name} of ${formula}`].some((one) => FOUND_ON_THE_WAY.has(one))) continue;
      const [figure, unit] = stated as readonly [number, Unit];
      const isThat = ([value, its]: Known): boolean => close(its === undefined ? value : (convert(value, its, unit) ?? NaN), figure);
      if (!known.some(isThat)) strange.push([formula, name, stated]);
    }
    known.push(...(Array.isArray(result) ? knownFigures(result[0], result[1] as Unit) : knownFigures(result)));
  }
  return strange;
}

test.each(entries)('$name: every figure of a step was given, found before, or is the result', ({ entry }) => {
  expect(workingsOf(entry).flatMap(strangers)).toEqual([]);
});
