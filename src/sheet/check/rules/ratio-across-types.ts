import type { AstExpression } from '@borgar/fx/xlsx';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { argumentNode } from '../arguments';
import { argumentOf } from '../observed-call';
import type { Found, Rule } from '../rule';
import type { Subject } from '../subject';
import { expressions } from '../templates';
import { once } from './mean-edge';

/** Utilization categories of fuse-links and words for breakers, at the beginning of a text. */
const TYPE = /^\s*(gG|gM|gL|gF|aM|aR|gR|gS|gPV|gTr|gD|gN|miniature|MCB|MCCB|ACB|breaker)(?![\p{L}\d])/iu;
const RATIOS = new Set([1.6, 1.56]);
const COMPARES = new Set(['<', '<=', '>', '>=']);

/** The step of 1.6 to 1, which holds among gG links of one range only, taken for other pairs. */
export const ratioAcrossTypes: Rule = {
  kind: 'ratio-across-types', class: 'A',
  looksFor: 'The ratio 1.6 : 1 taken for devices of different types, for which it says nothing. C where SELECT_RATIO_TEST itself leaves the verdict open.',
  watch(subject) {
    const found: Found[] = [];
    return {
      call(call) {
        if (!call.entry.member.name.startsWith('SELECT_RATIO_')) return;
        const [major, minor] = [argumentOf(call, 'major_type'), argumentOf(call, 'minor_type')];
        if (typeof major !== 'string' || typeof minor !== 'string') return;
        const clause = clauseOf(call.entry.declaration);
        const inRow = typesOfRow(subject, call.cell);
        if (folded(major) !== folded(minor)) found.push({ cell: call.cell, class: 'C', clause, reason: `the ratio is asked for ${major} against ${minor}, for which it says nothing` });
        else if (typedInFormula(subject, call.cell) && inRow.size > 1) found.push({ cell: call.cell, clause, reason: `the formula itself says ${major} for both devices, the row says ${[...inRow].join(' and ')}` });
      },
      found: () => once([...found, ...comparisons(subject)]),
    };
  },
};

const folded = (type: string): string => type.trim().toLowerCase().replace(/\s+/g, ' ');

const typedInFormula = (subject: Subject, cell: BookCell): boolean =>
  subject.ownCalls(cell).some((call) => argumentNode(subject, call, 'major_type')?.type === 'Literal' && argumentNode(subject, call, 'minor_type')?.type === 'Literal');

function typesOfRow(subject: Subject, cell: BookCell): Set<string> {
  const types = new Map<string, string>();
  for (const { stored: text } of subject.record(cell)) {
    if (typeof text !== 'string') continue;
    const type = TYPE.exec(text)?.[1];
    if (type) types.set(type.toLowerCase(), type);
  }
  return new Set(types.values());
}

/** Ratios that a sheet compares with 1.6 by a formula of its own. */
function* comparisons(subject: Subject): Generator<Found> {
  const asks = new Map<string, boolean>();
  const clause = subject.catalogue.find('SELECT_RATIO_TEST');
  for (const cell of subject.book.formulaCells) {
    if (!/1\.[56]/.test(cell.formula)) continue;
    const template = subject.templates.of(cell)!;
    let compares = asks.get(template.key);
    if (compares === undefined) asks.set(template.key, (compares = [...expressions(template.tree)].some((node) => comparesRatio(subject, node, cell))));
    if (!compares) continue;
    const types = typesOfRow(subject, cell);
    if (types.size > 1) yield { cell, clause: clause ? clauseOf(clause.declaration) : '', reason: `a ratio is held against 1.6 for ${[...types].join(' and ')}: that step holds among gG links of one range only` };
  }
}

function comparesRatio(subject: Subject, node: AstExpression, cell: BookCell): boolean {
  if (node.type !== 'BinaryExpression' || !COMPARES.has(node.operator)) return false;
  const [left, right] = node.arguments;
  const is = (each: AstExpression | null | undefined): boolean => each?.type === 'Literal' && typeof each.value === 'number' && RATIOS.has(each.value);
  return (is(left) && isRatio(subject, right, cell)) || (is(right) && isRatio(subject, left, cell)) || isProduct(node, is);
}

/** `major >= 1.6*minor` */
const isProduct = (node: Extract<AstExpression, { type: 'BinaryExpression' }>, is: (each: AstExpression | null | undefined) => boolean): boolean =>
  node.arguments.some((side) => side?.type === 'BinaryExpression' && side.operator === '*' && side.arguments.some(is));

/** A quotient, SELECT_RATIO, or a cell that holds one of them. */
function isRatio(subject: Subject, node: AstExpression | null | undefined, cell: BookCell, follow = true): boolean {
  if (!node) return false;
  if (node.type === 'BinaryExpression') return node.operator === '/';
  if (subject.entryOf(node)?.member.name === 'SELECT_RATIO') return true;
  if (!follow || node.type !== 'ReferenceIdentifier') return false;
  const source = subject.cellAt(node, cell)?.cell;
  return source?.formula != null && isRatio(subject, subject.templates.of(source)?.tree, source, false);
}
