import type { AstExpression } from '@borgar/fx/xlsx';
import { areaOf } from '../../sheet/evaluate/area';
import { findFunction } from '../../sheet/evaluate/function-table';
import { FormulaSyntaxError, syntaxTree } from '../../sheet/evaluate/syntax';

/**
 * Files tell two kinds of formulas apart: those of one cell, in which a range where a single value is taken means the cell
 * in line with it, and those that work on arrays. What is typed today is of the second kind, so a formula in which the two
 * differ must be stored as an array. Storing one so without need does no harm; the doubtful cases are stored so.
 */
export function worksOnArrays(formula: string): boolean {
  try {
    return survey(syntaxTree(formula)).array;
  } catch (thrown) {
    if (thrown instanceof FormulaSyntaxError) return false;
    throw thrown;
  }
}

interface Found {
  /** May be more than one cell. */
  readonly many: boolean;
  /** Somewhere single values are worked with many cells. */
  readonly array: boolean;
}

const ONE: Found = { many: false, array: false };

function reference(text: string): Found {
  const area = areaOf(text);
  if (area) return { many: area.top !== area.bottom || area.left !== area.right, array: false };
  return { many: !/\[@|\[#this row\]/i.test(text), array: false };
}

const anyArray = (parts: readonly Found[]): boolean => parts.some(({ array }) => array);
const anyMany = (parts: readonly Found[]): boolean => parts.some(({ many }) => many);

/** Parts that are worked value by value. */
function worked(parts: readonly Found[]): Found {
  const many = anyMany(parts);
  return { many, array: many || anyArray(parts) };
}

function survey(node: AstExpression | null): Found {
  switch (node?.type) {
    case 'ReferenceIdentifier': return reference(node.value);
    case 'ArrayExpression': return { many: true, array: true };
    case 'UnaryExpression': {
      const inner = survey(node.arguments[0] ?? null);
      if (node.operator === '@') return { many: false, array: inner.array };
      return node.operator === '#' ? { many: true, array: inner.array } : worked([inner]);
    }
    case 'BinaryExpression': {
      const parts = node.arguments.map(survey);
      return [':', ' ', ','].includes(node.operator) ? { many: true, array: anyArray(parts) } : worked(parts);
    }
    case 'CallExpression': return call(node);
    case 'LetExpression':
    case 'LambdaExpression': return { many: true, array: true };
    default: return ONE;
  }
}

function call(node: Extract<AstExpression, { type: 'CallExpression' }>): Found {
  const parts = node.arguments.map((argument) => survey(argument));
  const callee: { type: string; name?: string } = node.callee;
  const definition = callee.type === 'Identifier' ? findFunction(callee.name!.toUpperCase()) : undefined;
  // A function of ours takes its ranges whole.
  if (!definition) return { many: callee.type !== 'Identifier', array: anyArray(parts) };
  if (definition.kind === 'whole') {
    const singles = parts.filter((_, index) => definition.single(index, parts.length));
    return { many: anyMany(singles), array: anyMany(singles) || (anyArray(parts) && !definition.arrays) };
  }
  return worked(parts);
}
