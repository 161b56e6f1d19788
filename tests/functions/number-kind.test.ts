import { type Reading, settledReading } from '../../src/functions/kernel/kind';
import { type Limits, count, plainNumber, quantity, ratio, setting } from '../../src/functions/kernel/kinds';
import { isNumberText, plainWithin, withinBounds } from '../../src/functions/kernel/number';
import { takerOf } from '../support/taken-unread';

/** Numbers out of cells: limits from both sides, units, and a 0 that may be a blank. */

const desktop: Reading = { ...settledReading, blankArrivesAsZero: true };
const AS_TEXT = 'it is blank or zero: write 0 as text';

describe('a 0 where a blank may arrive as 0', () => {
  test.each<[Limits & { default?: number }, boolean, number | string]>([
    [{ sign: 'any' }, true, AS_TEXT],
    [{ sign: 'atLeast 0' }, true, AS_TEXT],
    [{ sign: 'atLeast 0', default: 5 }, true, AS_TEXT],
    [{ sign: 'any', atLeast: -25 }, true, AS_TEXT],
    [{ sign: 'any', atLeast: 0 }, true, AS_TEXT],
    // A blank would be read as 0 here, so it does not matter which it is.
    [{ sign: 'atLeast 0', default: 0 }, false, 0],
    // Nobody is told to write a 0 that is refused.
    [{ sign: 'any', atLeast: 5 }, false, 'it: 0 is outside 5 or more'],
    [{}, false, 'it: is blank or zero, takes above 0'],
  ])('%p', (limits, matters, answer) => {
    for (const kind of [ratio('figure', limits), plainNumber('figure', limits)]) {
      expect(kind.zeroIsNotBlank).toBe(matters);
      if (typeof answer === 'number') expect(kind.read(0, 'it', desktop)).toBe(answer);
      else expect(() => kind.read(0, 'it', desktop)).toThrow(new Error(answer));
      if (matters) for (const zero of [[0, settledReading], ['0', desktop]] as const) expect(kind.read(zero[0], 'it', zero[1])).toBe(0);
    }
  });
  test('a figure that is not 0 is shown as it came', () => {
    expect(() => ratio('figure', {}).read(-5, 'it', desktop)).toThrow(new Error('it: got -5, takes above 0'));
    expect(() => count('runs', { upTo: 24 }).read(0, 'runs', desktop)).toThrow(new Error('runs: is blank or zero, takes a whole number, 1 to 24'));
    expect(() => count('runs', { upTo: 24 }).read(0, 'runs', settledReading)).toThrow(new Error('runs: got 0, takes a whole number, 1 to 24'));
    for (const figure of [-1, 1.5]) expect(() => count('runs', { upTo: 24 }).read(figure, 'runs', desktop)).toThrow(new Error(`runs: got ${figure}, takes a whole number, 1 to 24`));
  });
});

describe('limits from both sides', () => {
  const volts = quantity('V', 'voltage', { atLeast: 50, upTo: 1000 });
  test.each([
    ['50', 50], ['0.05 kV', 50], ['1000 V', 1000], ['1 kV', 1000],
    // A limit is met to 1 part in 10⁹, so that a figure that was worked out does not miss it by its last digit.
    [50 * (1 - 9e-10), 50 * (1 - 9e-10)], [1000 * (1 + 9e-10), 1000 * (1 + 9e-10)],
  ])('%p is taken', (cell, value) => expect(volts.read(cell, 'volts_V', settledReading)).toBe(value));
  test.each([[50 * (1 - 2e-9)], [1000 * (1 + 2e-9)], ['49.9 V'], ['1.001 kV']])('%p is refused', (cell) =>
    expect(() => volts.read(cell, 'volts_V', settledReading)).toThrow('is outside 50 to 1000 V'));
  test('a figure of any sign may be below 0', () => {
    expect(plainNumber('value', { sign: 'any' }).read('-5', 'value', settledReading)).toBe(-5);
    for (const none of [NaN, Infinity, -Infinity]) expect(() => plainNumber('value', { sign: 'any' }).read(none, 'value', settledReading)).toThrow(new Error('value: is not a finite number'));
    expect(() => plainNumber('value', { sign: 'atLeast 0' }).read('-5', 'value', settledReading)).toThrow(new Error('value: got -5, takes 0 or more'));
  });
});

