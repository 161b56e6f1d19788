import { curveAtEdge } from '../../core/curve/edge';
import { rounded } from '../../core/figure';
import { annuity } from '../../core/life/present-cost';
import { Refusal } from '../../core/refusal';
import type { Unit } from '../../core/units';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { PassedError, settledReading } from '../../functions/kernel/kind';
import { numberOf } from '../../functions/kernel/number';
import { type CurveKind, type Points, headingRows, points, withoutBlankTail } from '../../functions/kernel/range-kinds';
import { isBlankCell } from '../../functions/kernel/scalar';
import type { ChartKind } from './kinds';
import type { PlotMark, PlotPoint } from './plot';
import { ChartTrouble } from './trouble';

/** What cells draw. Refusals are worded as the functions word them. */

const inOwnWords = <T>(read: () => T): T => {
  try {
    return read();
  } catch (thrown) {
    if (thrown instanceof Refusal || thrown instanceof PassedError) throw new ChartTrouble(`${thrown.message}.`);
    throw thrown;
  }
};

export const pairs = ({ x, y }: Points): PlotPoint[] => x.map((value, i) => [value, y[i]!]);

const kinds = { time: points('time', 'points', {}), 'cut-off': points('cut-off', 'points', {}), joule: points('joule', 'points', {}) } as const;

/** Both edges of a time-current curve, or a curve of cut-off or joule integral as it is. */
export function curveMark(curve: CurveKind, given: Points, tolerancePct: number, name: string): PlotMark {
  if (curve !== 'time' || tolerancePct === 0) return { kind: 'line', name, points: pairs(given) };
  return { kind: 'band', name: `${name} ±${rounded(tolerancePct)} %`, fast: pairs(curveAtEdge(given, 'fast', tolerancePct)), slow: pairs(curveAtEdge(given, 'slow', tolerancePct)) };
}

export const curveFromCells = (curve: CurveKind, cells: Matrix, tolerancePct: number, name: string): PlotMark =>
  curveMark(curve, inOwnWords(() => kinds[curve].read(cells, name, settledReading) as Points), tolerancePct, name);

/** One figure of a cell, with or without its unit. */
export function figureFromCells(cells: Matrix, name: string, unit: Unit | undefined): number {
  const cell = oneCell(cells, name);
  const value = inOwnWords(() => numberOf(cell, name, unit, settledReading));
  if (!(value > 0)) throw new ChartTrouble(`${name}: got ${value}, takes a figure above 0.`);
  return value;
}

function oneCell(cells: Matrix, name: string): Exclude<Cell, null | CellError> {
  const cell = cells[0]?.[0];
  if (cells.length !== 1 || cells[0]!.length !== 1) throw new ChartTrouble(`${name}: got ${cells.length} × ${cells[0]?.length ?? 0} cells, takes one.`);
  if (cell instanceof CellError) throw new ChartTrouble(`${name}: the cell holds ${cell.code}${cell.message === '' ? '' : `, ${cell.message}`}.`);
  if (cell === undefined || isBlankCell(cell)) throw new ChartTrouble(`${name}: the cell is blank.`);
  return cell as Exclude<Cell, null | CellError>;
}

/** Fault levels are in kA; the axis of a time-current chart is in A. */
export const levelMark = (kind: ChartKind, level_kA: number, name: string): PlotMark =>
  ({ kind: 'at x', name: `${name}, ${rounded(level_kA)} kA`, value: kind === 'time' ? level_kA * 1000 : level_kA });

/** Times within which the adiabatic withstand is a line of constant joule integral. */
const [SHORTEST, LONGEST] = [0.1, 5];

/** IEC 60364-4-43, 434.5.2: adiabatic up to 5 s; below 0.1 s the joule integral itself is compared. */
export function withstandMark(kind: ChartKind, joule: number, name: string): PlotMark {
  const called = `${name}, k²S² ${rounded(joule)} A²s`;
  if (kind === 'joule') return { kind: 'at y', name: called, value: joule };
  return { kind: 'line', name: `${called}, ${SHORTEST} to ${LONGEST} s`, points: [[Math.sqrt(joule / LONGEST), LONGEST], [Math.sqrt(joule / SHORTEST), SHORTEST]] };
}

