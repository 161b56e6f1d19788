import type { StarMesh } from './star-mesh';

/** Real and imaginary parts of a column of numbers. */
export interface Parts {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * All diagonal entries of the bus impedance matrix, by node, mΩ, without the matrix itself: only the entries that
 * the factor has a place for are worked, from the last position to the first.
 * Source: K. Takahashi, J. Fagan, M.-S. Chen, Formation of a sparse bus impedance matrix and its application to
 * short circuit study, 8th PICA Conference, 1973.
 */
export function inverseDiagonal({ elimination, lr, li, zr, zi }: StarMesh): Parts {
  const { order, start, rows } = elimination;
  const count = order.length;
  const diagonal = { re: new Float64Array(count), im: new Float64Array(count) };
  // Z between each position and its `rows`, and of each position by itself.
  const offR = new Float64Array(rows.length);
  const offI = new Float64Array(rows.length);
  const ownR = new Float64Array(count);
  const ownI = new Float64Array(count);
  // Of the position at hand, by row: its l, and its Z as far as it is summed; `mark` says which rows are its own.
  const ownLr = new Float64Array(count);
  const ownLi = new Float64Array(count);
  const sumR = new Float64Array(count);
  const sumI = new Float64Array(count);
  const mark = new Int32Array(count).fill(-1);
  for (let k = count - 1; k >= 0; k -= 1) {
    const begin = start[k]!;
    const end = start[k + 1]!;
    for (let p = begin; p < end; p += 1) {
      const i = rows[p]!;
      mark[i] = k;
      ownLr[i] = lr[p]!;
      ownLi[i] = li[p]!;
      sumR[i] = sumI[i] = 0;
    }
    let re = zr[k]!;
    let im = zi[k]!;
    for (let p = begin; p < end; p += 1) {
      const i = rows[p]!;
      const pr = lr[p]!;
      const pi = li[p]!;
      let zR = sumR[i]! + pr * ownR[i]! - pi * ownI[i]!;
      let zI = sumI[i]! + pr * ownI[i]! + pi * ownR[i]!;
      for (let q = start[i]!, last = start[i + 1]!; q < last; q += 1) {
        const j = rows[q]!;
        if (mark[j] !== k) continue;
        const qr = offR[q]!;
        const qi = offI[q]!;
        zR += ownLr[j]! * qr - ownLi[j]! * qi;
        zI += ownLr[j]! * qi + ownLi[j]! * qr;
        sumR[j]! += pr * qr - pi * qi;
        sumI[j]! += pr * qi + pi * qr;
      }
      offR[p] = zR;
      offI[p] = zI;
      re += pr * zR - pi * zI;
      im += pr * zI + pi * zR;
    }
    ownR[k] = diagonal.re[order[k]!] = re;
    ownI[k] = diagonal.im[order[k]!] = im;
  }
  return diagonal;
}

/** One column of the bus impedance matrix, by node, mΩ: the voltages that one unit of current into the node raises. */
export function inverseColumn({ elimination, lr, li, zr, zi }: StarMesh, node: number): Parts {
  const { order, position, start, rows } = elimination;
  const count = order.length;
  const vr = new Float64Array(count);
  const vi = new Float64Array(count);
  vr[position[node]!] = 1;
  for (let k = position[node]!; k < count; k += 1) {
    for (let p = start[k]!; p < start[k + 1]!; p += 1) {
      vr[rows[p]!]! += lr[p]! * vr[k]! - li[p]! * vi[k]!;
      vi[rows[p]!]! += lr[p]! * vi[k]! + li[p]! * vr[k]!;
    }
  }
  const column = { re: new Float64Array(count), im: new Float64Array(count) };
  for (let k = count - 1; k >= 0; k -= 1) {
    let re = vr[k]! * zr[k]! - vi[k]! * zi[k]!;
    let im = vr[k]! * zi[k]! + vi[k]! * zr[k]!;
    for (let p = start[k]!; p < start[k + 1]!; p += 1) {
      const i = rows[p]!;
      re += lr[p]! * vr[i]! - li[p]! * vi[i]!;
      im += lr[p]! * vi[i]! + li[p]! * vr[i]!;
    }
    column.re[order[k]!] = vr[k] = re;
    column.im[order[k]!] = vi[k] = im;
  }
  return column;
}
