import { Complex } from '../../src/core/complex';
import { units } from '../../src/core/units';
import { type Figure, Recorder, type Stated } from '../../src/core/working';
import { call } from '../../src/functions/kernel/call';
import { catalogue } from '../../src/sheet/catalogue';
import { exampleArguments } from '../support/hostile-tuples';

/** The working of every function, by the examples of its declaration: what a reader follows must be whole, and must end in what the cell shows. */
// Examples are worked inside of the tests, so that mutation tests see which test reaches what.
const entries = catalogue.entries.map((entry) => ({ entry, name: entry.member.name }));

const isFigure = (figure: unknown): figure is Figure =>
  typeof figure === 'number' ? Number.isFinite(figure) : figure instanceof Complex ? Number.isFinite(figure.re) && Number.isFinite(figure.im) : typeof figure === 'string' && figure !== '';

/** A figure alone, or a figure and a unit that is known. */
function isWhole(stated: Stated): boolean {
  if (!Array.isArray(stated)) return isFigure(stated);
  const [figure, unit] = stated;
  return stated.length === 2 && isFigure(figure) && (units as readonly string[]).includes(unit);
}

test.each(entries)('$name: every step states its figures with their units', ({ entry }) => {
  for (const argv of exampleArguments(entry)) {
    const work = new Recorder();
    call(catalogue, entry, argv, undefined, work);
    for (const { symbol, formula, inputs, result } of work.steps) {
      expect([symbol, formula]).not.toContain('');
      expect(Object.keys(inputs)).not.toContain('');
      expect([...Object.values(inputs), result].filter((stated) => !isWhole(stated))).toEqual([]);
    }
  }
});

/** A per cent counts as the ratio that it is. */
const plain = (stated: Stated): Figure => (Array.isArray(stated) ? (stated[1] === '%' ? Number(stated[0]) / 100 : stated[0]) : (stated as Figure));

const ending = entries.filter(({ entry: { declaration, member } }) => ['fault', 'cable', 'duty', 'hazard'].includes(declaration.family) && member.face === undefined);

test.each(ending)('$name: the result stands in the working', ({ entry }) => {
  for (const argv of exampleArguments(entry)) {
    const work = new Recorder();
    const { result } = call(catalogue, entry, argv, undefined, work);
    if (typeof result !== 'number') continue;
    const found = work.steps.flatMap((step) => (entry.member.result === '%' ? [step.result].flat() : [plain(step.result)]));
    expect(found.some((figure) => typeof figure === 'number' && Math.abs(figure - result) <= 1e-12 * Math.abs(figure))).toBe(true);
  }
});
