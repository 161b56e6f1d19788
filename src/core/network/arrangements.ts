import type { Complex } from '../complex';
import { outOfRange } from '../refusal';
import { MOST_PRODUCTS } from './elimination';
import { type Arrangement, type Mesh, SolvedMesh } from './mesh';

/** Greatest number of rows that may stand either way: 64 arrangements. */
const MOST_EITHER = 6;
/** Greatest work of all arrangements together, in products. */
const MOST_TOGETHER = 1.5e9;
/** Two arrangements that differ by less have the same level. */
const SAME = 1e-9;

export interface Extreme {
  /** Impedance at the node, mΩ. */
  readonly z: Complex;
  /** Which of the rows marked either are open: "all closed", or "open: N-S, source S". */
  readonly when: string;
}

export interface NodeExtremes {
  /** Greatest impedance, hence least fault. */
  readonly least: Extreme | undefined;
  readonly greatest: Extreme | undefined;
  /** In how many arrangements the node is not fed. */
  readonly dead: number;
}

export interface Extremes {
  readonly arrangements: number;
  readonly nodes: readonly NodeExtremes[];
}

interface Either {
  readonly branches: readonly number[];
  readonly sources: readonly number[];
}

/** The arrangement whose bits say which of the rows marked either are open. */
function arranged({ branches, sources }: Mesh, either: Either, bits: number): { arrangement: Arrangement; when: string } {
  const open = (place: number): boolean => (bits >>> place) % 2 === 1;
  const openBranches = new Set(either.branches.filter((_, place) => open(place)));
  const openSources = new Set(either.sources.filter((_, place) => open(either.branches.length + place)));
  const names = [
    ...[...openBranches].map((b) => `${branches[b]!.from}-${branches[b]!.to}`),
    ...[...openSources].map((s) => `source ${sources[s]!.node}`),
  ];
  return {
    arrangement: {
      branch: (b) => branches[b]!.state !== 'open' && !openBranches.has(b),
      source: (s) => sources[s]!.state !== 'open' && !openSources.has(s),
    },
    when: names.length === 0 ? 'all closed' : `open: ${names.join(', ')}`,
  };
}

/** Fewer open rows first, then rows that stand higher in the tables, so that of equal arrangements the simplest is named. */
const byOpenRows = (count: number): number[] => {
  const open = (bits: number): number => bits.toString(2).replaceAll('0', '').length;
  return Array.from({ length: 2 ** count }, (_, bits) => bits).sort((a, b) => open(a) - open(b));
};

/**
 * Least and greatest impedance of each node over every position of the couplers and sources marked "either".
 * Source: IEC 60909-0:2016, 5.2 (greatest and least currents).
 * @param most greatest work of all arrangements together that is taken on, in products
 */
export function extremesOf(mesh: Mesh, most = MOST_TOGETHER): Extremes {
  const marked = (rows: readonly { state: string }[]): number[] => rows.flatMap(({ state }, place) => (state === 'either' ? [place] : []));
  const either = { branches: marked(mesh.branches), sources: marked(mesh.sources) };
  const count = either.branches.length + either.sources.length;
  if (count > MOST_EITHER) throw outOfRange('branches', `${count} rows of branches and sources are marked either, takes up to ${MOST_EITHER}`);
  const nodes: { least?: Extreme; greatest?: Extreme; dead: number }[] = mesh.nodes.map(() => ({ dead: 0 }));
  for (const bits of byOpenRows(count)) {
    const { arrangement, when } = arranged(mesh, either, bits);
    const solved = new SolvedMesh(mesh, arrangement, Math.min(MOST_PRODUCTS, most / 2 ** count));
    nodes.forEach((extremes, node) => {
      if (!solved.fed[node]) {
        extremes.dead += 1;
        return;
      }
      const z = solved.impedance(node);
      if (!extremes.least || z.abs() > extremes.least.z.abs() * (1 + SAME)) extremes.least = { z, when };
      if (!extremes.greatest || z.abs() < extremes.greatest.z.abs() * (1 - SAME)) extremes.greatest = { z, when };
    });
  }
  return { arrangements: 2 ** count, nodes: nodes.map(({ least, greatest, dead }) => ({ least, greatest, dead })) };
}
