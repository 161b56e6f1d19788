import type { AstExpression } from '@borgar/fx/xlsx';
import { CellError, type ErrorCode } from '../../functions/kernel/cell';
import { areaOf, movedArea } from './area';
import { callExpression } from './compile-calls';
import { binaryExpression, unaryExpression } from './compile-operators';
import { type Evaluator, type Node, type Surroundings, oneCell } from './compile-parts';
import type { Context } from './context';
import { attempt, raise } from './errors';
import { type Frame, placeOf, variable } from './lambda';
import { LIMITS } from './limits';
import { Reference } from './references';
import { FormulaSyntaxError, OPTIONAL_PARAMETER } from './syntax';
import { Lambda, cellOf } from './values';

export function compileTree(tree: AstExpression, intersects: boolean): { run: Evaluator; volatile: boolean } {
  const traits = { volatile: false };
  const run = compileNode(tree, { scope: undefined, intersects, depth: 0, traits, compile: compileNode });
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
  return (context) => {
    const { workbook, row, column, writtenFor } = context;
    if (!writtenFor) return new Reference(workbook, sheet || context.sheet, top, left, bottom, right);
    const moved = movedArea(area, row - writtenFor.row, column - writtenFor.column);
    return new Reference(workbook, sheet || context.sheet, moved.top, moved.left, moved.bottom, moved.right);
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
