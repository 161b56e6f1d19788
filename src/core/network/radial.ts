import { type Complex, complex } from '../complex';
import { type BoardRow, boardIndex } from './board-row';
import { SOURCE, nameKey } from './names';
import { type RowFault, rowFault } from './row-fault';

/** States of a row that has no feeding row yet; from 0 on it is the place of that row. */
const UNSEEN = -2;
const ON_PATH = -3;
const SUPPLY = -1;

/** A chain of boards in words; a long one is cut. */
export const chain = (names: readonly string[]): string =>
  names.length <= 12 ? names.join(' > ') : `${names.slice(0, 10).join(' > ')} > … > ${names[names.length - 1]}`;

/**
 * A tree of boards, every row with its impedances from the supply or with its fault: Z(board) = Z(fed from) + z, and
 * the same for the fault loop with the returns added. Rows may stand in any order. Each row is walked once, so time
 * and memory grow with the number of rows.
 */
export class RadialNetwork {
  private readonly places: ReadonlyMap<string, number>;
  private readonly faults: (RowFault | undefined)[];
  /** Place of the row that is at fault for a row: itself, or one that it is fed through; −1 for a sound row. */
  private readonly culprit: Int32Array;
  private readonly parents: Int32Array;
  private readonly r: Float64Array;
  private readonly x: Float64Array;
  private readonly loopR: Float64Array;
  private readonly loopX: Float64Array;
  /** 1 where every return on the path is known. */
  private readonly returned: Uint8Array;

  /**
   * @param rows        the table
   * @param source      impedance of the supply, mΩ
   * @param sourceLoop  impedance of the supply's part of the fault loop, mΩ
   */
  constructor(readonly rows: readonly BoardRow[], readonly source: Complex, readonly sourceLoop: Complex) {
    const count = rows.length;
    ({ places: this.places, faults: this.faults } = boardIndex(rows));
    this.culprit = new Int32Array(count).fill(-1);
    this.parents = new Int32Array(count).fill(UNSEEN);
    [this.r, this.x, this.loopR, this.loopX] = [new Float64Array(count), new Float64Array(count), new Float64Array(count), new Float64Array(count)];
    this.returned = new Uint8Array(count);
    for (let place = 0; place < count; place += 1) this.walk(place);
  }

  /** Place of the row that a name stands on first. */
  place(board: string): number | undefined {
    return this.places.get(nameKey(board));
  }

  fault(place: number): RowFault | undefined {
    return this.faults[place];
  }

  /** Places from the board nearest the supply to this one; of a sound row only. */
  path(place: number): number[] {
    const path: number[] = [];
    for (let at = place; at >= 0; at = this.parents[at]!) path.push(at);
    return path.reverse();
  }

  /** Impedance from the source to the board, mΩ; of a sound row only. */
  impedance(place: number): Complex {
    return complex(this.r[place]!, this.x[place]!);
  }

  /** Impedance of the fault loop, mΩ; undefined where a return is missing on the path. */
  loopImpedance(place: number): Complex | undefined {
    return this.returned[place] ? complex(this.loopR[place]!, this.loopX[place]!) : undefined;
  }

  /** Up from a row as far as the supply, a settled row or a fault, and back down again. */
  private walk(start: number): void {
    const path: number[] = [];
    let from = start;
    for (let place = start; place >= 0 && this.parents[place] === UNSEEN; ) {
      from = place;
      const next = this.feeding(place);
      if (next === undefined) break;
      this.parents[place] = ON_PATH;
      path.push(place);
      place = from = next;
    }
    if (from >= 0 && this.parents[from] === ON_PATH) this.ring(path.splice(path.indexOf(from)));
    for (let place = path.pop(); place !== undefined; place = path.pop()) {
      const at = from < 0 ? -1 : this.culprit[from]!;
      if (at < 0) this.settle(place, from);
      else this.blame(place, at, rowFault('#N/A', `fed through a faulty row: ${this.rows[at]!.board}`));
      from = place;
    }
  }

  /** Place that a row is fed from, −1 for the supply; a row that is faulty by itself is marked so and feeds nothing. */
  private feeding(place: number): number | undefined {
    const { fedFrom } = this.rows[place]!;
    const key = nameKey(fedFrom);
    const next = key === SOURCE ? SUPPLY : this.places.get(key);
    const fault = this.faults[place] ?? (next === undefined ? rowFault('#N/A', `fed from unknown board ${fedFrom}`) : undefined);
    if (!fault) return next;
    this.blame(place, place, fault);
    return undefined;
  }

  private ring(places: readonly number[]): void {
    const first = places.indexOf(places.reduce((least, place) => Math.min(least, place)));
    const round = [...places.slice(first), ...places.slice(0, first + 1)];
    const fault = rowFault('#NUM!', `loop: ${chain(round.map((place) => this.rows[place]!.board))}`);
    for (const place of places) this.blame(place, place, fault);
  }

  private blame(place: number, at: number, fault: RowFault): void {
    this.parents[place] = SUPPLY;
    this.culprit[place] = at;
    this.faults[place] = fault;
  }

  private settle(place: number, from: number): void {
    const { z, zReturn } = this.rows[place]!;
    const atSupply = from === SUPPLY;
    this.parents[place] = from;
    this.r[place] = (atSupply ? this.source.re : this.r[from]!) + z.re;
    this.x[place] = (atSupply ? this.source.im : this.x[from]!) + z.im;
    if (!zReturn || !(atSupply || this.returned[from])) return;
    this.returned[place] = 1;
    this.loopR[place] = (atSupply ? this.sourceLoop.re : this.loopR[from]!) + z.re + zReturn.re;
    this.loopX[place] = (atSupply ? this.sourceLoop.im : this.loopX[from]!) + z.im + zReturn.im;
  }
}
