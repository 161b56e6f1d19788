import { expectRefused } from '../support/expect';
import { run } from '../support/run';

const transformer = [1000, 5, 10, 400, 1.05] as const;

test('flags in words', () => {
  for (const yes of [true, 'TRUE', ' yes ', 'Yes']) expect(run('IMP_TRANSFORMER', ...transformer, yes)).toBe(run('IMP_TRANSFORMER', ...transformer, true));
  for (const no of [false, 'false', 'NO']) expect(run('IMP_TRANSFORMER', ...transformer, no)).toBe(run('IMP_TRANSFORMER', ...transformer, false));
});

test.each(['maybe', 'constructor', '__proto__', 'toString'])('"%s" is neither true nor false', (text) => {
  expectRefused('IMP_TRANSFORMER', [...transformer, text], '#VALUE!', `corrected: got "${text}", takes TRUE or FALSE (yes, no)`);
});
