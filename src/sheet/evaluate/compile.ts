import type { AstExpression } from '@borgar/fx/xlsx';
import { CellError, type ErrorCode } from '../../functions/kernel/cell';
import { areaOf } from './area';
import { applyDefinition, callCustom } from './call';
import type { Context } from './context';
import { NotSupported, attempt, raise } from './errors';
import { findFunction } from './function-table';
import type { Definition } from './functions/definition';
import { type Frame, type Scope, callLambda, placeOf, variable } from './lambda';
import { LIMITS } from './limits';
import { OPERATIONS, binary, negate, percent, unary } from './operators';
import { Reference, Union, implicitIntersection, intersection, rangeAround } from './references';
import { FormulaSyntaxError, OPTIONAL_PARAMETER } from './syntax';
import { Lambda, type Value, cellOf, isArray, isReferenceLike } from './values';

/** A piece of a formula made ready to run. It holds nothing of a workbook: all it needs comes with each call. */
export type Evaluator = (context: Context, frame: Frame | undefined) => Value;

type Node<Type extends AstExpression['type']> = Extract<AstExpression, { type: Type }>;

/** What the compiler knows at a point of the formula. */
interface Surroundings {
  readonly scope: Scope | undefined;
  /** The formula stands for one cell: ranges where single values are taken give the cell of this row or column. */
  readonly intersects: boolean;
  readonly depth: number;
  readonly traits: { volatile: boolean };
}

export function compileTree(tree: AstExpression, intersects: boolean): { run: Evaluator; volatile: boolean } {
  const traits = { volatile: false };
  const run = compileNode(tree, { scope: undefined, intersects, depth: 0, traits });
  return { run: intersects ? oneCell(run) : run, volatile: traits.volatile };
}

function compileNode(node: AstExpression | null, around: Surroundings): Evaluator {
  if (around.depth > LIMITS.nesting) throw new FormulaSyntaxError(`it nests more than ${LIMITS.nesting} deep`);
  const inside = { ...around, depth: around.depth + 1 };
  if (node === null) return () => null;
  switch (node.type) {
    case 'Literal': return literal(node);
    case 'ErrorLiteral': return errorLiteral(node.value);
    case 'ArrayExpression': return arrayLiteral(node, inside);
    case 'ReferenceIdentifier': return reference(node, around);
    case 'UnaryExpression': return unaryExpression(node, inside);
    case 'BinaryExpression': return binaryExpression(node, inside);
    case 'LetExpression': return letExpression(node, inside);
    case 'LambdaExpression': return lambdaExpression(node, inside);
    case 'CallExpression': return callExpression(node, inside);
  }
}

function literal({ value, raw }: Node<'Literal'>): Evaluator {
  if (typeof value === 'number' && !Number.isFinite(value)) throw new FormulaSyntaxError(`${raw} is too large for a number`);
  return () => value;
}

const KNOWN_ERRORS: readonly string[] = ['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A', '#SPILL!', '#CALC!'] satisfies ErrorCode[];

function errorLiteral(code: string): Evaluator {
  if (!KNOWN_ERRORS.includes(code)) throw new FormulaSyntaxError(`the error ${code} is not known here`);
  const error = new CellError(code as ErrorCode);
  return () => error;
}

function arrayLiteral({ elements }: Node<'ArrayExpression'>, around: Surroundings): Evaluator {
  const none = undefined as unknown as Context;
  const rows = elements.map((row) => row.map((element) => cellOf(compileNode(element, around)(none, undefined))));
  if (rows.some((row) => row.length !== rows[0]!.length)) throw new FormulaSyntaxError('the rows of an array in braces differ in length');
  return () => rows;
}

function reference({ kind, value }: Node<'ReferenceIdentifier'>, { scope }: Surroundings): Evaluator {
  if (value.startsWith('[') && kind !== 'table') throw new FormulaSyntaxError(`${value} refers to another workbook`);
  if (kind === 'table') return (context) => context.workbook.structured(context, value);
  if (kind === 'name') {
    const place = placeOf(scope, value);
    if (place) return (_, frame) => variable(frame, place.out, place.index);
    return (context) => context.workbook.named(context, value);
  }
  const area = areaOf(value);
  if (!area) throw new FormulaSyntaxError(`${value} is not a reference that is taken here`);
  const { sheet, top, left, bottom, right } = area;
  return (context) => new Reference(context.workbook, sheet || context.sheet, top, left, bottom, right);
}

/** In a formula that stands for one cell, a range where a single value is taken means the cell in line with it. */
const inLine = (evaluator: Evaluator): Evaluator => (context, frame) => {
  const value = evaluator(context, frame);
  return value instanceof Reference ? implicitIntersection(value, context.row, context.column) : value;
};

const oneCell = (evaluator: Evaluator): Evaluator => {
  const aligned = inLine(evaluator);
  return (context, frame) => {
    const value = aligned(context, frame);
    return isArray(value) ? cellOf(value) : value;
  };
};

const operand = (node: AstExpression | null, around: Surroundings): Evaluator => {
  const evaluator = compileNode(node, around);
  return around.intersects ? inLine(evaluator) : evaluator;
};

function unaryExpression({ operator, arguments: [argument] }: Node<'UnaryExpression'>, around: Surroundings): Evaluator {
  const inner = argument ?? null;
  switch (operator) {
    case '+': return compileNode(inner, around);
    case '@': return oneCell(compileNode(inner, around));
    case '#': return spilled(compileNode(inner, around));
    case '-': case '%': {
      const value = operand(inner, around);
      const operation = operator === '-' ? negate : percent;
      return (context, frame) => unary(operation, value(context, frame));
    }
  }
}

