import { outOfRange } from '../refusal';
import { type Working, silent } from '../working';
import { type FaultLevels, faultLevels, withoutLevel } from './fault-levels';
import type { SolvedMesh } from './mesh';
import type { RowFault } from './row-fault';

/** Method of the peak factor in a mesh. Source: IEC 60909-0:2016, 8.1.2. */
export type MeshMethod = 'B' | 'C';

/** Why a node has no fault level; nothing where it has one. */
export function withoutMeshLevel(solved: SolvedMesh, node: number): RowFault | undefined {
  if (!solved.fed[node]) return { note: 'not fed', error: outOfRange('node', `${solved.mesh.nodes[node]!} is not fed: it has no way to a source`) };
  return withoutLevel(solved.impedance(node));
}

/**
 * Fault levels at a node of a mesh.
 * Source: IEC 60909-0:2016, 7.2.2; methods B and C: 8.1.2.
 */
export function meshLevels(solved: SolvedMesh, node: number, volts: number, c: number, method: MeshMethod, work: Working = silent): FaultLevels {
  const z = solved.impedance(node);
  work.step('Z_kk', 'diagonal of Y⁻¹', { node: solved.mesh.nodes[node]! }, [z, 'mΩ']);
  if (method === 'B') return faultLevels(z, volts, c, 'B', z, work);
  const low = solved.impedanceAtLowFrequency(node);
  work.step('Z_c', 'diagonal of Y⁻¹ with every X·0.4', {}, [low, 'mΩ']);
  return faultLevels(z, volts, c, 'C', low, work);
}
