import { joulewright } from '../support/terminal';

test('functions are found by a question', async () => {
  const { status, out, error } = await joulewright(['functions', '--find', 'will', 'the', 'cable', 'stand', 'it']);
  expect([status, error]).toEqual([0, []]);
  expect(out[0]).toMatch(/^cable +JW\.CABLE_WITHSTAND +Joule integral/);
});

test.each([
  [['functions', '--find'], 'joulewright: --find needs words to look for'],
  [['functions', '--find', 'qwertz'], 'joulewright: no function is found for qwertz; joulewright functions lists all'],
])('%j is refused in words', async (argv, words) => {
  expect(await joulewright(argv)).toEqual({ status: 2, out: [], error: [words] });
});

test('all about one tells the words that lead to it', async () => {
  const { out } = await joulewright(['functions', 'VOLT_DROP']);
  expect(out.find((line) => line.startsWith('Also'))).toBe('Also     voltage drop; is the run too long; volts lost along the cable');
});
