import { call } from '../../src/functions/kernel/call';
import type { Argument } from '../../src/functions/kernel/cell';
import { catalogue } from '../../src/sheet/catalogue';
import { exampleArguments } from '../support/hostile-tuples';
import { outcomeOf } from '../support/run';

/** A per cent that the checker sets as narrow as he likes; a short-circuit voltage and a reactance are refused below 2 %. */
const apart = ['AGREE', 'AGREE_LIST', 'AGREE_HINT', 'uk_pct', 'xd2_pct'];
const placed = (wanted: RegExp) => catalogue.entries.flatMap((entry) => entry.member.order.flatMap(([name], place) =>
  (wanted.test(name) && !apart.includes(name) && !apart.includes(entry.member.name) ? [[entry.member.name, name, place] as const] : [])));

/** Cautions of an example that still works with another figure in one place. */
function cautionsWith(functionName: string, place: number, figure: number): readonly string[] {
  const entry = catalogue.find(functionName)!;
  const changed = exampleArguments(entry).map((example) => Array.from({ length: Math.max(example.length, place + 1) }, (_, at): Argument => (at === place ? figure : example[at] ?? null)));
  const worked = changed.map((argv) => call(catalogue, entry, argv)).find(({ error }) => !error);
  if (!worked) throw new Error(`no example of ${functionName} works with ${figure}`);
  return worked.cautions;
}

test.each(placed(/_pct$/))('%s asks about %s below 1 %%: a cell that shows 10 %% holds 0.1', (name, argument, place) => {
  const asked = `${argument} is 0.1 %: a fraction typed for per cent?`;
  expect(cautionsWith(name, place, 0.1)).toContain(asked);
  for (const fair of [1, 10]) expect(cautionsWith(name, place, fair).join()).not.toContain('a fraction typed');
});

test('a tolerance below nominal is asked about too, none at all is not', () => {
  const cautions = (tolerance: number) => outcomeOf('IMP_TRANSFORMER', [1000, 5, 10, 400, 1.05, false, tolerance]).cautions;
  expect(cautions(-0.1)).toEqual(['uk tolerance is for sensitivity, not for the record', 'tolerance_pct is -0.1 %: a fraction typed for per cent?']);
  expect(cautions(-10)).toEqual(['uk tolerance is for sensitivity, not for the record']);
  expect(cautions(0)).toEqual([]);
});

test.each(placed(/^u0_V$/))('%s asks about a voltage between lines in %s', (name, argument, place) => {
  for (const volts of [380, 400, 415]) expect(cautionsWith(name, place, volts)).toContain(`${argument} is ${volts} V: between lines, where line to earth is asked?`);
  for (const volts of [220, 230, 240]) expect(cautionsWith(name, place, volts).join()).not.toContain('between lines');
});
