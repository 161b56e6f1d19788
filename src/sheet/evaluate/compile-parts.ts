import type { AstExpression } from '@borgar/fx/xlsx';
import type { Context } from './context';
import { raise } from './errors';
import type { Frame, Scope } from './lambda';
import { Reference, implicitIntersection } from './references';
import { type Value, cellOf, isArray } from './values';

/** A piece of a formula made ready to run. It holds nothing of a workbook: all it needs comes with each call. */
export type Evaluator = (context: Context, frame: Frame | undefined) => Value;

export type Node<Type extends AstExpression['type']> = Extract<AstExpression, { type: Type }>;

/** What the compiler knows at a point of the formula. */
export interface Surroundings {
  readonly scope: Scope | undefined;
  /** The formula stands for one cell: ranges where single values are taken give the cell of this row or column. */
  readonly intersects: boolean;
  readonly depth: number;
  readonly traits: { volatile: boolean };
  /** Compiles the parts of a node in their turn. */
  readonly compile: (node: AstExpression | null, around: Surroundings) => Evaluator;
}

/** In a formula that stands for one cell, a range where a single value is taken means the cell in line with it. */
export const inLine = (evaluator: Evaluator): Evaluator => (context, frame) => {
  const value = evaluator(context, frame);
  return value instanceof Reference ? implicitIntersection(value, context.row, context.column) : value;
};

export const oneCell = (evaluator: Evaluator): Evaluator => {
  const aligned = inLine(evaluator);
  return (context, frame) => {
    const value = aligned(context, frame);
    return isArray(value) ? cellOf(value) : value;
  };
};

/** An operand that stands for one value. */
export const operand = (node: AstExpression | null, around: Surroundings): Evaluator => {
  const evaluator = around.compile(node, around);
  return around.intersects ? inLine(evaluator) : evaluator;
};

/** `A1#` */
export const spilled = (evaluator: Evaluator): Evaluator => (context, frame) => {
  const value = evaluator(context, frame);
  return value instanceof Reference ? context.workbook.spill(value) : raise('#REF!', '# takes the cell of a formula that spills');
};
