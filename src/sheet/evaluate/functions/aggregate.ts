import type { Cell } from '../../../functions/kernel/cell';
import type { Context } from '../context';
import { isError, raise } from '../errors';
import { Reference, Union } from '../references';
import { type Value, cellOf, isReferenceLike, matrixOf, toWhole } from '../values';
import { type FunctionTable, whole } from './definition';
import { mathFunctions } from './math';
import { statisticsFunctions } from './statistics';

/** The functions that SUBTOTAL and AGGREGATE name by number; from 12 on only AGGREGATE has them. */
const BY_NUMBER = [
  'AVERAGE', 'COUNT', 'COUNTA', 'MAX', 'MIN', 'PRODUCT', 'STDEV.S', 'STDEV.P', 'SUM', 'VAR.S', 'VAR.P',
  'MEDIAN', 'MODE.SNGL', 'LARGE', 'SMALL', 'PERCENTILE.INC', 'QUARTILE.INC', 'PERCENTILE.EXC', 'QUARTILE.EXC',
];
const FIRST_WITH_RANK = 14;

const known = (number: number, last: number): number =>
  number >= 1 && number <= last ? number : raise('#VALUE!', `there is no function number ${number}`);

function numbered(number: number, args: Value[], context: Context): Value {
  const name = BY_NUMBER[number - 1]!;
  const definition = mathFunctions[name] ?? statisticsFunctions[name];
  return definition?.kind === 'whole' ? definition.call(args, context) : raise('#VALUE!', `function number ${number} cannot be used here`);
}

interface LeftOut {
  subtotals: boolean;
  errors: boolean;
  rows: readonly ('filter' | 'hand')[];
}

const IS_SUBTOTAL = /\b(SUBTOTAL|AGGREGATE)\s*\(/i;

/** The cells of a value that count, in one column; the value itself where nothing can be left out. */
function counted(value: Value, leftOut: LeftOut): Value {
  if (value instanceof Union) return [value.areas.flatMap((area) => matrixOf(counted(area, leftOut)).flat())];
  const kept: Cell[] = [];
  const keep = (cell: Cell): void => {
    if (!(leftOut.errors && isError(cell))) kept.push(cell);
  };
  if (value instanceof Reference) {
    const { workbook, sheet, top, left } = value;
    if (!leftOut.errors && !workbook.formula && !workbook.hidden) return value;
    const { rows, columns } = value.filled();
    for (let row = 0; row < rows; row++) {
      const hidden = leftOut.rows.length > 0 ? workbook.hidden?.(sheet, top + row) : undefined;
      if (hidden && leftOut.rows.includes(hidden)) continue;
      for (let column = 0; column < columns; column++) {
        const formula = leftOut.subtotals ? workbook.formula?.(sheet, top + row, left + column) : undefined;
        if (formula === undefined || !IS_SUBTOTAL.test(formula)) keep(value.at(row, column));
      }
    }
  } else {
    matrixOf(value).flat().forEach(keep);
  }
  return [kept.length > 0 ? kept : [null]];
}

function subtotal([which, ...ranges]: Value[], context: Context): Value {
  if (!ranges.every(isReferenceLike)) return raise('#VALUE!', 'SUBTOTAL takes references');
  const number = toWhole(cellOf(which));
  const leftOut: LeftOut = { subtotals: true, errors: false, rows: number > 100 ? ['filter', 'hand'] : ['filter'] };
  return numbered(known(number > 100 ? number - 100 : number, 11), ranges.map((range) => counted(range, leftOut)), context);
}

/** Options: 0–3 leave out subtotals, 1 3 5 7 hidden rows, 2 3 6 7 errors. */
function aggregate([which, option, ...rest]: Value[], context: Context): Value {
  const number = known(toWhole(cellOf(which)), BY_NUMBER.length);
  const how = toWhole(cellOf(option));
  if (how < 0 || how > 7) return raise('#VALUE!', `there is no option ${how}`);
  const leftOut: LeftOut = { subtotals: how <= 3, errors: [2, 3, 6, 7].includes(how), rows: how % 2 === 1 ? ['filter', 'hand'] : [] };
  if (number < FIRST_WITH_RANK) return numbered(number, rest.map((range) => counted(range, leftOut)), context);
  if (rest.length !== 2) return raise('#VALUE!', `function number ${number} takes an array and a place or share`);
  return numbered(number, [counted(rest[0], leftOut), cellOf(rest[1])], context);
}

export const aggregateFunctions: FunctionTable = {
  SUBTOTAL: whole([2, 255], subtotal, { single: [0] }),
  AGGREGATE: whole([3, 255], aggregate, { single: [0, 1], arrays: true }),
};
