import { isStackOverflow } from '../../core/stack';
import { type Argument, type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { applyDefinition } from './call';
import { compileTree } from './compile';
import type { Evaluator } from './compile-parts';
import type { Context } from './context';
import { NotSupported, raise } from './errors';
import { findFunction } from './function-table';
import { emptyWorkbook } from './inline-workbook';
import { OPERATIONS, binary } from './operators';
import { FormulaSyntaxError, syntaxTree } from './syntax';
import { type Value, dereference, isArray } from './values';

/** A formula made ready to run, again and again and in any workbook. */
export interface Compiled {
  readonly formula: string;
  /** Why the formula cannot be worked out here; it is then its result. */
  readonly refusal: CellError | undefined;
  /** Its result can change though no cell that it names has changed. */
  readonly volatile: boolean;
  readonly run: Evaluator;
}

export interface CompileOptions {
  /**
   * The formula stands in one cell and does not spill: a range where a single value is taken means the cell in the same row
   * or column. Files mean this by a formula cell that is not marked as an array.
   */
  readonly oneCell?: boolean;
}

/**
 * Reads a formula, without its leading =, as it is typed or as files hold it (`_xlfn.` and its like). Never throws: what
 * cannot be read becomes a formula whose result is `#UNSUPPORTED!` with the reason.
 */
export function compile(formula: string, { oneCell = false }: CompileOptions = {}): Compiled {
  try {
    return { formula, refusal: undefined, ...compileTree(syntaxTree(formula), oneCell) };
  } catch (thrown) {
    if (!(thrown instanceof FormulaSyntaxError)) throw thrown;
    const refusal = new NotSupported('#UNSUPPORTED!', `the formula cannot be read: ${thrown.message}`);
    const run: Evaluator = () => {
      throw refusal;
    };
    return { formula, refusal, volatile: false, run };
  }
}

const asResult = (cell: Cell | undefined): Cell => {
  if (cell === null || cell === undefined) return 0;
  if (typeof cell !== 'number') return cell;
  return cell === 0 ? 0 : Number.isFinite(cell) ? cell : new CellError('#NUM!', 'the result is not a number or too large');
};

/** Said of a formula that used up the stack. */
export const TOO_DEEP = 'the calculation nests too deep';

function resultOf(compute: () => Value): Cell | Matrix {
  try {
    const value = dereference(compute());
    if (!isArray(value)) return asResult(value);
    if (value.length === 0 || value[0]!.length === 0) return new CellError('#CALC!', 'the array is empty');
    return value.length === 1 && value[0]!.length === 1 ? asResult(value[0]![0]) : value.map((row) => row.map(asResult));
  } catch (thrown) {
    if (thrown instanceof CellError) return thrown;
    if (isStackOverflow(thrown)) return new NotSupported('#UNSUPPORTED!', TOO_DEEP);
    throw thrown;
  }
}

/** Value of a formula: a cell, or rows of cells where it spills over more than one. A blank comes out as 0; NaN, infinity and -0 never do. */
export const evaluate = (compiled: Compiled, context: Context): Cell | Matrix => resultOf(() => compiled.run(context, undefined));

/** As evaluate, but references stay references and a LAMBDA stays one: what a defined name stands for. */
export function evaluateValue(compiled: Compiled, context: Context): Value {
  try {
    return compiled.run(context, undefined);
  } catch (thrown) {
    if (thrown instanceof NotSupported || !(thrown instanceof CellError)) throw thrown;
    return thrown;
  }
}

const nowhere: Context = { workbook: emptyWorkbook, functions: { find: () => undefined }, sheet: '', row: 0, column: 0 };

/** One of Excel's functions on values at hand, for a host with an engine of its own; undefined where it is not known here. */
export function callFunction(name: string, args: Argument[], context: Context = nowhere): Cell | Matrix | undefined {
  const definition = findFunction(name.toUpperCase());
  if (!definition) return undefined;
  return resultOf(() => {
    const [least, most] = definition.arity;
    if (args.length < least || args.length > most) return raise('#VALUE!', `${name} takes ${least} to ${most} arguments, got ${args.length}`);
    return applyDefinition(definition, args.map((value) => (value === undefined && !definition.emptyIsDefault ? null : value)), context);
  });
}

/** One of Excel's binary operators on values at hand. */
export function applyOperator(operator: string, left: Cell | Matrix, right: Cell | Matrix): Cell | Matrix {
  const operation = OPERATIONS[operator];
  if (!operation) throw new Error(`no operator ${operator}`);
  return resultOf(() => binary(operation, left, right));
}

