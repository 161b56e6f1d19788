import { outOfRange } from '../refusal';

/** In which order the nodes of a mesh are eliminated, and which nodes each then joins. */
export interface Elimination {
  /** Node at each position. */
  readonly order: Int32Array;
  /** Position of each node. */
  readonly position: Int32Array;
  /** Neighbours of position k still to be eliminated: `rows[start[k]]` up to `rows[start[k + 1]]`, positions rising. */
  readonly start: Int32Array;
  readonly rows: Int32Array;
}

/** Greatest work of one factorisation, in products; a mesh over it is refused rather than left to run. */
export const MOST_PRODUCTS = 4.5e8;

// Taken once: looking them up at every word would cost more than they do.
const { imul, clz32 } = Math;

const bitCount = (word: number): number => {
  let bits = word - ((word >>> 1) & 0x55555555);
  bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
  return imul((bits + (bits >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
};

/** Who is joined to whom, a bit for each pair. */
class Neighbours {
  private readonly words: number;
  private readonly bits: Int32Array;
  constructor(count: number) {
    this.words = (count + 31) >>> 5;
    this.bits = new Int32Array(count * this.words);
  }
  join(a: number, b: number): void {
    this.bits[a * this.words + (b >>> 5)]! |= 1 << (b & 31);
  }
  part(a: number, b: number): void {
    this.bits[a * this.words + (b >>> 5)]! &= ~(1 << (b & 31));
  }
  /** Joins a node to all neighbours of another. */
  joinAll(a: number, other: number): void {
    const [to, from] = [a * this.words, other * this.words];
    for (let w = 0; w < this.words; w += 1) this.bits[to + w]! |= this.bits[from + w]!;
  }
  count(a: number): number {
    let count = 0;
    for (let w = a * this.words, end = w + this.words; w < end; w += 1) if (this.bits[w] !== 0) count += bitCount(this.bits[w]!);
    return count;
  }
  list(a: number): number[] {
    const list: number[] = [];
    for (let w = 0; w < this.words; w += 1) {
      for (let word = this.bits[a * this.words + w]!; word !== 0; word &= word - 1) list.push((w << 5) + 31 - clz32(word & -word));
    }
    return list;
  }
}

/** Nodes by their number of neighbours, each list linked both ways. */
class DegreeLists {
  private readonly first: Int32Array;
  private readonly next: Int32Array;
  private readonly previous: Int32Array;
  private readonly degree: Int32Array;
  private least = 0;
  constructor(count: number) {
    this.first = new Int32Array(count + 1).fill(-1);
    this.next = new Int32Array(count);
    this.previous = new Int32Array(count);
    this.degree = new Int32Array(count);
  }
  put(node: number, degree: number): void {
    const following = this.first[degree]!;
    this.degree[node] = degree;
    this.next[node] = following;
    this.previous[node] = -1;
    if (following >= 0) this.previous[following] = node;
    this.first[degree] = node;
    this.least = Math.min(this.least, degree);
  }
  remove(node: number): void {
    const [before, after] = [this.previous[node]!, this.next[node]!];
    if (before >= 0) this.next[before] = after;
    else this.first[this.degree[node]!] = after;
    if (after >= 0) this.previous[after] = before;
  }
  takeLeast(): number {
    while (this.first[this.least] === -1) this.least += 1;
    const node = this.first[this.least]!;
    this.remove(node);
    return node;
  }
}

/**
 * Minimum degree ordering: the node with the fewest neighbours goes first, then the next, each time joining the
 * neighbours it leaves behind (star to mesh).
 * @param count  number of nodes
 * @param from   one end of each branch
 * @param to     the other end
 * @param most   greatest work that is taken on, in products
 */
export function minimumDegree(count: number, from: ArrayLike<number>, to: ArrayLike<number>, most = MOST_PRODUCTS): Elimination {
  const neighbours = new Neighbours(count);
  for (let i = 0; i < from.length; i += 1) {
    if (from[i] === to[i]) continue;
    neighbours.join(from[i]!, to[i]!);
    neighbours.join(to[i]!, from[i]!);
  }
  const waiting = new DegreeLists(count);
  for (let node = count - 1; node >= 0; node -= 1) waiting.put(node, neighbours.count(node));
  const order = new Int32Array(count);
  const position = new Int32Array(count);
  const start = new Int32Array(count + 1);
  const left: number[][] = [];
  let products = 0;
  for (let k = 0; k < count; k += 1) {
    const node = waiting.takeLeast();
    order[k] = node;
    position[node] = k;
    const joined = neighbours.list(node);
    products += joined.length ** 2;
    if (products > most) throw outOfRange('branches', 'the network is too closely meshed to be solved');
    for (const i of joined) {
      neighbours.joinAll(i, node);
      neighbours.part(i, node);
      neighbours.part(i, i);
      waiting.remove(i);
      waiting.put(i, neighbours.count(i));
    }
    left.push(joined);
    start[k + 1] = start[k]! + joined.length;
  }
  const rows = new Int32Array(start[count]!);
  left.forEach((joined, k) => rows.set(Int32Array.from(joined, (node) => position[node]!).sort(), start[k]!));
  return { order, position, start, rows };
}
