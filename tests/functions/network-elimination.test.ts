import { minimumDegree } from '../../src/core/network/elimination';

type Edges = readonly (readonly [number, number])[];
const eliminated = (count: number, edges: Edges, most?: number) => minimumDegree(count, edges.map(([a]) => a), edges.map(([, b]) => b), most);
const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);

const tree = (count: number): Edges => range(count - 1).map((i) => [i + 1, i >> 1]);
const star = (count: number): Edges => range(count - 1).map((i) => [count - 1, i]);
const ring = (count: number): Edges => range(count).map((i) => [i, (i + 1) % count]);
const complete = (count: number): Edges => range(count).flatMap((a) => range(a).map((b) => [a, b] as const));
/** Two lines of nodes with a rung at each. */
const ladder = (rungs: number): Edges => range(rungs).flatMap((i) => [[2 * i, 2 * i + 1], ...(i > 0 ? [[2 * i - 2, 2 * i], [2 * i - 1, 2 * i + 1]] : [])] as [number, number][]);
const grid = (side: number): Edges => range(side * side).flatMap((i) => [...(i % side > 0 ? [[i - 1, i]] : []), ...(i >= side ? [[i - side, i]] : [])] as [number, number][]);
const pairs = (text: string): Edges => text.split(' ').map((pair) => pair.split('-').map(Number) as [number, number]);
/** Each node joined to those so many places on. */
const chords = (count: number, ...jumps: number[]): Edges => range(count).flatMap((i) => jumps.map((jump) => [i, (i * jump + jump) % count] as const).filter(([a, b]) => a !== b));

/** Work of an elimination by its definition: the square of the neighbours that each node leaves. */
const products = (start: Int32Array): number => range(start.length - 1).reduce((sum, k) => sum + (start[k + 1]! - start[k]!) ** 2, 0);

describe('order of elimination', () => {
  test.each<[string, number, Edges]>([
    ['a tree', 70, tree(70)],
    ['a star', 70, star(70)],
    ['a ring', 65, ring(65)],
    ['a ladder', 66, ladder(33)],
    ['a grid', 81, grid(9)],
    ['each joined to each', 40, complete(40)],
    ['chords', 75, chords(75, 1, 2, 7)],
    ['many chords', 70, chords(70, 1, 3, 7, 11, 13, 17, 29, 31)],
    ['nodes that nothing joins', 36, [[3, 35], [35, 20]]],
    ['one node alone', 1, []],
    ['branches side by side, and from a node to itself', 5, [[0, 1], [1, 0], [0, 1], [0, 0], [1, 2], [2, 2], [2, 2], [3, 2], [4, 4]]],
    // Networks found by trying at random: node 0 waits in a list with others, and some of them leave it first.
    ['the first node waits behind another', 12, pairs('4-1 4-2 6-0 7-5 8-0 8-5 8-7 10-2 11-1 11-3 11-4')],
    ['the first node waits before another', 13, pairs('2-0 3-1 4-2 5-4 6-0 6-2 6-4 7-3 7-4 8-3 9-1 9-4 10-0 10-4 10-9 11-2 11-9 12-1 12-2 12-4 12-5 12-8 12-9 12-10 12-11')],
    ['the first node comes to the front', 12, pairs('2-1 3-2 4-2 5-2 5-3 5-4 6-0 7-3 8-0 8-1 9-7 9-8 10-2 10-6 10-8 11-6')],
  ])('%s: by definition, with sets', (_what, count, edges) => {
    const around = range(count).map(() => new Set<number>());
    for (const [a, b] of edges.filter(([from, to]) => from !== to)) {
      around[a]!.add(b);
      around[b]!.add(a);
    }
    const { order, position, start, rows } = eliminated(count, edges);
    expect([...order].sort((a, b) => a - b)).toEqual(range(count));
    expect([...order].map((node) => position[node])).toEqual(range(count));
    expect(start[count]).toBe(rows.length);
    const left = new Set(range(count));
    const joins: number[][] = [];
    const [degrees, least]: number[][] = [[], []];
    order.forEach((node) => {
      degrees.push(around[node]!.size);
      least.push(Math.min(...[...left].map((other) => around[other]!.size)));
      joins.push([...around[node]!].map((other) => position[other]!).sort((a, b) => a - b));
      left.delete(node);
      for (const a of around[node]!) {
        around[a]!.delete(node);
        for (const b of around[node]!) if (a !== b) around[a]!.add(b);
      }
    });
    // None has fewer neighbours than the one that goes.
    expect(degrees).toEqual(least);
    expect(range(count).map((k) => [...rows.subarray(start[k], start[k + 1])])).toEqual(joins);
  });
  // A tree gains no branch; a ring and a ladder gain one diagonal for each node but three and are then triangles side by side: 2n − 3.
  test.each<[string, number, Edges, number]>([
    ['a tree', 70, tree(70), 69],
    ['a star, its middle named last', 70, star(70), 69],
    ['a ring', 65, ring(65), 127],
    ['a ladder', 66, ladder(33), 129],
    ['each joined to each', 40, complete(40), 780],
  ])('%s: as many branches as must be', (_what, count, edges, entries) => expect(eliminated(count, edges).rows).toHaveLength(entries));
});

describe('work of an elimination', () => {
  // A tree leaves one neighbour each time, a ring two until two nodes are left, the last of all none; complete: Σ k².
  test.each<[string, number, Edges, number]>([
    ['a tree', 70, tree(70), 69],
    ['a ring', 65, ring(65), 4 * 63 + 1],
    ['each joined to each', 10, complete(10), 285],
    ['a grid', 81, grid(9), products(eliminated(81, grid(9)).start)],
  ])('%s: taken on up to the limit, refused over it', (_what, count, edges, work) => {
    expect(products(eliminated(count, edges, work).start)).toBe(work);
    expect(() => eliminated(count, edges, work - 1)).toThrow('branches: the network is too closely meshed to be solved');
  });
});
