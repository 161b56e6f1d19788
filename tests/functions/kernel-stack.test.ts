import { isStackOverflow } from '../../src/core/stack';
import { call } from '../../src/functions/kernel/call';
import { catalogueOf } from '../../src/functions/kernel/catalogue';
import { family, worksheetFunction } from '../../src/functions/kernel/declaration';
import { quantity } from '../../src/functions/kernel/kinds';

const thatThrows = (thrown: () => number) => {
  const made = catalogueOf([family('fault', [worksheetFunction({ name: 'DEEP', summary: '', formula: '', basis: [], examples: [], parameters: { a: quantity('A', '', {}) }, result: 'A', compute: thrown })])]);
  return () => call(made, made.find('DEEP')!, [1]).value;
};
const endless = (): number => 1 + endless();
const thrownBy = (work: () => unknown): unknown => {
  try {
    return work();
  } catch (thrown) {
    return thrown;
  }
};

test('a stack that is used up is told from faults', () => {
  expect(isStackOverflow(thrownBy(endless))).toBe(true);
  // As the engine says where a pattern was to be compiled on the last of the stack.
  expect(isStackOverflow(new SyntaxError('Invalid regular expression: /x/: Stack overflow'))).toBe(true);
  expect(isStackOverflow(Object.assign(new Error('too much recursion'), { name: 'InternalError' }))).toBe(true);
  for (const other of [new RangeError('Invalid array length'), new SyntaxError('Unexpected token'), new Error('call stack'), 'call stack', undefined]) expect(isStackOverflow(other)).toBe(false);
});

test('it is passed on to who can begin anew; any other fault of ours is an error in the cell', () => {
  expect(thatThrows(endless)).toThrow(RangeError);
  expect(thatThrows(() => { throw new TypeError('x of undefined'); })()).toMatchObject({ code: '#VALUE!', message: 'internal fault in DEEP: no result; please report the call' });
});
