import { all, create } from 'mathjs';
import { complex } from '../src/core/complex';
import { Mesh, SolvedMesh } from '../src/core/network/mesh';
import { call } from '../src/functions/kernel/call';
import type { Argument, Cell, Matrix } from '../src/functions/kernel/cell';
import { catalogue } from '../src/sheet/catalogue';

/**
 * How the network functions grow with the size of a network, and how the sparse mesh compares with the inverse of the whole
 * matrix by a general library. All figures of a run are medians of the same machine at the same time; the ratios are what counts.
 */

const run = (name: string, ...argv: Argument[]): Cell | Matrix => call(catalogue, catalogue.find(name)!, argv).value;

/** Median time of some runs, ms. */
function median(work: () => unknown, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(runs / 2)]!;
}

/** Boards fed by threes; `mark` makes each table a new one, so that nothing remembered helps. */
const boards = (count: number, mark: number): Matrix =>
  Array.from({ length: count }, (_, i) => [`B${i}`, i === 0 ? 'source' : `B${Math.floor((i - 1) / 3)}`, `${0.1 + mark / 1e6}+0.05i`, '0.1+0.05i']);

function radial(): void {
  console.log('NET_RADIAL, boards in one pass');
  run('NET_RADIAL', boards(20_000, 0), '1.9+9.4i', 415);
  let first = 0;
  for (const count of [1000, 10_000, 100_000]) {
    const tables = Array.from({ length: 5 }, (_, i) => boards(count, i + 1));
    let next = 0;
    const time = median(() => run('NET_RADIAL', tables[next++]!, '1.9+9.4i', 415), 5);
    first ||= time;
    console.log(`  ${count} boards: ${time.toFixed(1)} ms, ${(time / first).toFixed(1)} times the first for ${count / 1000} times the boards`);
  }
  console.log('NET_RADIAL_AT, one question for each board of a table of 2,000');
  const table = boards(2000, 99);
  const once = median(() => run('NET_RADIAL', boards(2000, Math.random() * 1000), '1.9+9.4i', 415), 5);
  const asked = median(() => { for (let i = 0; i < 2000; i += 1) run('NET_RADIAL_AT', table, '1.9+9.4i', `B${i}`, 'Ik3', 415); }, 5);
  console.log(`  2000 questions: ${asked.toFixed(1)} ms, ${(asked / once).toFixed(1)} times one table of them; worked anew each time it would be 2000 times`);
}

/** Substations in a ring with ties across it, each with a small tree of boards. */
function ringMain(count: number): { branches: [number, number][]; sources: number[] } {
  const branches: [number, number][] = [];
  const stations = Math.floor(count / 4);
  for (let i = 0; i < count; i += 1) branches.push(i % 4 === 0 ? [i, ((i / 4 + 1) % stations) * 4] : [i, i - (i % 4)]);
  for (let i = 0; i < stations; i += 10) branches.push([i * 4, ((i * 7 + 3) % stations) * 4]);
  return { branches: branches.filter(([a, b]) => a !== b), sources: [0, Math.floor(stations / 2) * 4] };
}

const branchImpedance = complex(1.2, 0.9);
const sourceImpedance = complex(1, 8);

function meshOf(count: number): Mesh {
  const { branches, sources } = ringMain(count);
  return new Mesh(
    branches.map(([a, b]) => ({ from: `N${a}`, to: `N${b}`, z: branchImpedance, state: 'closed' })),
    sources.map((a) => ({ node: `N${a}`, z: sourceImpedance, state: 'closed' })),
  );
}

/** The whole nodal admittance matrix of the same network, for the library to invert. */
function denseInverse(count: number): () => unknown {
  const math = create(all!, {});
  const { branches, sources } = ringMain(count);
  const y = Array.from({ length: count }, () => Array.from({ length: count }, () => math.complex(0, 0)));
  const add = (a: number, b: number, re: number, im: number) => { y[a]![b] = math.complex(y[a]![b]!.re + re, y[a]![b]!.im + im); };
  const inverse = branchImpedance.inverse();
  for (const [a, b] of branches) {
    add(a, a, inverse.re, inverse.im);
    add(b, b, inverse.re, inverse.im);
    add(a, b, -inverse.re, -inverse.im);
    add(b, a, -inverse.re, -inverse.im);
  }
  for (const a of sources) add(a, a, sourceImpedance.inverse().re, sourceImpedance.inverse().im);
  return () => math.inv(y);
}

function meshed(): void {
  console.log('mesh: all diagonal impedances, sparse factor and selected inverse');
  const work = (mesh: Mesh) => () => new SolvedMesh(mesh).impedance(0);
  work(meshOf(2000))();
  for (const count of [100, 200]) {
    const sparse = median(work(meshOf(count)), 15);
    const dense = median(denseInverse(count), 3);
    console.log(`  ${count} nodes: ${sparse.toFixed(2)} ms; inverse of the whole matrix by a general library ${dense.toFixed(0)} ms, ${(dense / sparse).toFixed(0)} times as long`);
  }
  for (const count of [500, 1000, 2000, 5000]) console.log(`  ${count} nodes: ${median(work(meshOf(count)), 5).toFixed(1)} ms`);
}

radial();
meshed();
