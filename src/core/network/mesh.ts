import { type Complex, complex } from '../complex';
import { outOfRange } from '../refusal';
import { type Elimination, minimumDegree } from './elimination';
import { type Parts, inverseColumn, inverseDiagonal } from './inverse';
import { nameKey } from './names';
import { type Admittances, type StarMesh, factorise, reciprocal } from './star-mesh';

export type State = 'closed' | 'open' | 'either';

export interface BranchRow {
  readonly from: string;
  readonly to: string;
  /** mΩ, not zero. */
  readonly z: Complex;
  readonly state: State;
}

export interface SourceRow {
  readonly node: string;
  /** mΩ, not zero. */
  readonly z: Complex;
  readonly state: State;
}

/** Greatest number of nodes of a mesh. */
export const MOST_NODES = 5000;

/** Nodes of a mesh in the order in which its tables name them, with the ends of branches and the places of sources. */
export class Mesh {
  readonly nodes: string[] = [];
  private readonly numbers = new Map<string, number>();
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly at: Int32Array;

  constructor(readonly branches: readonly BranchRow[], readonly sources: readonly SourceRow[]) {
    this.from = new Int32Array(branches.length);
    this.to = new Int32Array(branches.length);
    branches.forEach(({ from, to }, b) => {
      this.from[b] = this.numbered(from);
      this.to[b] = this.numbered(to);
    });
    this.at = Int32Array.from(sources, ({ node }) => this.numbered(node));
    if (this.nodes.length > MOST_NODES) throw outOfRange('branches', `${this.nodes.length} nodes, takes up to ${MOST_NODES}`);
  }

  private numbered(name: string): number {
    const key = nameKey(name);
    const known = this.numbers.get(key);
    if (known !== undefined) return known;
    this.numbers.set(key, this.nodes.length);
    return this.nodes.push(name) - 1;
  }

  node(name: string): number | undefined {
    return this.numbers.get(nameKey(name));
  }
}

/** Which branches and sources of a mesh are closed. */
export interface Arrangement {
  branch(b: number): boolean;
  source(s: number): boolean;
}

/** As the tables say; "either" counts as closed. */
export const asDrawn = ({ branches, sources }: Mesh): Arrangement => ({
  branch: (b) => branches[b]!.state !== 'open',
  source: (s) => sources[s]!.state !== 'open',
});

/** 1 for each node that has a way to a closed source. */
export function fedNodes(mesh: Mesh, arrangement: Arrangement): Uint8Array {
  const leader = Int32Array.from({ length: mesh.nodes.length }, (_, node) => node);
  const leaderOf = (node: number): number => {
    let at = node;
    while (leader[at] !== at) at = leader[at] = leader[leader[at]!]!;
    return at;
  };
  for (let b = 0; b < mesh.branches.length; b += 1) if (arrangement.branch(b)) leader[leaderOf(mesh.from[b]!)] = leaderOf(mesh.to[b]!);
  const live = new Uint8Array(mesh.nodes.length);
  for (let s = 0; s < mesh.sources.length; s += 1) if (arrangement.source(s)) live[leaderOf(mesh.at[s]!)] = 1;
  return live.map((_, node) => live[leaderOf(node)]!);
}

/** A mesh in one arrangement of its couplers and sources, factorised once and asked as often as wanted. */
export class SolvedMesh {
  readonly fed: Uint8Array;
  /** Place of each fed node among the fed ones, −1 for the others. */
  private readonly place: Int32Array;
  private readonly elimination: Elimination;
  private readonly plain: StarMesh;
  private diagonal: Parts | undefined;
  private diagonalAtLowFrequency: Parts | undefined;

  /** @param most greatest work that is taken on, in products */
  constructor(readonly mesh: Mesh, readonly arrangement: Arrangement = asDrawn(mesh), most?: number) {
    this.fed = fedNodes(mesh, arrangement);
    let count = 0;
    this.place = Int32Array.from(this.fed, (fed) => (fed ? count++ : -1));
    const admittances = this.admittances(1);
    this.elimination = minimumDegree(count, admittances.from, admittances.to, most);
    this.plain = factorise(admittances, this.elimination);
  }

  /** Impedance at a node with all sources' e.m.f. shorted, mΩ; of a fed node only. Source: IEC 60909-0:2016, 7.2.2. */
  impedance(node: number): Complex {
    this.diagonal ??= inverseDiagonal(this.plain);
    return this.entry(this.diagonal, node);
  }

  /** The same with every reactance at 0.4 of the frequency, as method C asks. Source: IEC 60909-0:2016, 8.1.2. */
  impedanceAtLowFrequency(node: number): Complex {
    this.diagonalAtLowFrequency ??= inverseDiagonal(factorise(this.admittances(0.4), this.elimination));
    return this.entry(this.diagonalAtLowFrequency, node);
  }

  /** Transfer impedances from every node to one, mΩ; zero between islands and for nodes that are not fed. */
  transfer(node: number): (other: number) => Complex {
    const column = inverseColumn(this.plain, this.place[node]!);
    return (other) => (this.place[other]! < 0 ? complex(0, 0) : this.entry(column, other));
  }

  private entry({ re, im }: Parts, node: number): Complex {
    return complex(re[this.place[node]!]!, im[this.place[node]!]!);
  }

  /** Admittances among the fed nodes, reactances multiplied by a factor. */
  private admittances(factor: number): Admittances {
    const { mesh, arrangement, place } = this;
    const closed = mesh.branches.flatMap((_, b) => (arrangement.branch(b) && place[mesh.from[b]!]! >= 0 ? [b] : []));
    const y = closed.map((b) => reciprocal(mesh.branches[b]!.z.re, mesh.branches[b]!.z.im * factor));
    const [earthR, earthI] = [new Float64Array(mesh.nodes.length), new Float64Array(mesh.nodes.length)];
    mesh.sources.forEach(({ z }, s) => {
      if (!arrangement.source(s)) return;
      const [re, im] = reciprocal(z.re, z.im * factor);
      earthR[place[mesh.at[s]!]!]! += re;
      earthI[place[mesh.at[s]!]!]! += im;
    });
    return {
      from: Int32Array.from(closed, (b) => place[mesh.from[b]!]!),
      to: Int32Array.from(closed, (b) => place[mesh.to[b]!]!),
      yr: Float64Array.from(y, ([re]) => re),
      yi: Float64Array.from(y, ([, im]) => im),
      earthR, earthI,
    };
  }
}
