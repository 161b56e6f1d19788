import { valueOf } from '../support/evaluate';

test('NET_ARRANGEMENTS_AT tells in how many arrangements its node is dead, as the table does', () => {
  // Coupler A-B and the source at B either way: with both open B is dead.
  const call = (node: string): string => `"NET_ARRANGEMENTS_AT",{"A","B","1+0.5i","either"},{"A","1+8i","closed";"B","2+9i","either"},"${node}","least",400`;
  expect(valueOf(`=JW.CAUTION(${call('B')})`)).toBe('not fed in 1 of 4 arrangements: these are left out');
  expect(valueOf(`=JW.CAUTION(${call('A')})`)).toBe('');
});
