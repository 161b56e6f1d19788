import { type Complex, complex } from '../../src/core/complex';

/** A mesh as plain numbers: branches between two nodes, sources at a node, mΩ. */
export interface PlainMesh {
  count: number;
  branches: readonly (readonly [number, number, Complex])[];
  sources: readonly (readonly [number, Complex])[];
}

/**
 * Bus impedance matrix by Gauss-Jordan elimination with pivoting of the whole nodal admittance matrix: slow, plain, and
 * with no line in common with the solver that it checks.
 */
export function busImpedance({ count, branches, sources }: PlainMesh): Complex[][] {
  const rows = Array.from({ length: count }, (_, i) => Array.from({ length: 2 * count }, (_unused, j) => complex(j === count + i ? 1 : 0, 0)));
  const add = (i: number, j: number, y: Complex) => { rows[i]![j] = rows[i]![j]!.add(y); };
  for (const [a, b, z] of branches) {
    const y = z.inverse();
    add(a, a, y);
    add(b, b, y);
    add(a, b, y.neg());
    add(b, a, y.neg());
  }
  for (const [a, z] of sources) add(a, a, z.inverse());
  for (let k = 0; k < count; k += 1) {
    let pivot = k;
    for (let i = k; i < count; i += 1) if (rows[i]![k]!.abs() > rows[pivot]![k]!.abs()) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    const scale = rows[k]![k]!.inverse();
    rows[k] = rows[k]!.map((entry) => entry.mul(scale));
    for (let i = 0; i < count; i += 1) {
      const factor = rows[i]![k]!;
      if (i === k || (factor.re === 0 && factor.im === 0)) continue;
      rows[i] = rows[i]!.map((entry, j) => entry.sub(factor.mul(rows[k]![j]!)));
    }
  }
  return rows.map((row) => row.slice(count));
}
