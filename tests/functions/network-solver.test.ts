import { type Complex, complex, complexText, parseComplex } from '../../src/core/complex';
import { Contributions } from '../../src/core/network/contribution';
import { MOST_NODES, Mesh, type BranchRow, type SourceRow, SolvedMesh } from '../../src/core/network/mesh';
import type { Matrix } from '../../src/functions/kernel/cell';
import { expectPrinted, expectRefused } from '../support/expect';
import { run } from '../support/run';

type Pairs = readonly (readonly [number, number])[];
const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);
const grid = (side: number): Pairs => range(side * side).flatMap((i) => [...(i % side > 0 ? [[i - 1, i]] : []), ...(i >= side ? [[i - side, i]] : [])] as [number, number][]);
const cube: Pairs = range(8).flatMap((i) => [1, 2, 4].filter((bit) => (i & bit) === 0).map((bit) => [i, i | bit] as const));
const octahedron: Pairs = range(6).flatMap((a) => range(a).filter((b) => a + b !== 5).map((b) => [a, b] as const));
const complete = (count: number): Pairs => range(count).flatMap((a) => range(a).map((b) => [a, b] as const));

/** Impedances at the nodes 0, 1, … of a network of branches all alike, fed at node 0. */
function impedances(pairs: Pairs, each: Complex, source: Complex): Complex[] {
  const rows = (run('NET_MESHED', pairs.map(([a, b]) => [`N${a}`, `N${b}`, complexText(each)]), [['N0', complexText(source)]], 400) as Matrix).slice(1);
  const found = new Map(rows.map((row) => [row[0], parseComplex(String(row[1]))!]));
  return range(found.size).map((node) => found.get(`N${node}`)!);
}

/** Resistance between two nodes, in those of one branch: textbook values, from memory. */
describe('networks of branches all alike', () => {
  test.each<[string, Pairs, number, number]>([
    ['edge of a cube', cube, 1, 7 / 12],
    ['diagonal of a face of a cube', cube, 3, 3 / 4],
    ['diagonal of a cube', cube, 7, 5 / 6],
    ['edge of an octahedron', octahedron, 1, 5 / 12],
    ['diagonal of an octahedron', octahedron, 5, 1 / 2],
    ['ten nodes joined each to each: 2/n', complete(10), 4, 2 / 10],
    ['across a grid of 2 by 2 nodes', grid(2), 3, 1],
    ['across a grid of 3 by 3 nodes', grid(3), 8, 3 / 2],
    ['across a grid of 4 by 4 nodes', grid(4), 15, 13 / 7],
    ['across a grid of 5 by 5 nodes', grid(5), 24, 47 / 22],
  ])('%s', (_what, pairs, node, branches) => {
    const [each, source] = [complex(3, 1), complex(0.5, 8)];
    const z = impedances(pairs, each, source);
    expect(z[0]!.sub(source).abs()).toBeLessThan(1e-12);
    expect(z[node]!.sub(source.add(each.mul(branches))).abs()).toBeLessThan(1e-12);
  });
});

/** A grid of branches that differ in size and R/X, one of resistance and one of reactance alone, an island without a source, open rows. */
function uneven(): Mesh {
  const branch = (from: string, to: string, z: Complex, state: BranchRow['state'] = 'closed'): BranchRow => ({ from, to, z, state });
  const source = (node: string, z: Complex, state: SourceRow['state'] = 'closed'): SourceRow => ({ node, z, state });
  const branches = grid(5).map(([a, b], i) => branch(`N${a}`, `N${b}`, i === 7 ? complex(2, 0) : i === 20 ? complex(0, 3) : complex(1 + ((7 * i) % 5), 0.5 + ((3 * i) % 7))));
  return new Mesh(
    [...branches, branch('N3', 'N17', complex(0.2, 0.1), 'open'), branch('D1', 'D2', complex(1, 1)), branch('D1', 'N9', complex(1, 1), 'open')],
    [source('N2', complex(1.5, 8)), source('N21', complex(6, 2)), source('N14', complex(0.1, 0.3), 'open')],
  );
}

