import type { Complex } from '../../core/complex';
import { digits } from '../../core/figure';
import { Refusal, missing, outOfRange, wrongValue } from '../../core/refusal';
import type { RowFault } from '../../core/network/row-fault';
import { type Cell, CellError } from '../kernel/cell';
import { impedanceOf } from '../kernel/impedance-kinds';
import { PassedError, type Reading } from '../kernel/kind';
import { isBlankCell, neededCell, shownCell } from '../kernel/scalar';

/** An error cell on its way through, with the column that it stands in. */
class ErrorIn extends PassedError {
  constructor(cell: CellError, readonly column: string) {
    super(cell);
  }
}

const errorPassed = (cell: Cell | undefined, column: string): void => {
  if (cell instanceof CellError) throw new ErrorIn(cell, column);
};

/** A name in a table: text, or a number read as its digits. */
export function nameOf(cell: Cell | undefined, column: string, reading: Reading): string {
  errorPassed(cell, column);
  const got = neededCell(cell, column);
  if (got === 0 && reading.blankArrivesAsZero) throw missing(column);
  if (typeof got === 'number' && Number.isFinite(got)) return digits(got);
  if (typeof got !== 'string') throw wrongValue(column, `got ${shownCell(got)}, takes a name`);
  return got.trim();
}

/** An impedance in a table, one a cell. */
export function impedanceIn(cell: Cell | undefined, column: string, reading: Reading): Complex {
  errorPassed(cell, column);
  return impedanceOf(neededCell(cell, column), column, reading);
}

/** An impedance that may be blank; a 0 that may be a blank is read as one, so that no path is made of it. */
export function optionalImpedanceIn(cell: Cell | undefined, column: string, reading: Reading): Complex | undefined {
  errorPassed(cell, column);
  return isBlankCell(cell) || (cell === 0 && reading.blankArrivesAsZero) ? undefined : impedanceOf(cell!, column, reading);
}

/** Any other cell of a table; blank is undefined. */
export function cellIn(cell: Cell | undefined, column: string): Exclude<Cell, null | CellError> | undefined {
  errorPassed(cell, column);
  return isBlankCell(cell) ? undefined : (cell as Exclude<Cell, null | CellError>);
}

/** Least size of a branch or source of a mesh, mΩ: a nanohm. */
const LEAST_BRANCH = 1e-6;

/** An impedance of a mesh, which may not be zero. */
export function branchImpedanceIn(cell: Cell | undefined, column: string, reading: Reading): Complex {
  const z = impedanceIn(cell, column, reading);
  if (!(z.abs() >= LEAST_BRANCH)) throw outOfRange(undefined, 'zero impedance: give the coupler its length or join the nodes');
  return z;
}

/** A refusal or an error cell as the fault of a row; anything else is a fault of ours and goes on. */
export function faultFrom(thrown: unknown): RowFault {
  if (thrown instanceof Refusal) return { note: thrown.message, error: thrown };
  if (thrown instanceof ErrorIn) return { note: `${thrown.column}: ${thrown.cell.code}`, error: thrown };
  throw thrown;
}