const spilled = (evaluator: Evaluator): Evaluator => (context, frame) => {
  const value = evaluator(context, frame);
  return value instanceof Reference ? context.workbook.spill(value) : raise('#REF!', '# takes the cell of a formula that spills');
};

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
function binaryExpression(node: Node<'BinaryExpression'>, around: Surroundings): Evaluator {
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
    return { isReferenceStep, apply, right: isReferenceStep ? compileNode(right, around) : operand(right, around) };
  });
  const start = ofReferences(spine[0]) ? compileNode(first, around) : operand(first, around);
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

function letExpression({ declarations, body }: Node<'LetExpression'>, around: Surroundings): Evaluator {
  const names: string[] = [];
  const inside = { ...around, scope: { names, parent: around.scope } };
  const starts = declarations.map(({ id, init }) => {
    const start = compileNode(init, inside);
    names.push(id.name.toLowerCase());
    return start;
  });
  const result = compileNode(body, inside);
  return (context, parent) => {
    const frame: Frame = { values: [], parent };
    for (const start of starts) frame.values.push(attempt(() => start(context, frame)));
    return result(context, frame);
  };
}

function lambdaExpression({ params, body }: Node<'LambdaExpression'>, around: Surroundings): Evaluator {
  const names = params.map(({ name }) => name.replace(OPTIONAL_PARAMETER, '').toLowerCase());
  const needed = params.filter(({ name }) => !OPTIONAL_PARAMETER.test(name)).length;
  const result = compileNode(body, { ...around, scope: { names, parent: around.scope } });
  return (context, parent) => new Lambda(names.length, (args) => {
    if (args.length < needed) return raise('#VALUE!', `the LAMBDA takes ${needed} arguments, got ${args.length}`);
    return result(context, { values: args, parent });
  });
}

function callExpression({ callee, arguments: given }: Node<'CallExpression'>, around: Surroundings): Evaluator {
  const expression: { type: string } = callee;
  if (expression.type !== 'Identifier') {
    const target = compileNode(expression as AstExpression, around);
    const args = given.map((argument) => compileArgument(argument, around));
    return (context, frame) => callLambda(target(context, frame), args.map((argument) => argument(context, frame)));
  }
  const name = callee.name;
  const place = placeOf(around.scope, name);
  if (place) {
    const args = given.map((argument) => compileArgument(argument, around));
    return (context, frame) => callLambda(variable(frame, place.out, place.index), args.map((argument) => argument(context, frame)));
  }
  const upper = name.toUpperCase();
  if (upper === 'SINGLE') return oneCell(compileNode(given[0] ?? null, around));
  if (upper === 'ANCHORARRAY') return spilled(compileNode(given[0] ?? null, around));
  const definition = findFunction(upper);
  return definition ? builtIn(upper, definition, given, around) : unknownName(name, given, { ...around, intersects: false });
}

/** An argument whose error the called function itself looks at; left empty it is undefined. */
function compileArgument(node: AstExpression | null, around: Surroundings): Evaluator {
  if (node === null) return () => undefined;
  const evaluator = compileNode(node, around);
  return (context, frame) => attempt(() => evaluator(context, frame));
}

function builtIn(name: string, definition: Definition, given: (AstExpression | null)[], around: Surroundings): Evaluator {
  const [least, most] = definition.arity;
  if (given.length < least || given.length > most) {
    const takes = least === most ? `${least}` : most >= 255 ? `at least ${least}` : `${least} to ${most}`;
    throw new FormulaSyntaxError(`${name} takes ${takes} argument${takes === '1' ? '' : 's'}, got ${given.length}`);
  }
  if (definition.volatile) around.traits.volatile = true;
  const empty = definition.emptyIsDefault ? undefined : null;
  const inArrays = definition.kind === 'whole' && definition.arrays;
  const here = inArrays ? { ...around, intersects: false } : around;
  const args = given.map((node, index): Evaluator => {
    if (node === null) return () => empty;
    const isSingle = definition.kind === 'cells' || (definition.kind === 'whole' && definition.single(index, given.length));
    const evaluator = isSingle && around.intersects ? inLine(compileNode(node, around)) : compileNode(node, here);
    return definition.takesErrors && definition.kind !== 'lazy' ? (context, frame) => attempt(() => evaluator(context, frame)) : evaluator;
  });
  if (definition.kind === 'lazy') return (context, frame) => definition.call(args.map((argument) => () => argument(context, frame)), context);
  return (context, frame) => {
    const values: Value[] = [];
    for (let index = 0; index < args.length; index++) values.push(args[index]!(context, frame));
    return applyDefinition(definition, values, context);
  };
}

/** A function of ours, a LAMBDA under a defined name, or nothing known here. */
function unknownName(name: string, given: (AstExpression | null)[], around: Surroundings): Evaluator {
  const args = given.map((argument) => compileArgument(argument, around));
  return (context, frame) => {
    const values = args.map((argument) => argument(context, frame));
    const custom = context.functions.find(name);
    if (custom) return callCustom(name, custom, values);
    const named = context.workbook.named(context, name);
    if (named instanceof Lambda) return callLambda(named, values);
    throw new NotSupported('#NAME?', `function ${name} is not supported here`);
  };
}
