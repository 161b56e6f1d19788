import fc from 'fast-check';
import { type Complex, complex, complexText, parseComplex } from '../../src/core/complex';
import { Mesh, SolvedMesh } from '../../src/core/network/mesh';
import type { Cell, Matrix } from '../../src/functions/kernel/cell';
import { between } from '../support/curves';
import { type PlainMesh, busImpedance } from '../support/dense';
import { branchTable, meshes, nodeName, sourceTable } from '../support/meshes';
import { run } from '../support/run';

const near = (a: number, b: number, part = 1e-9) => expect(Math.abs(a - b)).toBeLessThanOrEqual(part * Math.max(Math.abs(a), Math.abs(b)));
const nearZ = (a: Complex, b: Complex, part = 1e-9) => expect(a.sub(b).abs()).toBeLessThanOrEqual(part * b.abs());
const number = (value: unknown): number => {
  expect(typeof value).toBe('number');
  return value as number;
};
const rowsOf = (name: string, ...argv: unknown[]): Cell[][] => (run(name, ...(argv as Matrix[])) as Matrix).slice(1);
const meshed = (mesh: PlainMesh, method = 'C') => rowsOf('NET_MESHED', branchTable(mesh), sourceTable(mesh), 400, undefined, method);
const placeOf = (cell: Cell): number => Number(String(cell).slice(1));
const levels = (mesh: PlainMesh): Map<number, number> => new Map(meshed(mesh).map((row) => [placeOf(row[0]!), number(row[2])]));

/** One ratio R/X throughout, so that levels obey the laws of resistances. */
const alike = (mesh: PlainMesh): PlainMesh => ({
  ...mesh,
  branches: mesh.branches.map(([a, b, z]) => [a, b, complex(z.re, 3 * z.re)] as const),
  sources: mesh.sources.map(([a, z]) => [a, complex(z.re, 3 * z.re)] as const),
});

const z = fc.tuple(between(0.2, 40), between(0.2, 40)).map(([r, x]) => complex(r, x));
/** A tree of boards: each fed from an earlier one or from the source. */
const trees = fc.array(fc.tuple(fc.nat(), z, z), { minLength: 1, maxLength: 15 }).map((list) =>
  list.map(([from, line, back], i): Cell[] => [nodeName(i), from % (i + 1) === i ? 'source' : nodeName(from % (i + 1)), complexText(line), complexText(back)]));

describe('against the whole matrix, inverted by another way', () => {
  test('impedances at the nodes, for both methods', () => {
    fc.assert(fc.property(meshes(), (mesh) => {
      const dense = busImpedance(mesh);
      const low = busImpedance({ ...mesh, branches: mesh.branches.map(([a, b, y]) => [a, b, complex(y.re, 0.4 * y.im)]), sources: mesh.sources.map(([a, y]) => [a, complex(y.re, 0.4 * y.im)]) });
      const byB = meshed(mesh, 'B');
      meshed(mesh).forEach(([name, zkk, , , kappa], i) => {
        const node = placeOf(name!);
        nearZ(parseComplex(zkk as string)!, dense[node]![node]!);
        const ratio = low[node]![node]!.re / low[node]![node]!.im;
        near(kappa as number, 1.02 + 0.98 * Math.exp(-3 * 0.4 * ratio));
        near(byB[i]![4] as number, Math.min(1.8, 1.15 * (1.02 + 0.98 * Math.exp((-3 * dense[node]![node]!.re) / dense[node]![node]!.im))));
      });
    }));
  });
  test('shares of the fault current', () => {
    fc.assert(fc.property(meshes(), fc.nat(), (mesh, pick) => {
      const dense = busImpedance(mesh);
      const k = pick % mesh.count;
      const emf = (1.05 * 400) / Math.sqrt(3);
      const volts = (i: number) => complex(1, 0).sub(dense[i]![k]!.div(dense[k]![k]!)).mul(emf);
      const rows = rowsOf('NET_CONTRIBUTION', branchTable(mesh), sourceTable(mesh), nodeName(k), 400);
      mesh.branches.forEach(([a, b, y], i) => expect(Math.abs((rows[i]![2] as number) - volts(a).sub(volts(b)).div(y).abs())).toBeLessThanOrEqual(1e-9 * emf));
      mesh.sources.forEach(([a, y], i) => near(rows[mesh.branches.length + i]![2] as number, complex(emf, 0).sub(volts(a)).div(y).abs(), 1e-8));
    }));
  });
  test('reciprocity: what a unit of current at one node raises at another, it raises the other way round', () => {
    fc.assert(fc.property(meshes(20), (mesh) => {
      const named = new Mesh(
        mesh.branches.map(([a, b, y]) => ({ from: nodeName(a), to: nodeName(b), z: y, state: 'closed' as const })),
        mesh.sources.map(([a, y]) => ({ node: nodeName(a), z: y, state: 'closed' as const })),
      );
      const solved = new SolvedMesh(named);
      const columns = named.nodes.map((_, node) => solved.transfer(node));
      named.nodes.forEach((_, i) => {
        nearZ(columns[i]!(i), solved.impedance(i));
        for (let j = 0; j < i; j += 1) nearZ(columns[i]!(j), columns[j]!(i));
      });
    }));
  });
});

