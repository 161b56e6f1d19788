import type { AstExpression } from '@borgar/fx/xlsx';
import type { Unit } from '../../../core/units';
import { clauseOf } from '../../../functions/kernel/explain';
import type { BookCell } from '../../calculate/cells';
import { columnLetters } from '../../evaluate/references';
import { sampleCell } from '../arguments';
import type { Found, Rule } from '../rule';
import type { Subject } from '../subject';
import { type CallNode, calledName } from '../templates';
import { isUnitless, unitNamed } from '../written-unit';

/** A column whose unit is not the one that a function reads from it, or writes into it. */
export const unit: Rule = {
  kind: 'unit', class: 'A',
  looksFor: 'A unit over a column, or beside a value, that is not the one which the function reading it takes, or which it gives.',
  *look(subject) {
    /** Cells of one formula in one column read columns with the same units. */
    const known = new Map<string, Omit<Found, 'cell'> | undefined>();
    for (const cell of subject.book.formulaCells) {
      if (subject.ownCalls(cell).length === 0) continue;
      const column = subject.columnOf(cell);
      const key = `${cell.sheet.name}\n${column?.column ?? ''}\n${column?.top ?? ''}\n${subject.templates.of(cell)!.key}`;
      // Where units stand beside values each row has its own.
      const shared = column !== undefined && column.unit !== '';
      const found = shared && known.has(key) ? known.get(key) : judge(subject, cell);
      known.set(key, found);
      if (found) yield { ...found, cell };
    }
  },
};

/** All that contradicts in one cell, in one finding. */
function judge(subject: Subject, cell: BookCell): Omit<Found, 'cell'> | undefined {
  const found = [...subject.ownCalls(cell).flatMap((call) => [...argumentsOf(subject, call, cell)]), ...resultOf(subject, cell)];
  return found[0] && { clause: found[0].clause, reason: [...new Set(found.map(({ reason }) => reason))].join('; ') };
}

type Contradiction = { readonly clause: string; readonly reason: string };

function* argumentsOf(subject: Subject, call: CallNode, cell: BookCell): Generator<Contradiction> {
  const entry = subject.entryOf(call)!;
  const clause = clauseOf(entry.declaration);
  for (const [place, [name, kind]] of entry.member.order.entries()) {
    const takes = kind.unit;
    if (!takes || kind.shape === 'range') continue;
    for (const node of call.arguments.slice(place, kind.shape === 'repeating' ? undefined : place + 1)) {
      const source = sampleCell(subject, node, cell);
      if (!source || hasOwnUnit(source)) continue;
      const written = subject.unitOf(source);
      if (contradicts(written, takes, source)) yield { clause, reason: `${name} of ${entry.member.name} takes ${worded(takes)}, ${whereWritten(subject, source)} says ${written}` };
    }
  }
}

/** A column by its letter where its unit stands over it, else the cell. */
function whereWritten(subject: Subject, source: BookCell): string {
  const { sheet, address, column } = source;
  const of = subject.columnOf(source);
  if (!of || of.unit === '') return `${sheet.name}!${address}`;
  return `column ${columnLetters(column)} of ${sheet.name}${of.heading === '' ? '' : ` ("${of.heading}")`}`;
}

/** The unit of a result over whose column another one stands. */
function* resultOf(subject: Subject, cell: BookCell): Generator<Contradiction> {
  const outer = whole(subject.templates.of(cell)!.tree);
  const entry = outer && subject.entryOf(outer);
  if (!entry) return;
  const { result, name } = entry.member;
  const given = result === 'impedance' ? 'mΩ' : result === 'ratio' ? '1' : unitNamed(result);
  const written = subject.unitOf(cell);
  if (given && contradicts(written, given, cell)) yield { clause: clauseOf(entry.declaration), reason: `${name} gives ${worded(given)}, the sheet says ${written}` };
}

const KEEP_THE_UNIT = new Set(['ROUND', 'ROUNDUP', 'ROUNDDOWN', 'MROUND', 'ABS', 'IFERROR', 'IFNA']);

/** What a formula gives, rounded or not. */
const whole = (tree: AstExpression | null | undefined): AstExpression | null | undefined =>
  tree?.type === 'CallExpression' && KEEP_THE_UNIT.has(calledName(tree)) ? whole(tree.arguments[0]) : tree;

/** Units that are one and the same figure. */
const EQUAL: readonly (readonly Unit[])[] = [['mΩ/m', 'Ω/km']];

const worded = (of: Unit): string => (of === '1' ? 'a pure ratio' : of);

/** "63 kA" brings its own unit, which the function reads. */
const hasOwnUnit = ({ stored }: BookCell): boolean => typeof stored === 'string' && /\d\s*[A-Za-zµΩ°%²√/]+$/.test(stored.trim()) && !/[ij]$/.test(stored.trim());

function contradicts(written: string, takes: Unit, { stored }: BookCell): boolean {
  const says = isUnitless(written) ? '1' : unitNamed(written);
  if (says === undefined || says === takes) return false;
  // A cell shown in per cent holds the fraction.
  if (says === '%' && takes === '1') return typeof stored === 'number' && Math.abs(stored) > 1.5;
  return !EQUAL.some((pair) => pair.includes(says) && pair.includes(takes));
}
