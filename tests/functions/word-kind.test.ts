import { type Argument, CellError } from '../../src/functions/kernel/cell';
import { type Reading, settledReading } from '../../src/functions/kernel/kind';
import { anyCell, flag, raw, text, word } from '../../src/functions/kernel/kinds';
import { isBlank, neededCell, shownCell } from '../../src/functions/kernel/scalar';
import { expectRefused } from '../support/expect';
import { outcomeOf, run } from '../support/run';

/** Words, names and cells of any kind. */

const desktop: Reading = { ...settledReading, blankArrivesAsZero: true };
const AS_TEXT = 'it is blank or zero: write 0 as text';

describe('a truth value', () => {
  const headers = flag('headings', {});
  test.each([[true, true], [false, false], ['TRUE', true], [' yes ', true], ['Yes', true], ['false', false], ['NO', false]])('%p is %p', (cell, is) =>
    expect(headers.read(cell, 'headers', settledReading)).toBe(is));
  // 1 and 0 are truth values in some programs only.
  test.each<[Argument, Reading, string]>([
    [1, settledReading, 'got 1'], [0, settledReading, 'got 0'], [0, desktop, 'is blank or zero'], [1, desktop, 'got 1'], ['on', desktop, 'got "on"'],
  ])('%p is none', (cell, reading, got) => expect(() => headers.read(cell, 'headers', reading)).toThrow(new Error(`headers: ${got}, takes TRUE or FALSE (yes, no)`)));
});

describe('a word of a list', () => {
  const metal = word('metal', { copper: ['cu'], aluminium: ['al'], 'soft steel': [], 'β': ['Beta'] }, {});
  test.each([['copper', 'copper'], [' CU ', 'copper'], ['Al', 'aluminium'], ['soft  steel', 'soft steel'], ['Soft\u00a0Steel', 'soft steel'], ['β', 'β'], ['Β', 'β'], ['BETA', 'β']])('%p is %s', (cell, is) =>
    expect(metal.read(cell, 'metal', settledReading)).toBe(is));
  test.each<[Argument, Reading, string]>([
    ['softsteel', settledReading, 'got "softsteel"'], [0, settledReading, 'got 0'], [0, desktop, 'is blank or zero'], [1, desktop, 'got 1'], ['tin', desktop, 'got "tin"'], [true, settledReading, 'got TRUE'],
  ])('%p is none', (cell, reading, got) =>
    expect(() => metal.read(cell, 'metal', reading)).toThrow(new Error(`metal: ${got}, takes copper (cu) · aluminium (al) · soft steel · β (Beta)`)));
});

describe('a name', () => {
  const name = text('name', {});
  // With the six figures of a measurement, two boards would become one.
  test.each([[101, '101'], [10010.25, '10010.25'], [10010.01, '10010.01'], [2024.001, '2024.001'], [0.1 + 0.2, '0.3'], [0, '0'], [' DB 1 ', 'DB 1']])('%p is %p', (cell, is) =>
    expect(name.read(cell, 'it', settledReading)).toBe(is));
  test('what is none', () => {
    expect(() => name.read(0, 'it', desktop)).toThrow(new Error(AS_TEXT));
    expect(name.read(5, 'it', desktop)).toBe('5');
    expect(() => name.read(true, 'it', settledReading)).toThrow(new Error('it: got TRUE, takes text'));
    expect(() => name.read(NaN, 'it', settledReading)).toThrow(new Error('it: got a number that is not finite, takes text'));
  });
  test('no longer than a cell', () => {
    expect(name.read('x'.repeat(32767), 'it', settledReading)).toHaveLength(32767);
    expect(() => name.read('x'.repeat(32768), 'it', settledReading)).toThrow(new Error('it: got 32768 characters, takes up to 32767'));
  });
  test('boards whose names are long numbers stay apart', () => {
    const boards = [[2024.001, 'source', '1+1i'], [2024.002, 'source', '4+3i']];
    const at = (board: number) => run('NET_RADIAL_AT', boards, '0.1i', board, 'Z', 415);
    expect([at(2024.001), at(2024.002)]).toEqual(['1+1.1i', '4+3.1i']);
    expectRefused('NET_RADIAL_AT', [boards, '0.1i', 2024, 'Z', 415], '#N/A', 'board: no board named 2024');
  });
});

describe('a cell of any kind', () => {
  const any = anyCell('figure', {});
  test('is handed on; a 0 that may be a blank and a number that is none are not', () => {
    for (const cell of [5, 'text', true]) for (const reading of [settledReading, desktop]) expect(any.read(cell, 'it', reading)).toBe(cell);
    expect(any.read(0, 'it', settledReading)).toBe(0);
    expect(() => any.read(0, 'it', desktop)).toThrow(new Error(AS_TEXT));
    expect(() => any.read(NaN, 'it', settledReading)).toThrow(new Error('it: is not a finite number'));
  });
  test('is shown as it stands', () => expect([0.1 + 0.2, 'text', true, new CellError('#N/A')].map((cell) => any.show(cell))).toEqual(['0.3', 'text', 'TRUE', '#N/A']));
});

test('cells to be watched hold no 0 that may be a blank', () => {
  const digest = (...argv: Argument[]) => outcomeOf('CHECK_DIGEST', argv, { blankArrivesAsZero: true }).value;
  for (const argv of [[0], [1, 0], [[[1, 2], [3, 0]]], [1, [[0, 1], [2, 3]]]]) expect(digest(...argv)).toMatchObject({ code: '#VALUE!', message: 'inputs: a cell is blank or zero: write 0 as text' });
  expect(digest(1, [[2, '0']])).toBe(run('CHECK_DIGEST', 1, [[2, '0']]));
  expect(run('CHECK_DIGEST', 0)).not.toBe(run('CHECK_DIGEST', '0'));
  expect(raw('arguments').readRest!([0], 'argument', desktop)).toEqual([0]);
});

test('a cell as a message shows it', () => {
  expect([null, new CellError('#REF!'), true, false, 1.5, NaN, ' text '].map(shownCell)).toEqual(['a blank', '#REF!', 'TRUE', 'FALSE', '1.5', 'a number that is not finite', '"text"']);
  expect(shownCell('x'.repeat(40))).toBe(`"${'x'.repeat(40)}"`);
  expect(shownCell('x'.repeat(41))).toBe(`"${'x'.repeat(37)}…"`);
  // No character is cut in half.
  expect(shownCell('😀'.repeat(200))).toBe(`"${'😀'.repeat(37)}…"`);
});

test('a range is blank where all its cells are; a cell that must hold something is missing where blank', () => {
  expect([[[null, ' '], ['', null]], [[null, 0]], [[null], ['x']], '\u00a0'].map((argument) => isBlank(argument as Argument))).toEqual([true, false, false, true]);
  for (const blank of [null, undefined, '', ' ']) expect(() => neededCell(blank, 'row 2')).toThrow(new Error('missing: row 2'));
  expect([0, false, 'x'].map((cell) => neededCell(cell, 'row 2'))).toEqual([0, false, 'x']);
});
