import type { AstExpression } from '@borgar/fx/xlsx';
import type { BookCell } from '../calculate/cells';
import type { ObservedCall } from './observed-call';
import type { Subject } from './subject';
import { type CallNode, calledName } from './templates';

/** What stands in the formula for one argument of a call of ours. */
export function argumentNode(subject: Subject, call: CallNode, name: string): AstExpression | undefined {
  const place = subject.entryOf(call)?.member.order.findIndex(([each]) => each === name) ?? -1;
  return place < 0 ? undefined : call.arguments[place] ?? undefined;
}

/** The reference that an argument hands on unchanged: itself, or the column that a lookup returns from. */
export function handedOn(node: AstExpression | null | undefined): { node: AstExpression; looksUp: boolean } | undefined {
  if (!node) return undefined;
  if (node.type === 'ReferenceIdentifier') return { node, looksUp: false };
  const name = calledName(node);
  const args = node.type === 'CallExpression' ? node.arguments : [];
  const returns = name === 'XLOOKUP' || name === 'LOOKUP' ? args[2] : name === 'INDEX' ? args[0] : undefined;
  return returns?.type === 'ReferenceIdentifier' ? { node: returns, looksUp: true } : undefined;
}

/** The cell where an argument of an observed call was typed in; undefined where it was worked out or looked up. */
export function typedSource(subject: Subject, { cell, entry }: ObservedCall, name: string): BookCell | undefined {
  for (const call of subject.ownCalls(cell)) {
    if (subject.entryOf(call) !== entry) continue;
    const source = subject.cellAt(argumentNode(subject, call, name), cell)?.cell;
    if (source && source.formula === null && !source.owner) return source;
  }
  return undefined;
}

/** A cell of those that a reference means, to ask its column for heading and unit. */
export function sampleCell(subject: Subject, node: AstExpression | null | undefined, cell: BookCell): BookCell | undefined {
  const source = handedOn(node);
  const place = source && subject.placeOf(source.node, cell);
  if (!place || (place.left !== place.right && place.top !== place.bottom) || (!source.looksUp && (place.left !== place.right || place.top !== place.bottom))) return undefined;
  return place.sheet.at(place.top, place.left) ?? place.sheet.at(place.bottom, place.right);
}
