import { type AstExpression, translateFormulaToR1C1 } from '@borgar/fx/xlsx';
import type { BookCell } from '../calculate/cells';
import { templateOf } from '../calculate/template';
import { syntaxTree } from '../evaluate/syntax';

/** The formula of the first cell that has it, as a tree; the references in it are those of that cell. */
export interface Template {
  readonly key: string;
  readonly first: BookCell;
  /** undefined where the formula cannot be read. */
  readonly tree: AstExpression | undefined;
}

/** Formulas told as distances, so that a formula that was filled down is one formula. */
export class Templates {
  private readonly byKey = new Map<string, Template>();
  private readonly ofCells = new Map<BookCell, Template>();

  of(cell: BookCell): Template | undefined {
    if (cell.formula === null) return undefined;
    let template = this.ofCells.get(cell);
    if (!template) {
      const key = keyOf(cell, cell.formula);
      template = this.byKey.get(key);
      if (!template) this.byKey.set(key, (template = { key, first: cell, tree: treeOf(cell.formula) }));
      this.ofCells.set(cell, template);
    }
    return template;
  }
}

function keyOf(cell: BookCell, formula: string): string {
  const { key, movable } = templateOf(formula, cell.row, cell.column);
  if (movable) return key;
  try {
    return translateFormulaToR1C1(`=${formula}`, cell.address);
  } catch {
    return formula;
  }
}

function treeOf(formula: string): AstExpression | undefined {
  try {
    return syntaxTree(formula);
  } catch {
    return undefined; // said where the formula itself is worked out
  }
}

function childrenOf(node: AstExpression): readonly (AstExpression | null)[] {
  switch (node.type) {
    case 'UnaryExpression': case 'BinaryExpression': return node.arguments;
    case 'CallExpression': return (node.callee as { type: string }).type === 'Identifier' ? node.arguments : [node.callee as unknown as AstExpression, ...node.arguments];
    case 'LetExpression': return [...node.declarations.map(({ init }) => init), node.body];
    case 'LambdaExpression': return [node.body];
    default: return [];
  }
}

/** Every expression of a tree, outer ones first. By a list: a long sum is a deep tree. */
export function* expressions(tree: AstExpression | null | undefined): Generator<AstExpression> {
  const open: (AstExpression | null | undefined)[] = [tree];
  while (open.length > 0) {
    const node = open.pop();
    if (!node) continue;
    yield node;
    open.push(...[...childrenOf(node)].reverse());
  }
}

export type CallNode = Extract<AstExpression, { type: 'CallExpression' }>;

/** Name of the function that an expression calls, in capitals. */
export const calledName = (node: AstExpression | null | undefined): string =>
  node?.type === 'CallExpression' && (node.callee as { type: string }).type === 'Identifier' ? node.callee.name.toUpperCase() : '';
