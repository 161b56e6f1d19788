import { type Argument, type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { broadcast } from './broadcast';
import type { Context, CustomFunction } from './context';
import { attempt, isError } from './errors';
import type { CellFunction, Definition, WholeFunction } from './functions/definition';
import { Lambda, type Value, cellOf, dereference, finite, isArray } from './values';
import { Union } from './references';

/** Applies a function to argument values that are already worked out; undefined is an argument left empty. */
export function applyDefinition(definition: Definition, args: Value[], context: Context): Value {
  switch (definition.kind) {
    case 'cells': return applyToCells(definition, args);
    case 'whole': return applyWhole(definition, args, context);
    case 'lazy': return definition.call(args.map((value) => () => value), context);
  }
}

const isOversized = (value: Cell | Matrix): value is Matrix => isArray(value) && !(value.length === 1 && value[0]!.length === 1);

function applyToCells(definition: CellFunction, args: Value[]): Cell | Matrix {
  const { call, takesErrors } = definition;
  if (args.length === 1) {
    const value = takesErrors ? attempt(() => dereference(args[0])) : dereference(args[0]);
    return isArray(value) ? broadcast(([cell]) => call(cell), [value]) : call(value);
  }
  const values = args.map((value) => (takesErrors ? attempt(() => dereference(value)) : dereference(value)));
  return values.some(isArray) ? broadcast((list) => call(...list), values) : call(...(values as Cell[]));
}

function applyWhole(definition: WholeFunction, args: Value[], context: Context): Value {
  const { call, single, takesErrors } = definition;
  const values = [...args];
  const spread: number[] = [];
  for (let index = 0; index < values.length; index++) {
    if (!single(index, values.length)) continue;
    const given = values[index];
    if (given === undefined || given instanceof Lambda) continue;
    const value = takesErrors ? attempt(() => dereference(given)) : dereference(given);
    if (isOversized(value)) spread.push(index);
    else values[index] = isArray(value) ? value[0]![0]! : value;
    if (!takesErrors && isError(values[index])) throw values[index];
  }
  if (spread.length === 0) return call(values, context);
  const arrays = spread.map((index) => dereference(values[index]));
  return broadcast((list) => {
    const copy = [...values];
    spread.forEach((index, place) => (copy[index] = list[place]));
    if (!takesErrors) for (const cell of list) if (isError(cell)) throw cell;
    return cellOf(call(copy, context));
  }, arrays);
}

/** Values as our own functions take them: nothing coerced, errors as they are, ranges as rows of cells. */
function argumentOf(value: Value): Argument {
  if (value === undefined || value instanceof CellError) return value;
  if (value instanceof Lambda) return new CellError('#VALUE!', 'a LAMBDA is no argument for this function');
  if (value instanceof Union) return new CellError('#VALUE!', 'several areas in one argument: name one range');
  return attempt(() => dereference(value));
}

const soundCell = (cell: Cell | undefined): Cell => (typeof cell === 'number' ? attempt(() => finite(cell)) : cell ?? null);

export function callCustom(name: string, custom: CustomFunction, args: Value[]): Cell | Matrix {
  const given = args.map(argumentOf);
  let result: Cell | Matrix;
  try {
    result = custom(given);
  } catch (thrown) {
    if (thrown instanceof CellError) return thrown;
    return new CellError('#VALUE!', `${name} failed: ${thrown instanceof Error ? thrown.message : String(thrown)}`);
  }
  if (!Array.isArray(result)) return soundCell(result);
  return result.length === 0 ? new CellError('#CALC!', `${name} gave an empty array`) : result.map((row) => row.map(soundCell));
}
