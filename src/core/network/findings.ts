import { type Mesh, asDrawn, fedNodes } from './mesh';
import type { RadialNetwork } from './radial';

/** What is wrong with a network table, in words, in the order of its rows. */
export const radialFindings = (network: RadialNetwork): string[] =>
  network.rows.flatMap(({ row }, place) => {
    const fault = network.fault(place);
    return fault ? [`row ${row}: ${fault.note}`] : [];
  });

/** Nodes that no source reaches, and sources at nodes that no branch names; "either" counts as closed. */
export function meshFindings(mesh: Mesh, sourceRow: (s: number) => number): string[] {
  const fed = fedNodes(mesh, asDrawn(mesh));
  const onBranch = new Set<number>([...mesh.from, ...mesh.to]);
  return [
    ...mesh.nodes.flatMap((name, node) => (fed[node] ? [] : [`node ${name}: not fed`])),
    ...mesh.sources.flatMap(({ node }, s) => (onBranch.has(mesh.at[s]!) ? [] : [`sources row ${sourceRow(s)}: ${node} is on no branch`])),
  ];
}

/** First finding and how many more: "row 4: fed from unknown board DB9; 3 more". */
export function inWords(findings: readonly string[]): string {
  const [first] = findings;
  if (first === undefined) return 'no findings';
  return findings.length === 1 ? first : `${first}; ${findings.length - 1} more`;
}