/** The four columns that TRIP_BAND gives. */
export function bandFromCells(cells: Matrix, name: string): PlotMark {
  const rows = withoutHeading(cells);
  if (rows[0]?.length !== 4) throw new ChartTrouble(`${name}: got ${rows[0]?.length ?? 0} columns, takes four: fast A, fast s, slow A, slow s.`);
  const edge = (column: 0 | 2): PlotPoint[] => rows.flatMap((row, i): PlotPoint[] => {
    const [x, y] = [row[column]!, row[column + 1]!];
    if (isBlankCell(x) && isBlankCell(y)) return [];
    if (typeof x !== 'number' || typeof y !== 'number' || !(x > 0) || !(y > 0)) throw new ChartTrouble(`${name} row ${i + 1}: not numbers above zero.`);
    return [[x, y]];
  });
  const [fast, slow] = [edge(0), edge(2)];
  if (fast.length + slow.length === 0) throw new ChartTrouble(`${name}: no points.`);
  return { kind: 'band', name, fast, slow };
}

const withoutHeading = (cells: Matrix): Matrix => {
  const rows = withoutBlankTail(cells);
  return headingRows(rows) === 1 && rows[0]!.every((cell) => typeof cell === 'string') ? rows.slice(1) : rows;
};

/** The table that NET_PROFILE gives, and the names of its places. */
export function profileFromCells(cells: Matrix): { places: string[]; marks: PlotMark[] } {
  const rows = withoutHeading(cells);
  if ((rows[0]?.length ?? 0) < 3) throw new ChartTrouble('path: takes the table that NET_PROFILE gives: board, Z, Ik3, Ik1.');
  const column = (at: number): PlotPoint[] => rows.flatMap((row, i): PlotPoint[] => (typeof row[at] === 'number' ? [[i, row[at]]] : []));
  const marks = ([['Ik3', 2], ['Ik1', 3]] as const).flatMap(([name, at]): PlotMark[] => {
    const along = column(at);
    return along.length === 0 ? [] : [{ kind: 'line', name: `${name}, kA`, points: along }];
  });
  if (marks.length === 0) throw new ChartTrouble('path: no fault level in the third or fourth column.');
  return { places: rows.map((row) => String(row[0] ?? '')), marks };
}

export interface CostOption {
  readonly name: string;
  /** Present cost without faults. */
  readonly fixed: number;
  readonly fault: number;
}
export interface Money {
  readonly ratePct: number;
  readonly years: number;
}

/** Rows of name, first cost, yearly cost without faults, cost of one fault. */
export function optionsFromCells(cells: Matrix, { ratePct, years }: Money): CostOption[] {
  const rows = withoutHeading(cells);
  if (rows.length === 0 || rows[0]!.length !== 4) throw new ChartTrouble(`options: got ${rows[0]?.length ?? 0} columns, takes four: name, first cost, yearly cost without faults, cost of one fault.`);
  return rows.map((row, i) => {
    const [first, yearly, fault] = row.slice(1);
    if (typeof first !== 'number' || typeof fault !== 'number') throw new ChartTrouble(`options row ${i + 1}: first cost and cost of one fault must be numbers.`);
    if (yearly !== undefined && !isBlankCell(yearly) && typeof yearly !== 'number') throw new ChartTrouble(`options row ${i + 1}: the yearly cost must be a number.`);
    return { name: String(row[0] ?? `option ${i + 1}`), fixed: first + annuity(ratePct, years) * (typeof yearly === 'number' ? yearly : 0), fault };
  });
}

/** Present cost of each option over the rate of faults: straight lines; where two of two options meet is marked. */
export function costMarks(options: readonly CostOption[], { ratePct, years }: Money): PlotMark[] {
  const a = annuity(ratePct, years);
  const crossings = options.flatMap((one, i) => options.slice(i + 1).map((other) => (one.fixed - other.fixed) / (a * (other.fault - one.fault)))).filter((rate) => Number.isFinite(rate) && rate > 0);
  const greatest = crossings.length > 0 ? 2 * crossings.reduce((x, y) => Math.max(x, y)) : 1;
  const lines = options.map(({ name, fixed, fault }): PlotMark => ({ kind: 'line', name, points: [[0, fixed], [greatest, fixed + a * greatest * fault]] }));
  const [only] = crossings;
  return options.length === 2 && only !== undefined ? [...lines, { kind: 'at x', name: `equal at ${rounded(only)} faults a year`, value: only }] : lines;
}