describe('laws of networks', () => {
  test('a tree, worked as a mesh, has the same levels', () => {
    fc.assert(fc.property(trees, z, (boards, supply) => {
      const radial = rowsOf('NET_RADIAL', boards, complexText(supply), 400);
      const branches = boards.map(([board, from, line]) => [from === 'source' ? 'incomer' : from!, board!, line!]);
      const mesh = new Map(rowsOf('NET_MESHED', branches, [['incomer', complexText(supply)]], 400, undefined, 'B').map((row) => [row[0], row]));
      for (const [board, zb, ik3, ik2] of radial) {
        const row = mesh.get(board!)!;
        nearZ(parseComplex(row[1] as string)!, parseComplex(zb as string)!);
        near(row[2] as number, ik3 as number);
        near(row[3] as number, ik2 as number);
      }
    }));
  });
  test('a branch or a source more never lowers a level, where all ratios R/X are alike', () => {
    fc.assert(fc.property(meshes(), fc.nat(), fc.nat(), between(0.05, 20), (plain, a, b, r) => {
      const mesh = alike(plain);
      const [from, to] = [a % mesh.count, b % mesh.count];
      const before = levels(mesh);
      const added = complex(r, 3 * r);
      const joined = from === to ? before : levels({ ...mesh, branches: [...mesh.branches, [from, to, added]] });
      const fed = levels({ ...mesh, sources: [...mesh.sources, [from, added]] });
      for (const [node, level] of before) {
        expect(joined.get(node)!).toBeGreaterThanOrEqual(level * (1 - 1e-9));
        expect(fed.get(node)!).toBeGreaterThanOrEqual(level * (1 - 1e-9));
      }
    }));
  });
  test('a star is worth its delta', () => {
    fc.assert(fc.property(z, z, z, z, z, (a, b, c, first, second) => {
      const sum = a.mul(b).add(b.mul(c)).add(c.mul(a));
      const delta = [['A', 'B', sum.div(c)], ['B', 'C', sum.div(a)], ['C', 'A', sum.div(b)]] as const;
      fc.pre(delta.every(([, , y]) => y.re >= 0 && y.im >= 0));
      const sources = [['A', complexText(first)], ['B', complexText(second)]];
      const star = new Map(rowsOf('NET_MESHED', [['A', 'M', complexText(a)], ['B', 'M', complexText(b)], ['C', 'M', complexText(c)]], sources, 400).map((row) => [row[0], row]));
      for (const row of rowsOf('NET_MESHED', delta.map(([from, to, y]) => [from, to, complexText(y)]), sources, 400)) near(row[2] as number, star.get(row[0]!)![2] as number);
    }));
  });
  test('where all ratios are alike, the shares of the sources make up the level, and what enters a node leaves it', () => {
    fc.assert(fc.property(meshes(), fc.nat(), (plain, pick) => {
      const mesh = alike(plain);
      const k = pick % mesh.count;
      const rows = rowsOf('NET_CONTRIBUTION', branchTable(mesh), sourceTable(mesh), nodeName(k), 400);
      near(rows.slice(mesh.branches.length).reduce((sum, row) => sum + (row[2] as number), 0), levels(mesh).get(k)!, 1e-8);
    }));
  });
  test('parallel branches are worth one, wherever they are asked about', () => {
    fc.assert(fc.property(z, z, z, (a, b, supply) => {
      const both = [['A', 'B', complexText(a)], ['B', 'A', complexText(b)]];
      const one = [['A', 'B', complexText(a.mul(b).div(a.add(b)))]];
      const sources = [['A', complexText(supply)]];
      near(number(run('NET_MESHED_AT', both as Matrix, sources, 'B', 'Ik3', 400)), number(run('NET_MESHED_AT', one as Matrix, sources, 'B', 'Ik3', 400)));
      near(number(run('NET_CONTRIBUTION_AT', both as Matrix, sources, 'B', 'A', 'B', 400)), number(run('NET_MESHED_AT', both as Matrix, sources, 'B', 'Ik3', 400)));
    }));
  });
  test('a coupler of a fraction of a microohm beside a cable of many ohms costs no figures', () => {
    const branches = [['A', 'B', '1E-5'], ['B', 'C', '2E6+1E6i'], ['A', 'C', '1E6'], ['C', 'D', '1E-5i']];
    const sources = [['A', '3+4i']];
    const long = complex(2e6, 1e6);
    const path = long.mul(1e6).div(long.add(1e6)).add(complex(3, 4));
    nearZ(parseComplex(run('NET_MESHED_AT', branches as Matrix, sources, 'D', 'Z', 400) as string)!, path.add(complex(0, 1e-5)), 1e-11);
    nearZ(parseComplex(run('NET_MESHED_AT', branches as Matrix, sources, 'B', 'Z', 400) as string)!, complex(3, 4), 1e-5);
  });
});

