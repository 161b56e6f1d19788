import { outOfRange } from '../refusal';
import type { Elimination } from './elimination';

/**
 * Sparse factorisation of a nodal admittance matrix, Y = (1 − L)·D·(1 − L)ᵀ with L strictly lower, by star-mesh transformation.
 *
 * Each eliminated node k leaves l = y/s to its neighbours, s being the sum of its admittances, that to earth among
 * them. So no pivot is ever a difference, and a coupler of microohms beside a cable of ohms costs no figures. No
 * pivoting is needed: with R and X of 0 or more, real and negative imaginary part of Y are positive semidefinite
 * (N. J. Higham, Mathematics of Computation 67 (1998), 1591–1599: growth below 3).
 */
export interface StarMesh {
  readonly elimination: Elimination;
  /** l of each position to its `rows`, real and imaginary. */
  readonly lr: Float64Array;
  readonly li: Float64Array;
  /** 1/s of each position: what is left between it and earth and its neighbours, mΩ. */
  readonly zr: Float64Array;
  readonly zi: Float64Array;
}

/** Admittances of a mesh, 1/mΩ: branches between two nodes, and from each node to earth. */
export interface Admittances {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly yr: Float64Array;
  readonly yi: Float64Array;
  readonly earthR: Float64Array;
  readonly earthI: Float64Array;
}

/** Reciprocal of a complex number, scaled so that neither large nor small sizes are lost. */
export function reciprocal(re: number, im: number): readonly [number, number] {
  if (Math.abs(re) >= Math.abs(im)) {
    const ratio = im / re;
    const size = re + im * ratio;
    return [1 / size, -ratio / size];
  }
  const ratio = re / im;
  const size = re * ratio + im;
  return [ratio / size, -1 / size];
}

/** Branches by the earlier of their two positions, as lists within one array. */
function byEarlierEnd({ from, to }: Admittances, { position, order }: Elimination): { first: Int32Array; next: Int32Array } {
  const first = new Int32Array(order.length).fill(-1);
  const next = new Int32Array(from.length);
  for (let b = from.length - 1; b >= 0; b -= 1) {
    const k = Math.min(position[from[b]!]!, position[to[b]!]!);
    next[b] = first[k]!;
    first[k] = b;
  }
  return { first, next };
}

export function factorise(admittances: Admittances, elimination: Elimination): StarMesh {
  const { from, to, yr, yi, earthR, earthI } = admittances;
  const { order, position, start, rows } = elimination;
  const count = order.length;
  const lr = new Float64Array(rows.length);
  const li = new Float64Array(rows.length);
  const zr = new Float64Array(count);
  const zi = new Float64Array(count);
  const sr = new Float64Array(count);
  const si = new Float64Array(count);
  // Earth admittance of each position, grown by what its eliminated neighbours leave.
  const er = new Float64Array(count);
  const ei = new Float64Array(count);
  // Admittances of the position at hand to those after it.
  const wr = new Float64Array(count);
  const wi = new Float64Array(count);
  const { first, next } = byEarlierEnd(admittances, elimination);
  // Eliminated positions by the next neighbour that they still have to be carried to, and how far they have come.
  const head = new Int32Array(count).fill(-1);
  const link = new Int32Array(count);
  const reached = Int32Array.from(start);

  for (let j = 0; j < count; j += 1) {
    for (let b = first[j]!; b >= 0; b = next[b]!) {
      const other = Math.max(position[from[b]!]!, position[to[b]!]!);
      wr[other]! += yr[b]!;
      wi[other]! += yi[b]!;
    }
    let earthRe = earthR[order[j]!]!;
    let earthIm = earthI[order[j]!]!;
    for (let k = head[j]!; k >= 0; ) {
      const following = link[k]!;
      const at = reached[k]!;
      const end = start[k + 1]!;
      const ar = lr[at]!;
      const ai = li[at]!;
      earthRe += ar * er[k]! - ai * ei[k]!;
      earthIm += ar * ei[k]! + ai * er[k]!;
      // y(jk) = l(jk)·s(k); what k leaves between j and each later neighbour is y(jk)·l.
      const br = ar * sr[k]! - ai * si[k]!;
      const bi = ar * si[k]! + ai * sr[k]!;
      for (let p = at + 1; p < end; p += 1) {
        const i = rows[p]!;
        wr[i]! += br * lr[p]! - bi * li[p]!;
        wi[i]! += br * li[p]! + bi * lr[p]!;
      }
      reached[k] = at + 1;
      if (at + 1 < end) {
        link[k] = head[rows[at + 1]!]!;
        head[rows[at + 1]!] = k;
      }
      k = following;
    }
    er[j] = earthRe;
    ei[j] = earthIm;
    let sumRe = earthRe;
    let sumIm = earthIm;
    for (let p = start[j]!; p < start[j + 1]!; p += 1) {
      sumRe += wr[rows[p]!]!;
      sumIm += wi[rows[p]!]!;
    }
    sr[j] = sumRe;
    si[j] = sumIm;
    const [pr, pi] = reciprocal(sumRe, sumIm);
    if (!Number.isFinite(pr) || !Number.isFinite(pi)) throw outOfRange('branches', 'impedances lie too far apart for the network to be solved');
    zr[j] = pr;
    zi[j] = pi;
    for (let p = start[j]!; p < start[j + 1]!; p += 1) {
      const i = rows[p]!;
      lr[p] = wr[i]! * pr - wi[i]! * pi;
      li[p] = wr[i]! * pi + wi[i]! * pr;
      wr[i] = wi[i] = 0;
    }
    if (start[j]! < start[j + 1]!) {
      link[j] = head[rows[start[j]!]!]!;
      head[rows[start[j]!]!] = j;
    }
  }
  return { elimination, lr, li, zr, zi };
}
