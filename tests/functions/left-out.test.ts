import { call } from '../../src/functions/kernel/call';
import { catalogueOf } from '../../src/functions/kernel/catalogue';
import type { Argument } from '../../src/functions/kernel/cell';
import { testAndMargin, worksheetFunction } from '../../src/functions/kernel/declaration';
import { impedance, impedances } from '../../src/functions/kernel/impedance-kinds';
import { quantity, raw } from '../../src/functions/kernel/kinds';
import { column } from '../../src/functions/kernel/range-kinds';

/** What is done with an argument that is left blank, by what its declaration says of it. */

const parameters = {
  needed_A: quantity('A', 'needed', {}),
  usual_A: quantity('A', 'with a default', { default: 5 }),
  none_A: quantity('A', 'without one', { optional: true }),
  told_A: quantity('A', 'with words for it', { defaultWords: 'not counted' }),
};
const data = { duty_A: quantity('A', 'duty', { datum: true }), limit_A: quantity('A', 'limit', { datum: true }), other_A: quantity('A', 'judged', { datum: 'judged' }) };
const common = { summary: 'what it does', formula: 'I', basis: [{ source: 'own' }], examples: [] };
const shown = (args: object): string => JSON.stringify(args);

const functions = [
  worksheetFunction({ ...common, name: 'FIGURES', parameters, result: 'text', compute: shown, cautions: () => ['', false, undefined, 'look twice'] }),
  worksheetFunction({ ...common, name: 'DATA', parameters: data, result: 'text', compute: shown }),
  testAndMargin({ ...common, stem: 'DUTY', parameters: data, judge: ({ other_A }) => ({ verdict: 'pass', marginPct: 10, ...(other_A === undefined ? {} : { marginPct: other_A }) }), cautions: () => ['of the judge'] }),
].map((declaration) => ({ family: 'check' as const, ...declaration }));
const own = catalogueOf([functions]);
const outcome = (name: string, ...argv: Argument[]) => call(own, own.find(name)!, argv);

test('a needed one is missing; others have their default, or none', () => {
  expect(outcome('FIGURES').value).toMatchObject({ code: '#N/A', message: 'missing: needed_A' });
  expect(outcome('FIGURES', 1).value).toBe('{"needed_A":1,"usual_A":5}');
  expect(outcome('FIGURES', 1, ' ', [[null]], 4).value).toBe('{"needed_A":1,"usual_A":5,"told_A":4}');
  expect(outcome('FIGURES', 1, 2, 3, 4).value).toBe('{"needed_A":1,"usual_A":2,"none_A":3,"told_A":4}');
  expect(outcome('FIGURES', 1, '', 3).leftOut).toEqual(['usual_A', 'told_A']);
});

test('cautions are those that say something', () => expect(outcome('FIGURES', 1).cautions).toEqual(['look twice']));

test('a test whose datum is blank is not shown, and names the first; one that is judged without is judged', () => {
  expect(outcome('DUTY_TEST', '', '', 3)).toMatchObject({ value: 'not shown', cautions: ['missing: duty_A'] });
  expect(outcome('DUTY_TEST', 1, '', 3)).toMatchObject({ value: 'not shown', cautions: ['missing: limit_A'] });
  expect(outcome('DUTY_MARGIN', 1, '', 3).value).toMatchObject({ code: '#N/A', message: 'missing: limit_A' });
  expect(outcome('DUTY_TEST', 1, 2)).toMatchObject({ value: 'pass', cautions: ['of the judge'] });
  expect([outcome('DUTY_MARGIN', 1, 2).value, outcome('DUTY_MARGIN', 1, 2, 3).value]).toEqual([10, 3]);
});

test('where there is no verdict, a blank datum is the function’s own business', () => {
  expect(outcome('DATA', 1).value).toBe('{"duty_A":1}');
});

test('a declaration says of its arguments what hosts ask', () => {
  const facts = Object.entries({ ...parameters, ...data }).map(([name, { optional, datum, judgedBlank, shape }]) => [name, optional, datum, judgedBlank, shape]);
  expect(facts).toEqual([
    ['needed_A', false, false, false, 'cell'], ['usual_A', true, false, false, 'cell'], ['none_A', true, false, false, 'cell'], ['told_A', true, false, false, 'cell'],
    ['duty_A', false, true, false, 'cell'], ['limit_A', false, true, false, 'cell'], ['other_A', false, true, true, 'cell'],
  ]);
  // A 0 is a value here that a blank is not.
  expect([impedance('z', {}), impedances('z'), column('figures', {}), raw('cells', { zeroIsNotBlank: true }), raw('arguments')].map(({ zeroIsNotBlank }) => zeroIsNotBlank)).toEqual([true, true, true, true, false]);
  // Only a list at the end goes on; a range is one argument.
  expect([impedances('z'), impedances('z', 'range')].map(({ readRest }) => readRest !== undefined)).toEqual([true, false]);
});

test('two functions of one name are a fault of ours', () => {
  expect(() => catalogueOf([functions, functions])).toThrow('two functions have one name');
});
