import { type Cell, CellError, type Matrix } from '../../../functions/kernel/cell';
import { type Value, cellOf } from '../values';

export const transpose = (matrix: Matrix): Matrix => matrix[0]!.map((_, column) => matrix.map((row) => row[column]!));

/** What Excel puts where stacked arrays leave a gap. */
export const filler = new CellError('#N/A', 'no value here: the arrays differ in size');

export const padding = (pad: Value): Cell => (pad === undefined ? filler : cellOf(pad));
