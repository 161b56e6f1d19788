import type { Cell } from '../../../functions/kernel/cell';
import type { Context } from '../context';
import type { Value } from '../values';

/** Least and most number of arguments. */
export type Arity = readonly [least: number, most: number];

/** Most arguments that a formula can hand over. */
export const ANY = 255;

export interface Traits {
  /** Takes error values instead of passing the first one on. */
  takesErrors?: boolean;
  /** An argument left empty between commas means "the default" (undefined) instead of a blank cell. */
  emptyIsDefault?: boolean;
  /** Result changes without any cell changing, or depends on cells that the formula does not name. */
  volatile?: boolean;
}

/** A function of single cells: given arrays it is applied place by place. */
export interface CellFunction extends Traits {
  kind: 'cells';
  arity: Arity;
  call: (...cells: (Cell | undefined)[]) => Cell;
}

/** A function that gets whole arrays and references; the arguments named by `single` it gets cell by cell. */
export interface WholeFunction extends Traits {
  kind: 'whole';
  arity: Arity;
  single: (index: number, count: number) => boolean;
  /** Arguments are worked out as arrays even in a formula that stands for one cell only. */
  arrays: boolean;
  call: (args: Value[], context: Context) => Value;
}

/** A function that decides itself which arguments are worked out. */
export interface LazyFunction extends Traits {
  kind: 'lazy';
  arity: Arity;
  /** Arguments that stand for one value each. */
  single: (index: number, count: number) => boolean;
  call: (args: (() => Value)[], context: Context) => Value;
}

export type Definition = CellFunction | WholeFunction | LazyFunction;
export type FunctionTable = Readonly<Record<string, Definition>>;

export const cells = (arity: Arity, call: CellFunction['call'], traits: Traits = {}): CellFunction => ({ kind: 'cells', arity, call, ...traits });

type Singles = readonly number[] | ((index: number, count: number) => boolean);

const asTest = (single: Singles) => (typeof single === 'function' ? single : (index: number) => single.includes(index));

interface WholeTraits extends Traits {
  single?: Singles;
  arrays?: boolean;
}

export const whole = (arity: Arity, call: WholeFunction['call'], { single = [], arrays = false, ...traits }: WholeTraits = {}): WholeFunction =>
  ({ kind: 'whole', arity, call, single: asTest(single), arrays, ...traits });

export const lazy = (arity: Arity, call: LazyFunction['call'], single: Singles): LazyFunction => ({ kind: 'lazy', arity, call, single: asTest(single) });
