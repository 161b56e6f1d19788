import type { Cell, Matrix } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { run } from '../support/run';

// Thousands of rows at a time: these stand by themselves so that runs which repeat every test many times can leave them out.

describe('a mesh of many nodes', () => {
  /** A ring main of many substations, each with a tree of boards, and ties across the ring. */
  const ringMain = (count: number): Matrix => [
    ...Array.from({ length: count - 1 }, (_, i): Cell[] => (i % 4 === 0 ? [`N${i}`, `N${Math.max(0, i - 4)}x`, '0.4+0.3i'] : [`N${i}`, `N${i - (i % 4)}`, '6+2i'])),
    ...Array.from({ length: count / 20 }, (_, i): Cell[] => [`N${i * 4}`, `N${((i * 52) % count) - (((i * 52) % count) % 4)}`, '1.2+0.9i']),
  ].map(([from, to, z]) => [from!, String(to).replace('x', from === 'N0' ? 'start' : ''), z!]).filter(([from, to]) => from !== to);
  test('5,000 nodes are held, one more is refused in words', () => {
    const rows = run('NET_MESHED', ringMain(5000), [['N0', '1+8i'], ['N2000', '1+8i']], 400) as Matrix;
    expect(rows.length).toBeGreaterThan(4990);
    expect(rows.slice(1).every((row) => row[6] === '')).toBe(true);
    expectRefused('NET_MESHED', [Array.from({ length: 5000 }, (_, i) => [`N${i}`, `N${i + 1}`, 1]), [['N0', 1]], 400], '#NUM!', 'branches: 5001 nodes, takes up to 5000');
  });
  test('a mesh that is far too close is refused in words, not left to run', () => {
    const close: Matrix = Array.from({ length: 90_000 }, (_, i) => [`N${i % 3000}`, `N${(i * 7919 + Math.floor(i / 3000) * 104_729 + 1) % 3000}`, 1]);
    expectRefused('NET_MESHED', [close.filter(([from, to]) => from !== to), [['N0', 1]], 400], '#NUM!', 'branches: the network is too closely meshed to be solved');
  });
  test('a whole sheet selected by mistake', () => {
    expectRefused('NET_MESHED', [Array.from({ length: 1_048_576 }, () => ['A', 'B', 1]), [['A', 1]], 400], '#NUM!', 'branches: 1048576 rows, takes up to 200000');
  });
});

describe('a tree of many boards', () => {
  const many = (count: number): Matrix => Array.from({ length: count }, (_, i) => [`B${i}`, i === 0 ? 'source' : `B${Math.floor((i - 1) / 3)}`, '0.1+0.05i', '0.1+0.05i']);
  test('a hundred thousand boards, in any order, and one chain of as many', () => {
    const boards = many(100_000).reverse();
    const rows = run('NET_RADIAL', boards, '1.9+9.4i', 415) as Matrix;
    expect(rows).toHaveLength(100_001);
    expect(rows.every((row) => row[7] === '' || row[7] === 'note')).toBe(true);
    const chain: Matrix = Array.from({ length: 100_000 }, (_, i) => [`B${i}`, i === 99_999 ? 'source' : `B${i + 1}`, '0.001']);
    expectPrinted('NET_RADIAL_AT', [chain, '1+1i', 'B0', 'Z', 415], '101+1i');
  });
  test('a ring of a hundred thousand boards is told in few words', () => {
    const ring: Matrix = Array.from({ length: 100_000 }, (_, i) => [`B${i}`, `B${(i + 1) % 100_000}`, 1]);
    expectRefused('NET_RADIAL_AT', [ring, '1.9+9.4i', 'B5', 'Ik3', 415], '#NUM!', 'boards row 6: loop: B0 > B1 > B2 > B3 > B4 > B5 > B6 > B7 > B8 > B9 > … > B0');
  });
  test('a whole sheet selected by mistake', () => {
    expectRefused('NET_RADIAL', [Array.from({ length: 1_048_576 }, () => ['A', 'source', 1]), '1.9+9.4i', 415], '#NUM!', 'boards: 1048576 rows, takes up to 200000');
    const mostlyBlank: Matrix = [['MSB', 'source', '0.2+0.4i'], ['DB1', 'MSB', '6.2+2.4i'], ...Array.from({ length: 1_000_000 }, () => [null, null, null])];
    expect(run('NET_RADIAL', mostlyBlank, '1.9+9.4i', 415)).toHaveLength(3);
  });
});