test('wherever the fault is, currents that enter a node leave it, and those of the sources make up the fault', () => {
  const mesh = uneven();
  const solved = new SolvedMesh(mesh);
  for (const fault of range(25).map((i) => mesh.node(`N${i}`)!)) {
    const shares = new Contributions(solved, fault);
    const into = mesh.nodes.map(() => complex(0, 0));
    mesh.branches.forEach((_, b) => {
      into[mesh.to[b]!] = into[mesh.to[b]!]!.add(shares.branch(b));
      into[mesh.from[b]!] = into[mesh.from[b]!]!.sub(shares.branch(b));
    });
    mesh.sources.forEach((_, s) => { into[mesh.at[s]!] = into[mesh.at[s]!]!.add(shares.source(s)); });
    const expected = solved.impedance(fault).inverse();
    expect(Math.max(...into.map((current, node) => current.sub(node === fault ? expected : complex(0, 0)).abs()))).toBeLessThan(1e-13);
  }
});

test('nothing is carried over to nodes that are not fed', () => {
  const mesh = uneven();
  const transfer = new SolvedMesh(mesh).transfer(mesh.node('N7')!);
  expect(['D1', 'D2'].map((name) => transfer(mesh.node(name)!))).toEqual([complex(0, 0), complex(0, 0)]);
});

describe('sources and islands', () => {
  test('a source that is open feeds nothing', () => {
    const tables: Matrix[] = [[['A', 'B', 4]], [['A', 2], ['B', 3, 'open']]];
    expectPrinted('NET_MESHED_AT', [...tables, 'A', 'Z', 400], '2');
    expectPrinted('NET_MESHED_AT', [...tables, 'B', 'Z', 400], '6');
    // 1.05·400/√3 V over 2 + 4 mΩ.
    expectPrinted('NET_CONTRIBUTION_AT', [...tables, 'B', 'A', 'B', 400], 40.4145);
    expect(run('NET_CONTRIBUTION_AT', ...tables, 'A', 'source', 'B', 400)).toBe(0);
    expect((run('NET_CONTRIBUTION', ...tables, 'A', 400) as Matrix)[3]).toEqual(['source', 'B', 0]);
  });
  test('in an island without a source no current flows, closed as its branches may be', () => {
    const shares = run('NET_CONTRIBUTION', [['A', 'B', 4], ['C', 'D', 1], ['D', 'E', '1i']], [['A', 2]], 'B', 400) as Matrix;
    expect(shares.slice(2, 4)).toEqual([['C', 'D', 0], ['D', 'E', 0]]);
  });
  test('names that no table knows are joined by nothing', () => {
    const tables: Matrix[] = [[['A', 'B', 4]], [['A', 2]]];
    for (const [from, to] of [['P', 'Q'], ['P', 'source'], ['source', 'Q'], ['source', 'source'], ['A', 'A']] as const) {
      expectRefused('NET_CONTRIBUTION_AT', [...tables, 'B', from, to, 400], '#N/A', `nothing joins ${from} and ${to}`);
    }
  });
});

describe('limits', () => {
  test('impedances without resistance, without reactance, and both', () => {
    const at = (z: string, source: string, printed: string) => expectPrinted('NET_MESHED_AT', [[['A', 'B', z]], [['A', source]], 'B', 'Z', 400], printed);
    at('2i', '3i', '0+5i');
    at('2', '3', '5+0i');
    at('2', '3i', '2+3i');
    // Without resistance κ = 1.02 + 0.98, without reactance 1.02.
    expectPrinted('NET_MESHED_AT', [[['A', 'B', '2i']], [['A', '3i']], 'B', 'kappa', 400], 2);
    expectPrinted('NET_MESHED_AT', [[['A', 'B', '2']], [['A', '3']], 'B', 'kappa', 400], 1.02);
  });
  test('impedances that no floating-point number can be the reciprocal of', () => {
    expectRefused('NET_MESHED', [[['A', 'B', '1E308+1E308i']], [['A', 1]], 400], '#NUM!', 'branches: impedances lie too far apart for the network to be solved');
  });
  test('5,000 nodes, not one more', () => {
    const chain = (count: number) => range(count - 1).map((i): BranchRow => ({ from: `N${i}`, to: `N${i + 1}`, z: complex(1, 0), state: 'closed' }));
    expect(MOST_NODES).toBe(5000);
    expect(new Mesh(chain(5000), []).nodes).toHaveLength(5000);
    expect(() => new Mesh(chain(5001), [])).toThrow('branches: 5001 nodes, takes up to 5000');
  });
});
