import { counted } from '../../core/figure';
import { missing, wrongValue } from '../../core/refusal';
import { type Argument, type Cell, CellError, type Matrix, isMatrix } from './cell';
import { type CommonOptions, type Kind, PassedError, type Read, type Reading, kind, settledReading } from './kind';
import { isNumberText } from './number';
import { headingFaults } from './points-heading';
import { isBlankCell, shownCell } from './scalar';

/** Points of a curve, x rising. Row numbers in messages count from the first row of the range, heading included. */
export interface Points {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

export type CurveKind = 'time' | 'cut-off' | 'joule';

/** Units of the two columns of each kind of curve. */
export const curveUnits: Readonly<Record<CurveKind, readonly [string, string]>> = {
  time: ['A', 's'],
  'cut-off': ['kA', 'kA peak'],
  joule: ['kA', 'A²s'],
};

const isHeading = (cell: Cell | undefined): boolean => typeof cell === 'string' && cell.trim() !== '' && !isNumberText(cell);

/** Rows of headings over a curve, 0 or 1: a heading stands over both columns. */
export const headingRows = ([first]: Matrix): 0 | 1 => (isHeading(first?.[0]) && isHeading(first?.[1]) ? 1 : 0);

/** The range without the blank rows at its end; where a blank may arrive as 0, rows of nothing but zeros are blank ones. */
export function withoutBlankTail(matrix: Matrix, { blankArrivesAsZero } = settledReading): Matrix {
  const blank = (cell: Cell): boolean => isBlankCell(cell) || (blankArrivesAsZero && cell === 0);
  let rows = matrix.length;
  while (rows > 0 && matrix[rows - 1]!.every(blank)) rows -= 1;
  return matrix.slice(0, rows);
}

const asMatrix = (argument: Argument): Matrix => (isMatrix(argument) ? argument : [[argument ?? null]]);

/** A curve from two columns of the user's cells. */
export function points<const O extends CommonOptions<Points>>(curve: CurveKind, about: string, options: O): Kind<Read<Points, O>> {
  return kind<Points, O>({
    type: 'points', shape: 'range', about: `${about}; two columns, ${curveUnits[curve].join(' and ')}`, options,
    read: (argument, name, reading) => pointsOf(withoutBlankTail(asMatrix(argument), reading), name, curve),
    show: ({ x }) => `${x.length} points, ${x[0]} to ${x[x.length - 1]} ${curveUnits[curve][0]}`,
  });
}

function pointsOf(rows: Matrix, name: string, curve: CurveKind): Points {
  if (rows.length === 0) throw missing(name);
  const fault = (row: number, problem: string): Error => wrongValue(undefined, `${name} row ${row + 1}: ${problem}`);
  if (rows[0]!.length !== 2) throw wrongValue(name, `got ${rows[0]!.length} columns, takes two: ${curveUnits[curve].join(' and ')}`);
  const first = headingRows(rows);
  const [problem] = first === 1 ? headingFaults(rows[0]!, curveUnits[curve]) : [];
  if (problem !== undefined) throw fault(0, problem);
  const x: number[] = [];
  const y: number[] = [];
  for (let row = first; row < rows.length; row += 1) {
    for (const [column, cell] of rows[row]!.entries()) {
      if (cell instanceof CellError) throw new PassedError(cell);
      if (isBlankCell(cell)) throw missing(`${name} row ${row + 1}`);
      const value = typeof cell === 'number' ? cell : typeof cell === 'string' && isNumberText(cell) ? Number(cell) : NaN;
      if (!Number.isFinite(value)) throw fault(row, `got ${shownCell(cell)}, takes a number`);
      if (!(value > 0)) throw fault(row, `got ${value}, takes numbers above 0`);
      (column === 0 ? x : y).push(value);
    }
    const n = x.length - 1;
    if (n === 0) continue;
    const step = curve === 'time' && x[n] === x[n - 1] && y[n]! < y[n - 1]! && x[n - 2] !== x[n];
    if (!step && !(x[n]! > x[n - 1]!)) throw fault(row, 'first column must rise');
    if (curve === 'time' && y[n]! > y[n - 1]!) throw fault(row, 'time may not rise');
    if (curve === 'cut-off' && y[n]! < y[n - 1]!) throw fault(row, 'cut-off may not fall');
  }
  if (x.length < 2) throw wrongValue(name, `got ${x.length === 1 ? 'one point' : 'no points'}, takes two or more`);
  return { x, y };
}

/** A table read as a whole, as it stands, error cells too; what its columns mean is the function's own business. */
export function table<const O extends CommonOptions<Matrix>>(about: string, options: O): Kind<Read<Matrix, O>> {
  return kind<Matrix, O>({
    type: 'table', shape: 'range', about, options,
    read: (argument, name, reading) => {
      const rows = withoutBlankTail(asMatrix(argument), reading);
      if (rows.length === 0) throw missing(name);
      return rows;
    },
    show: (matrix) => counted(matrix.length, 'row'),
  });
}

/** One column (or row) of cells, errors and blanks included. */
export function column<const O extends CommonOptions<readonly Cell[]>>(about: string, options: O): Kind<Read<readonly Cell[], O>> {
  return kind<readonly Cell[], O>({
    type: 'column', shape: 'range', about, options, zeroIsNotBlank: true,
    read: (argument, name, reading: Reading) => {
      const matrix = asMatrix(argument);
      if (matrix.length > 1 && matrix[0]!.length > 1) throw wrongValue(name, `got ${matrix[0]!.length} columns, takes one`);
      const cells = matrix.flat();
      if (reading.blankArrivesAsZero && cells.includes(0)) throw wrongValue(undefined, `${name}: a cell is blank or zero: write 0 as text`);
      return cells;
    },
    show: (cells) => counted(cells.length, 'cell'),
  });
}

/** A block of cells of any shape, row by row, errors and blanks included; a 0 that may be a blank is read as one. */
export function cells<const O extends CommonOptions<readonly Cell[]>>(about: string, options: O): Kind<Read<readonly Cell[], O>> {
  return kind<readonly Cell[], O>({
    type: 'table', shape: 'range', about, options,
    read: (argument, _name, reading) => asMatrix(argument).flat().map((cell) => (cell === 0 && reading.blankArrivesAsZero ? null : cell)),
    show: (block) => counted(block.length, 'cell'),
  });
}
