import type { AstExpression } from '@borgar/fx/xlsx';
import { applyDefinition, callCustom } from './call';
import { type Evaluator, type Node, type Surroundings, inLine, oneCell, spilled } from './compile-parts';
import { NotSupported, attempt } from './errors';
import { findFunction } from './function-table';
import type { Definition } from './functions/definition';
import { callLambda, placeOf, variable } from './lambda';
import { FormulaSyntaxError } from './syntax';
import { Lambda, type Value } from './values';

export function callExpression({ callee, arguments: given }: Node<'CallExpression'>, around: Surroundings): Evaluator {
  const expression: { type: string } = callee;
  if (expression.type !== 'Identifier') {
    const target = around.compile(expression as AstExpression, around);
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
  if (upper === 'SINGLE') return oneCell(around.compile(given[0] ?? null, around));
  if (upper === 'ANCHORARRAY') return spilled(around.compile(given[0] ?? null, around));
  const definition = findFunction(upper);
  return definition ? builtIn(upper, definition, given, around) : unknownName(name, given, { ...around, intersects: false });
}

/** An argument whose error the called function itself looks at; left empty it is undefined. */
function compileArgument(node: AstExpression | null, around: Surroundings): Evaluator {
  if (node === null) return () => undefined;
  const evaluator = around.compile(node, around);
  return (context, frame) => attempt(() => evaluator(context, frame));
}

function builtIn(name: string, definition: Definition, given: (AstExpression | null)[], around: Surroundings): Evaluator {
  const [least, most] = definition.arity;
  if (given.length < least || given.length > most) {
    const takes = least === most ? `${least}` : most >= 255 ? `at least ${least}` : `${least} to ${most}`;
    throw new FormulaSyntaxError(`${name} takes ${takes} argument${takes.endsWith(' 1') || takes === '1' ? '' : 's'}, got ${given.length}`);
  }
  if (definition.volatile) around.traits.volatile = true;
  const empty = definition.emptyIsDefault ? undefined : null;
  const inArrays = definition.kind === 'whole' && definition.arrays;
  const here = inArrays ? { ...around, intersects: false } : around;
  const args = given.map((node, index): Evaluator => {
    if (node === null) return () => empty;
    const isSingle = definition.kind === 'cells' || definition.single(index, given.length);
    const evaluator = isSingle && around.intersects ? inLine(around.compile(node, around)) : around.compile(node, here);
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
    const named = attempt(() => context.workbook.named(context, name));
    if (named instanceof Lambda) return callLambda(named, values);
    throw new NotSupported('#NAME?', `function ${name} is not supported here`);
  };
}
