import { complex } from '../../src/core/complex';
import { extremesOf } from '../../src/core/network/arrangements';
import { Mesh, type State } from '../../src/core/network/mesh';
import type { Cell, Matrix } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { run } from '../support/run';

/** Size of Z behind a level, at 400 V and c = 1.05: its kA are 1.05·400/√3 V over mΩ. */
const size = (kA: Cell): number => Number((1.05 * 400 / Math.sqrt(3) / (kA as number)).toPrecision(9));
/** node, |Z| of the least fault, when, |Z| of the greatest, when, note. */
const arrangements = (branches: Matrix, sources: Matrix): Matrix =>
  (run('NET_ARRANGEMENTS', branches, sources, 400) as Matrix).slice(1).map(([node, least, when, greatest, at, note]) => [node!, size(least!), when!, size(greatest!), at!, note!]);

describe('which rows are open', () => {
  test('sources by their nodes', () => {
    // A: 2 ∥ (1 + 5) = 1.5; B: (2 + 1) ∥ 5 = 1.875. Without the source at A they have 6 and 5, without the one at B 2 and 3.
    expect(arrangements([['A', 'B', 1]], [['A', 2, 'either'], ['B', 5, 'either']])).toEqual([
      ['A', 6, 'open: source A', 1.5, 'all closed', 'not fed in 1 of 4'],
      ['B', 5, 'open: source A', 1.875, 'all closed', 'not fed in 1 of 4'],
    ]);
  });
  test('branches before sources', () => {
    // B at most: the couplers of 1 mΩ open and one of two sources; 3 + 2. At least: 1 ∥ 3 + 2 ∥ 2.
    expect(arrangements([['A', 'B', 1, 'either'], ['A', 'B', 3, 'closed']], [['A', 2], ['A', 2, 'either']])).toEqual([
      ['A', 2, 'open: source A', 1, 'all closed', ''],
      ['B', 5, 'open: A-B, source A', 1.75, 'all closed', ''],
    ]);
  });
  test('a row marked open stays open', () => {
    expect(arrangements([['A', 'B', 1, 'either'], ['A', 'B', 1, 'open']], [['A', 2], ['A', 2, 'open']])).toEqual([
      ['A', 2, 'all closed', 2, 'all closed', ''],
      ['B', 3, 'all closed', 3, 'all closed', 'not fed in 1 of 2'],
    ]);
  });
});

describe('of equal arrangements the simplest is named', () => {
  test('nothing open where opening changes nothing', () => {
    // The spur to B carries nothing of a fault at A.
    expect(arrangements([['A', 'B', '0.3+0.1i', 'either'], ['A', 'C', 3]], [['A', '3+4i']])[0]).toEqual(['A', 5, 'all closed', 5, 'all closed', '']);
  });
  test('one row open rather than two', () => {
    // N loses the far source by the coupler to S, or by both to M.
    const branches: Matrix = [['N', 'M', 1, 'either'], ['N', 'M', 2, 'either'], ['M', 'S', 1, 'either']];
    expect(arrangements(branches, [['N', 10], ['S', 10]])[0]!.slice(0, 3)).toEqual(['N', 10, 'open: M-S']);
  });
  test('the row that stands first in the table', () => {
    expect(arrangements([['A', 'B', 1, 'either'], ['B', 'C', 1, 'either']], [['A', 10], ['C', 10]])[0]!.slice(0, 3)).toEqual(['A', 10, 'open: A-B']);
    expect(arrangements([['B', 'C', 1, 'either'], ['A', 'B', 1, 'either']], [['A', 10], ['C', 10]])[2]!.slice(0, 3)).toEqual(['A', 10, 'open: B-C']);
  });
});

test('the greatest fault may need a coupler open: a resistive way closed beside a reactive one turns Z towards the source', () => {
  // Closed: 10 + j1 ∥ 1 = 10.5 + j0.5, 10.5119 mΩ; open: 10 + j1, 10.0499 mΩ.
  const tables: Matrix[] = [[['A', 'K', '1i'], ['A', 'K', 1, 'either']], [['A', 10]]];
  expect(arrangements(tables[0]!, tables[1]!)[1]).toEqual(['K', Number(Math.hypot(10.5, 0.5).toPrecision(9)), 'all closed', Number(Math.hypot(10, 1).toPrecision(9)), 'open: A-K', '']);
  expectPrinted('NET_ARRANGEMENTS_AT', [...tables, 'K', 'greatest', 400], 24.1284);
  expectPrinted('NET_ARRANGEMENTS_AT', [...tables, 'K', 'least', 400], 23.0679);
});

test('no fault level behind next to no impedance', () => {
  const tables: Matrix[] = [[['A', 'B', 1, 'either']], [['A', 0.05]]];
  expect((run('NET_ARRANGEMENTS', ...tables, 400) as Matrix)[1]).toEqual(['A', '', '', '', '', 'size of Z is below 0.1 mΩ: no fault level']);
  expectRefused('NET_ARRANGEMENTS_AT', [...tables, 'A', 'greatest', 400], '#NUM!', 'size of Z is below 0.1 mΩ: no fault level');
  expectPrinted('NET_ARRANGEMENTS_AT', [...tables, 'B', 'greatest', 400], 230.940);
});

test('the work of all arrangements together is limited', () => {
  // Five nodes joined each to each: 4² + 3² + 2² + 1² products, in each of two arrangements as many at most.
  const nodes = ['A', 'B', 'C', 'D', 'E'];
  const rows = nodes.flatMap((from, a) => nodes.slice(a + 1).map((to) => ({ from, to, z: complex(1, 0), state: (from === 'A' && to === 'B' ? 'either' : 'closed') as State })));
  const mesh = new Mesh(rows, [{ node: 'A', z: complex(1, 1), state: 'closed' }]);
  expect(extremesOf(mesh, 60).arrangements).toBe(2);
  expect(() => extremesOf(mesh, 59)).toThrow('branches: the network is too closely meshed to be solved');
});
