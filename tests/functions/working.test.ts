import { Complex } from '../../src/core/complex';
import { units } from '../../src/core/units';
import { type Figure, Recorder, type Stated } from '../../src/core/working';
import { call } from '../../src/functions/kernel/call';
import { catalogue } from '../../src/sheet/catalogue';
import { exampleArguments } from '../support/hostile-tuples';

/** The working of every function, by the examples of its declaration: what a reader follows must be whole, and must end in what the cell shows. */
const examples = catalogue.entries.flatMap((entry) => exampleArguments(entry).map((argv, at) => ({ entry, argv, title: `${entry.member.name}, example ${at + 1}` })));

const isFigure = (figure: unknown): figure is Figure =>
  typeof figure === 'number' ? Number.isFinite(figure) : figure instanceof Complex ? Number.isFinite(figure.re) && Number.isFinite(figure.im) : typeof figure === 'string' && figure !== '';

/** A figure alone, or a figure and a unit that is known. */
function isWhole(stated: Stated): boolean {
  if (!Array.isArray(stated)) return isFigure(stated);
  const [figure, unit] = stated;
  return stated.length === 2 && isFigure(figure) && (units as readonly string[]).includes(unit);
}

test.each(examples)('$title: every step states its figures with their units', ({ entry, argv }) => {
  const work = new Recorder();
  call(catalogue, entry, argv, undefined, work);
  for (const { symbol, formula, inputs, result } of work.steps) {
    expect([symbol, formula]).not.toContain('');
    expect(Object.keys(inputs)).not.toContain('');
    expect([...Object.values(inputs), result].filter((stated) => !isWhole(stated))).toEqual([]);
  }
});

const ending = examples.filter(({ entry, argv }) => ['fault', 'cable', 'duty', 'hazard'].includes(entry.declaration.family) && entry.member.face === undefined && typeof call(catalogue, entry, argv).value === 'number');

/** A per cent counts as the ratio that it is. */
const plain = (stated: Stated): Figure => (Array.isArray(stated) ? (stated[1] === '%' ? Number(stated[0]) / 100 : stated[0]) : (stated as Figure));

test.each(ending)('$title: the result stands in the working', ({ entry, argv }) => {
  const work = new Recorder();
  const { result } = call(catalogue, entry, argv, undefined, work);
  const found = work.steps.flatMap((step) => (entry.member.result === '%' ? [step.result].flat() : [plain(step.result)]));
  expect(found.some((figure) => typeof figure === 'number' && Math.abs(figure - (result as number)) <= 1e-12 * Math.abs(figure))).toBe(true);
});
