import { type Complex as MathComplex, complex as mathComplex, inv, matrix } from 'mathjs';
import { complex } from '../src/core/complex';
import { type BranchRow, Mesh, SolvedMesh } from '../src/core/network/mesh';
import { call } from '../src/functions/kernel/call';
import type { Cell } from '../src/functions/kernel/cell';
import { catalogue } from '../src/sheet/catalogue';
import { type Options, type Row, median, time, times } from './figures';

function timed<T>(work: () => T): { seconds: number; result: T } {
  const start = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(start);
  return { seconds: (user + system) / 1e6, result };
}

const medianOf = (repeats: number, work: () => unknown): number => median(Array.from({ length: repeats }, () => timed(work).seconds));

/** Boards four levels deep and more, the last ones first, so that no row finds its feeder above it. */
const boards = (count: number, shift: number): Cell[][] =>
  Array.from({ length: count }, (_, at) => {
    const board = count - at;
    return [`DB${board}`, board === 1 ? 'source' : `DB${Math.ceil((board - 1) / 8)}`, `${(1 + (board + shift) % 50) / 10}+${(1 + board % 9) / 10}i`, null];
  });

/** The worksheet function on tables that differ each time, since it keeps the tables it has seen. */
function radial({ repeats }: Options): Row[] {
  const entry = catalogue.find('NET_RADIAL')!;
  const run = (count: number): number => {
    let shift = 0;
    return medianOf(Math.min(repeats, 5), () => {
      shift += 1;
      const { value } = call(catalogue, entry, [boards(count, shift), '1.9+9.4i', 415]);
      if (!Array.isArray(value) || value.length !== count + 1) throw new Error('the table of boards was not answered');
    });
  };
  run(1_000);
  const [small, medium, large] = [1_000, 10_000, 100_000].map(run) as [number, number, number];
  const growth = ((large - medium) / 90) / ((medium - small) / 9);
  return [
    { what: 'NET_RADIAL: 1,000, 10,000, 100,000 boards', measured: `${time(small)}, ${time(medium)}, ${time(large)}` },
    { what: 'NET_RADIAL, growth: time a board, 10,000 to 100,000 over 1,000 to 10,000', measured: '', ratio: times(growth), aim: 'linear (≤ 1.5×)', met: growth <= 1.5 },
  ];
}

/** Streets that cross: every node tied to its right and lower neighbour, a source at every 40th. The hardest shape for a sparse solver. */
function grid(width: number, height: number): Mesh {
  const name = (x: number, y: number): string => `N${x}-${y}`;
  const branches: BranchRow[] = [];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const z = complex(1 + ((x * 7 + y * 3) % 11) / 10, 0.4 + ((x + y) % 5) / 10);
      if (x + 1 < width) branches.push({ from: name(x, y), to: name(x + 1, y), z, state: 'closed' });
      if (y + 1 < height) branches.push({ from: name(x, y), to: name(x, y + 1), z, state: 'closed' });
    }
  }
  const sources = Array.from({ length: Math.ceil((width * height) / 40) }, (_, at) => ({ node: name((at * 40) % width, Math.floor((at * 40) / width)), z: complex(1.9, 9.4), state: 'closed' as const }));
  return new Mesh(branches, sources);
}

const diagonal = (mesh: Mesh): readonly { re: number; im: number }[] => {
  const solved = new SolvedMesh(mesh);
  return mesh.nodes.map((_, node) => solved.impedance(node));
};

/** The whole inverse by a general maths library, from the same admittances. */
function dense({ nodes, branches, sources, from, to, at }: Mesh): readonly { re: number; im: number }[] {
  const y = nodes.map(() => nodes.map(() => ({ re: 0, im: 0 })));
  const add = (row: number, column: number, { re, im }: { re: number; im: number }, sign: number): void => {
    const entry = y[row]![column]!;
    entry.re += sign * re;
    entry.im += sign * im;
  };
  branches.forEach(({ z }, branch) => {
    const [a, b, own] = [from[branch]!, to[branch]!, z.inverse()];
    for (const [row, column, sign] of [[a, a, 1], [b, b, 1], [a, b, -1], [b, a, -1]] as const) add(row, column, own, sign);
  });
  sources.forEach(({ z }, source) => add(at[source]!, at[source]!, z.inverse(), 1));
  const inverse = inv(matrix(y.map((row) => row.map(({ re, im }) => mathComplex(re, im))))).toArray() as unknown as MathComplex[][];
  return nodes.map((_, node) => inverse[node]![node]!);
}

function meshed({ repeats }: Options): Row[] {
  const small = grid(10, 10);
  diagonal(small);
  const [ours, theirs] = [medianOf(repeats, () => diagonal(small)), medianOf(3, () => dense(small))];
  const [a, b] = [diagonal(small), dense(small)];
  const apart = Math.max(...a.map(({ re, im }, node) => Math.hypot(re - b[node]!.re, im - b[node]!.im) / Math.hypot(re, im)));
  const street = grid(40, 50);
  const city = grid(50, 100);
  const streetTime = medianOf(Math.min(repeats, 3), () => diagonal(street));
  const cityTime = medianOf(Math.min(repeats, 3), () => diagonal(city));
  return [
    { what: 'mesh of 100 nodes, all impedances', measured: time(ours), against: `mathjs, dense inverse: ${time(theirs)}`, ratio: times(ours / theirs), aim: 'ahead (< 1×)', met: ours < theirs },
    { what: 'the same: greatest difference of an impedance', measured: apart.toExponential(1), aim: '≤ 1e-9', met: apart <= 1e-9 },
    { what: 'mesh of 2,000 nodes in a grid, all impedances', measured: time(streetTime), aim: 'about 1 s', met: streetTime <= 1 },
    { what: 'mesh of 5,000 nodes in a grid, all impedances', measured: time(cityTime), aim: 'held', met: city.nodes.length === 5000 },
  ];
}

export const networks = (options: Options): Row[] => [...radial(options), ...meshed(options)];
