import { type Complex, complex } from '../complex';
import { SOURCE, nameKey } from './names';
import type { SolvedMesh } from './mesh';

/** Currents in a mesh while one of its nodes has a three-phase fault, as vectors, kA for each volt of driving voltage E. */
export class Contributions {
  /** (E − V)/E at a node. */
  private readonly drop: (node: number) => Complex;

  /**
   * V_i = E·(1 − Z_ik/Z_kk), the branch current (V_from − V_to)/z, that of a source (E − V_node)/z.
   * Source: nodal method, IEC 60909-0:2016, 7.2.2; E = c·Un/√3.
   */
  constructor(private readonly solved: SolvedMesh, readonly node: number) {
    const transfer = solved.transfer(node);
    const own = transfer(node);
    this.drop = (other) => transfer(other).div(own);
  }

  /** Current from one end of a branch to the other; nothing flows in an open one. */
  branch(b: number): Complex {
    const { mesh, arrangement } = this.solved;
    if (!arrangement.branch(b)) return complex(0, 0);
    return this.drop(mesh.to[b]!).sub(this.drop(mesh.from[b]!)).div(mesh.branches[b]!.z);
  }

  source(s: number): Complex {
    const { mesh, arrangement } = this.solved;
    if (!arrangement.source(s)) return complex(0, 0);
    return this.drop(mesh.at[s]!).div(mesh.sources[s]!.z);
  }

  /**
   * Current between two nodes, or between a node and its sources: what runs side by side is added as vectors.
   * @returns kA/V; undefined where the tables have nothing between the two
   */
  between(from: string, to: string): number | undefined {
    const { mesh } = this.solved;
    const [a, b] = [from, to].map((name) => (nameKey(name) === SOURCE ? -1 : mesh.node(name)));
    const parts: Complex[] = [];
    mesh.sources.forEach((_, s) => {
      if ((a === -1 && mesh.at[s] === b) || (b === -1 && mesh.at[s] === a)) parts.push(this.source(s));
    });
    mesh.branches.forEach((_, i) => {
      if (mesh.from[i] === a && mesh.to[i] === b) parts.push(this.branch(i));
      else if (mesh.from[i] === b && mesh.to[i] === a) parts.push(this.branch(i).neg());
    });
    return parts.length === 0 ? undefined : parts.reduce((sum, part) => sum.add(part)).abs();
  }
}