/** What is taken unread must be what reading gives; and what most cells hold is taken unread. */
describe('numbers taken as they are', () => {
  test.each([
    [{ sign: 'above 0' }, [1e-300, 5, 1e300], [-5]],
    [{ sign: 'atLeast 0', upTo: 50 }, [0.5, 50], [-0.5, 50.1]],
    [{ sign: 'above 0', atLeast: 50, upTo: 1000 }, [50, 400, 1000], [49.9, 1000.1]],
    [{ sign: 'any' }, [-1e300, -5, 5, 1e300], []],
    [{ sign: 'any', atLeast: -25, upTo: 350 }, [-25, -1, 350], [-25.1, 350.1]],
    [{ sign: 'above 0', above: 1, upTo: 20 }, [1 + 1e-12, 6, 20], [1, 0.5]],
    [{ sign: 'any', above: 0 }, [1e-300, 5], [-5]],
    [{ sign: 'above 0', below: 5 }, [0.1, 5 - 1e-12], [5, 5.1]],
    [{ sign: 'any', below: 0 }, [-5, -1e-300], [5]],
  ] as const)('%p', (bounds, taken, left) => {
    const isTaken = takerOf(plainWithin(bounds, false)!);
    for (const value of taken) {
      expect(isTaken(value)).toBe(true);
      expect(withinBounds(value, bounds, 'it', undefined, settledReading)).toBe(value);
    }
    for (const value of [...left, NaN, Infinity, -Infinity, 0]) expect(isTaken(value)).toBe(false);
  });
  test('of a count the whole ones; of a list none, since the figure of the list is taken for them', () => {
    const runs = plainWithin({ sign: 'above 0', atLeast: 1, upTo: 24 }, true)!;
    expect([1, 2, 24, 1.5, 25].map((value) => takerOf(runs)(value))).toEqual([true, true, true, false, false]);
    expect(takerOf(count('runs', { upTo: 24 }).plain)(1.5)).toBe(false);
    expect(plainWithin({ sign: 'above 0', listed: [1, 3] }, false)).toBeUndefined();
    expect(withinBounds(3 * (1 + 5e-10), { sign: 'above 0', listed: [1, 3] }, 'it', undefined, settledReading)).toBe(3);
  });
});

describe('units behind a number', () => {
  const read = (kind: { read(cell: string, name: string, reading: Reading): unknown }) => (cell: string): unknown => {
    try {
      return kind.read(cell, 'it', settledReading);
    } catch (thrown) {
      return (thrown as Error).message;
    }
  };
  test.each([
    [' 25 ', 25], ['\u00a025\u00a0mm² ', 25], ['25\u202fmm²', 25], ['+25', 25], ['2.5e1 mm²', 25], ['.25 cm²', 25],
    ['\u22125', 'it: got -5, takes above 0 mm²'], ['25 mm² 3', 'it: got "25 mm² 3": mm² 3 is not a unit known here, takes mm²'],
    ['1 000', 'it: got "1 000", takes one number with a decimal point and no thousands marks'],
    ['1e999', 'it: got "1e999", which is not a finite number'],
  ] as const)('%p for mm²', (cell, answer) => expect(read(quantity('mm²', 'size', {}))(cell)).toBe(answer));
  test.each([
    ['94 %', 0.94], ['0.94', 0.94],
    ['high', 'it: got "high", takes a number'], ['0.9 kA', 'it: got "0.9 kA": kA is current, takes a plain number or %'],
  ])('%p for a ratio', (cell, answer) => expect(read(ratio('share', { upTo: 1 }))(cell)).toBe(answer));
  test.each([
    ['4 %', 4], ['4', 4],
    // Whether a bare ratio is meant as one, or as per cent, is not guessed.
    ['4 -', 'it: got "4 -": 1 is ratio, takes %'], ['4 A', 'it: got "4 A": A is current, takes %'],
  ])('%p for per cent', (cell, answer) => expect(read(quantity('%', 'share', {}))(cell)).toBe(answer));
  test.each([['5 kA', 'it: got "5 kA", takes a number without a unit'], ['many', 'it: got "many", takes a number']])('%p for a bare number', (cell, answer) =>
    expect(read(plainNumber('money', {}))(cell)).toBe(answer));
  test('a setting is a quantity or off, in any case and with spaces', () => {
    const ii = setting('A', 'instantaneous setting', { upTo: 300000 });
    expect(['3.8 kA', ' Off ', 'OFF'].map(read(ii))).toEqual([3800, 'off', 'off']);
    expect([ii.show(3800), ii.show('off')]).toEqual(['3800 A', 'off']);
    expect(() => ii.read(400000, 'ii_A', settledReading)).toThrow(new Error('ii_A: 400000 is outside above 0, up to 300000 A'));
    expect(() => ii.read(true, 'ii_A', settledReading)).toThrow(new Error('ii_A: got TRUE, takes a number in A'));
  });
});

test.each([['5', true], ['-.5e+3', true], ['+5.', true], ['12.75', true], ['.125', true], ['1e10', true], [' 5 ', true],
  ['', false], ['.', false], ['5 A', false], ['A5', false], ['5e', false], ['5.x', false], ['0x10', false], ['5-', false]])('%p is a bare number: %p', (text, is) =>
  expect(isNumberText(text)).toBe(is));
