import { catalogue } from '../../../src/sheet/catalogue';
import { FunctionFinder } from '../../../src/sheet/find/find-functions';

const finder = new FunctionFinder(catalogue);
const found = (question: string): string[] => finder.find(question).map(({ member }) => member.name);

/** Questions as they are asked, and what must be among the first few. */
test.each([
  ['will the cable stand it', 'CABLE_WITHSTAND'],
  ['will the cable stand it', 'LETTHROUGH_TEST'],
  ['earth loop', 'FAULT_LOOP_MIN'],
  ['earth loop', 'LOOP_MAX'],
  ['ground loop', 'LOOP_MAX'],
  ['I2t', 'LETTHROUGH_POINTS'],
  ['voltage drop', 'VOLT_DROP'],
  ['short-circuit current at the board', 'FAULT_3PH_MAX'],
  ['is the breaker big enough', 'BREAKING_TEST'],
  ['arc flash', 'ARC_ENERGY'],
  ['discrimination of two fuses', 'SELECT_RATIO_TEST'],
  ['which is cheaper', 'BREAKEVEN_RATE'],
  ['k factor', 'CABLE_K'],
  ['MCB', 'BAND_MINIATURE'],
  ['selectivty', 'SELECT_LIMIT'],
])('%s → %s', (question, name) => expect(found(question).slice(0, 6)).toContain(name));

test('spellings of one thing find the same', () => {
  for (const spelling of ['i²t', 'I^2t', 'I²T']) expect(found(spelling)).toEqual(found('I2t'));
  expect(found('grounding')).toEqual(found('earthing'));
  expect(found('cables')).toEqual(found('cable'));
});

test.each(['CABLE_K', 'jw.cable_k', '=JW.CABLE_K'])('a name finds its function first: %s', (name) => expect(found(name)[0]).toBe('CABLE_K'));

test('words of an argument, of a standard, of a choice', () => {
  expect(found('R/X')).toContain('IMP_PART');
  expect(found('XLPE')).toContain('CABLE_K');
  expect(found('60364-4-43')).toContain('CABLE_WITHSTAND');
});

test('all words together come before some of them; nothing is found for nothing', () => {
  const both = found('volt drop');
  expect(both[0]).toBe('VOLT_DROP');
  expect(both).not.toContain('CABLE_K');
  for (const empty of ['', '  ', 'what is the', 'qwertz']) expect(found(empty)).toEqual([]);
});

test('every function can be found by the words that its declaration gives', () => {
  for (const { declaration, member } of catalogue.entries) {
    expect([member.name, declaration.tasks.length > 0]).toEqual([member.name, true]);
    for (const task of declaration.tasks) expect([task, found(task).includes(member.name)]).toEqual([task, true]);
  }
});

test('a word of the programming language is a word like others', () => {
  for (const word of ['constructor', 'toString', '__proto__']) expect(found(`${word} earth loop`)).toContain('LOOP_MAX');
});
