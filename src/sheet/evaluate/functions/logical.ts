import type { Cell } from '../../../functions/kernel/cell';
import { broadcast } from '../broadcast';
import { compare } from '../compare';
import { attempt, isError, raise } from '../errors';
import { type Value, cellOf, dereference, isArray, isReferenceLike, toTruth, toWhole } from '../values';
import { forEachCell } from './collect';
import { ANY, type FunctionTable, cells, lazy, whole } from './definition';

type Thunk = () => Value;

/** Picks one of two values by a condition; an array of conditions picks place by place. */
function choose(condition: Thunk, ifTrue: Thunk, ifFalse: Thunk): Value {
  const tested = dereference(condition());
  if (!isArray(tested)) return toTruth(tested) ? ifTrue() : ifFalse();
  const yes = attempt(() => dereference(ifTrue()));
  const no = attempt(() => dereference(ifFalse()));
  return broadcast(([test, a, b]) => (toTruth(test) ? a! : b!), [tested, yes, no]);
}

const notMatched = (): Value => raise('#N/A', 'no condition is met');

function conditions(args: Thunk[], from: number): Value {
  if (from + 1 >= args.length) return notMatched();
  return choose(args[from]!, args[from + 1]!, () => conditions(args, from + 2));
}

function switched(value: Cell, args: Thunk[], from: number): Value {
  if (from >= args.length) return notMatched();
  if (from === args.length - 1) return args[from]!();
  const isEqual = () => compare(value, cellOf(args[from]!())) === 0;
  return isEqual() ? args[from + 1]!() : switched(value, args, from + 2);
}

/** The value, or what stands in for it where it is one of the errors looked for. */
function replaceErrors(value: Thunk, replacement: Thunk, isMeant: (cell: Cell) => boolean): Value {
  const given = attempt(value);
  const read = attempt(() => dereference(given));
  if (!isArray(read)) return isMeant(read) ? replacement() : given;
  if (!read.some((row) => row.some(isMeant))) return given;
  return broadcast(([cell, other]) => (isMeant(cell!) ? other! : cell!), [read, attempt(() => dereference(replacement()))]);
}

/** Truth values of AND, OR and XOR: in ranges only truth values and numbers count. */
function truths(args: Value[]): boolean[] {
  const found: boolean[] = [];
  for (const arg of args) {
    if (!isReferenceLike(arg) && !isArray(arg)) found.push(toTruth(cellOf(arg)));
    else {
      forEachCell(arg, (cell) => {
        if (isError(cell)) throw cell;
        if (typeof cell === 'boolean' || typeof cell === 'number') found.push(toTruth(cell));
      });
    }
  }
  return found.length > 0 ? found : raise('#VALUE!', 'no truth value among the arguments');
}

function chosen(args: Thunk[]): Value {
  const index = dereference(args[0]!());
  const place = (cell: Cell | undefined): number => {
    const number = toWhole(cell);
    return number >= 1 && number < args.length ? number : raise('#VALUE!', `CHOOSE has ${args.length - 1} values, number ${number} is asked`);
  };
  if (!isArray(index)) return args[place(index)]!();
  const values = args.slice(1).map((arg) => attempt(() => dereference(arg())));
  return broadcast(([cell, ...list]) => list[place(cell) - 1]!, [index, ...values]);
}

export const logicalFunctions: FunctionTable = {
  IF: lazy([1, 3], ([test, yes, no]) => choose(test!, yes ?? (() => true), no ?? (() => false)), [0]),
  IFS: lazy([2, ANY], (args) => conditions(args, 0), (index) => index % 2 === 0),
  SWITCH: lazy([3, ANY], (args) => {
    const value = dereference(args[0]!());
    if (isArray(value)) return broadcast(([cell]) => cellOf(switched(cell!, args, 1)), [value]);
    return switched(value, args, 1);
  }, [0]),
  CHOOSE: lazy([2, ANY], chosen, [0]),
  IFERROR: lazy([2, 2], ([value, other]) => replaceErrors(value!, other!, isError), [0]),
  IFNA: lazy([2, 2], ([value, other]) => replaceErrors(value!, other!, (cell) => isError(cell) && cell.code === '#N/A'), [0]),
  AND: whole([1, ANY], (args) => truths(args).every(Boolean)),
  OR: whole([1, ANY], (args) => truths(args).some(Boolean)),
  XOR: whole([1, ANY], (args) => truths(args).filter(Boolean).length % 2 === 1),
  NOT: cells([1, 1], (value) => !toTruth(value)),
  TRUE: cells([0, 0], () => true),
  FALSE: cells([0, 0], () => false),
};
