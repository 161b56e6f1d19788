import type { AstExpression } from '@borgar/fx/xlsx';
import { CellError } from '../../functions/kernel/cell';
import { type Evaluator, type Node, type Surroundings, oneCell, operand, spilled } from './compile-parts';
import { raise } from './errors';
import { OPERATIONS, binary, negate, percent, unary } from './operators';
import { Reference, Union, implicitIntersection, intersection, rangeAround } from './references';
import { type Value, isReferenceLike } from './values';

export function unaryExpression({ operator, arguments: [argument] }: Node<'UnaryExpression'>, around: Surroundings): Evaluator {
  const inner = argument ?? null;
  switch (operator) {
    case '+': return around.compile(inner, around);
    case '@': return oneCell(around.compile(inner, around));
    case '#': return spilled(around.compile(inner, around));
    case '-': case '%': {
      const value = operand(inner, around);
      const operation = operator === '-' ? negate : percent;
      return (context, frame) => unary(operation, value(context, frame));
    }
  }
}

type Step = (left: Value, right: Value) => Value;

const REFERENCE_STEPS: Readonly<Record<string, Step>> = {
  ':': (left, right) => rangeAround(oneReference(left, ':'), oneReference(right, ':')),
  ' ': (left, right) => intersection(oneReference(left, 'a space'), oneReference(right, 'a space')),
  ',': (left, right) => new Union([...areasOf(left), ...areasOf(right)]),
};

function oneReference(value: Value, operator: string): Reference {
  if (value instanceof CellError) throw value;
  return value instanceof Reference ? value : raise('#VALUE!', `${operator} takes references on both sides`);
}

function areasOf(value: Value): readonly Reference[] {
  if (value instanceof CellError) throw value;
  return isReferenceLike(value) ? (value instanceof Union ? value.areas : [value]) : raise('#VALUE!', 'a union takes references');
}

/** Operators lean to the left; a long sum is a loop, not a tower of calls. */
export function binaryExpression(node: Node<'BinaryExpression'>, around: Surroundings): Evaluator {
  const spine: Node<'BinaryExpression'>[] = [];
  let first: AstExpression | null = node;
  while (first?.type === 'BinaryExpression') {
    spine.unshift(first);
    first = first.arguments[0] ?? null;
  }
  const ofReferences = (link: Node<'BinaryExpression'> | undefined) => link !== undefined && link.operator in REFERENCE_STEPS;
  const steps = spine.map((link) => {
    const isReferenceStep = ofReferences(link);
    const right = link.arguments[1] ?? null;
    const operation = OPERATIONS[link.operator]!;
    const apply: Step = isReferenceStep ? REFERENCE_STEPS[link.operator]! : (a, b) => binary(operation, a, b);
    return { isReferenceStep, apply, right: isReferenceStep ? around.compile(right, around) : operand(right, around) };
  });
  const start = ofReferences(spine[0]) ? around.compile(first, around) : operand(first, around);
  if (steps.length === 1) {
    const { apply, right } = steps[0]!;
    return (context, frame) => apply(start(context, frame), right(context, frame));
  }
  return (context, frame) => {
    let value = start(context, frame);
    for (let index = 0; index < steps.length; index++) {
      const { apply, right, isReferenceStep } = steps[index]!;
      // What a reference operator gave is still a range to the operator after it.
      if (around.intersects && !isReferenceStep && value instanceof Reference) value = implicitIntersection(value, context.row, context.column);
      value = apply(value, right(context, frame));
    }
    return value;
  };
}