describe('tables and their one-cell partners', () => {
  test('a tree: each cell of the table, whatever the order of its rows', () => {
    fc.assert(fc.property(trees.chain((boards) => fc.tuple(fc.constant(boards), fc.shuffledSubarray(boards, { minLength: boards.length }))), z, ([boards, shuffled], supply) => {
      const source = complexText(supply);
      const byName = new Map(rowsOf('NET_RADIAL', shuffled, source, 415).map((row) => [row[0], row]));
      for (const row of rowsOf('NET_RADIAL', boards, source, 415)) {
        expect(byName.get(row[0]!)).toEqual(row);
        expect(['Z', 'Ik3', 'Ik2', 'kappa', 'ip', 'Ik1'].map((quantity) => run('NET_RADIAL_AT', boards, source, row[0]!, quantity, 415))).toEqual(row.slice(1, 7));
        const profile = rowsOf('NET_PROFILE', boards, source, row[0]!, 415);
        expect(profile[profile.length - 1]).toEqual([row[0], row[1], row[2], row[6]]);
        for (let i = 1; i < profile.length; i += 1) expect(profile[i]![2] as number).toBeLessThan(profile[i - 1]![2] as number);
      }
    }), { numRuns: 50 });
  });
  test('a mesh: levels, shares', () => {
    fc.assert(fc.property(meshes(8), (mesh) => {
      const [branches, sources] = [branchTable(mesh), sourceTable(mesh)];
      for (const row of meshed(mesh)) expect(['Z', 'Ik3', 'Ik2', 'kappa', 'ip'].map((quantity) => run('NET_MESHED_AT', branches, sources, row[0]!, quantity, 400))).toEqual(row.slice(1, 6));
      const ends = branches.map(([from, to]) => [from, to].sort().join());
      rowsOf('NET_CONTRIBUTION', branches, sources, 'N0', 400).slice(0, branches.length).forEach(([from, to, share], i) => {
        if (ends.filter((other) => other === ends[i]).length === 1) near(number(run('NET_CONTRIBUTION_AT', branches, sources, 'N0', to!, from!, 400)), share as number);
      });
    }), { numRuns: 50 });
  });
  test('arrangements: least and greatest of all positions, each worked by itself', () => {
    fc.assert(fc.property(meshes(7), fc.array(fc.nat(), { maxLength: 3 }), fc.boolean(), (mesh, marks, sourceToo) => {
      const either = [...new Set(marks.map((mark) => mark % mesh.branches.length))];
      const [branches, sources] = [branchTable(mesh), sourceTable(mesh)];
      const marked = branches.map((row, i) => [...row, either.includes(i) ? 'either' : '']);
      const markedSources = sources.map((row, i) => [...row, sourceToo && i === 0 ? 'either' : '']);
      const count = either.length + (sourceToo ? 1 : 0);
      const seen = new Map<Cell, number[]>();
      for (let bits = 0; bits < 2 ** count; bits += 1) {
        const state = (place: number) => ((bits >> place) & 1 ? 'open' : 'closed');
        const rows = rowsOf('NET_MESHED',
          branches.map((row, i) => [...row, either.includes(i) ? state(either.indexOf(i)) : '']),
          sources.map((row, i) => [...row, sourceToo && i === 0 ? state(either.length) : '']), 400);
        for (const row of rows) if (row[6] === '') seen.set(row[0]!, [...(seen.get(row[0]!) ?? []), row[2] as number]);
      }
      for (const [node, least, , greatest, , note] of rowsOf('NET_ARRANGEMENTS', marked, markedSources, 400)) {
        const found = seen.get(node!);
        if (!found) {
          expect(note).toBe('not fed');
          continue;
        }
        near(least as number, Math.min(...found));
        near(greatest as number, Math.max(...found));
        expect(note).toBe(found.length === 2 ** count ? '' : `not fed in ${2 ** count - found.length} of ${2 ** count}`);
        expect(run('NET_ARRANGEMENTS_AT', marked, markedSources, node!, 'least', 400)).toBe(least);
      }
    }), { numRuns: 50 });
  });
});
