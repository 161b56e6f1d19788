import { clauseOf } from '../../functions/kernel/explain';
import type { Catalogue } from '../../functions/kernel/catalogue';
import { type Change, openBook } from '../book';
import type { WorkbookFacts } from '../xlsx/workbook';
import { LEAST_TOLERANCE, agrees, relativeDifference } from './agree';
import { type Finding, FINDING_CLASSES } from './finding';
import { ObservedFunctions } from './observed-call';
import type { Found, Rule } from './rule';
import { rules } from './rules';
import { StoredValues } from './stored-values';
import { Subject } from './subject';
import { typedFormula } from '../explain/calls-in-formula';

export interface CheckOptions {
  /** Greatest difference of a figure that counts as agreement, as a part of it. */
  readonly tolerance?: number;
}

export interface Checked {
  /** Number of formula cells; those whose stored value was held against a computed one; all others. */
  readonly formulas: number;
  readonly checked: number;
  readonly notChecked: number;
  readonly findings: readonly Finding[];
  /** What changes when the whole workbook is computed anew from its constants. */
  readonly changes: readonly Change[];
  /** Formulas that could not be computed anew, or hang on one that could not: of these no change is told. */
  readonly notRecomputed: number;
  readonly facts: WorkbookFacts;
  readonly tolerance: number;
}

/**
 * Checks a workbook file: each formula against the stored values of the cells it reads, so that a difference shows where it
 * was made and only there; then what changes when all is computed anew; then every rule. Throws WorkbookRefusal where the
 * file cannot be read. The bytes are not changed.
 */
export function checkWorkbook(bytes: Uint8Array, catalogue: Catalogue, { tolerance = 0 }: CheckOptions = {}): Checked {
  const functions = new ObservedFunctions(catalogue);
  const book = openBook(bytes, functions);
  const subject = new Subject(book, catalogue);
  const values = new StoredValues(subject, Math.max(tolerance, LEAST_TOLERANCE));
  const watches = rules.flatMap((rule) => (rule.watch ? [{ rule, watch: rule.watch(subject) }] : []));
  functions.onCall = (call) => { for (const { watch } of watches) watch.call(call); };
  const changes = book.changes().filter(({ was, now }) => !agrees(was, now, values.tolerance));
  for (const cell of book.formulaCells) {
    functions.cell = cell;
    values.judge(cell, book.storedAgainstStored(cell));
  }
  functions.cell = undefined;

  const findings: Finding[] = [];
  const take = (rule: Pick<Rule, 'kind' | 'class'>, found: Iterable<Found>): void => { for (const each of found) findings.push(findingOf(subject, rule, each)); };
  for (const { rule, found } of values.results()) take(rule, found);
  for (const rule of rules) if (rule.look) take(rule, rule.look(subject));
  for (const { rule, watch } of watches) take(rule, watch.found());
  return {
    formulas: book.formulaCells.length, checked: values.checked, notChecked: book.formulaCells.length - values.checked,
    findings: inOrder(subject, findings), changes, notRecomputed: book.notComputed().length, facts: subject.facts, tolerance: values.tolerance,
  };
}

function findingOf(subject: Subject, rule: Pick<Rule, 'kind' | 'class'>, found: Found): Finding {
  const { cell } = found;
  const computed = found.computed ?? null;
  const difference = found.difference ?? (cell && found.computed !== undefined ? relativeDifference(cell.stored, computed) : undefined);
  return {
    class: found.class ?? rule.class, kind: rule.kind, sheet: cell?.sheet.name ?? found.sheet ?? '', cell: cell?.address ?? found.address ?? '',
    formula: cell?.formula == null ? null : `=${typedFormula(cell.formula)}`, stored: cell?.stored ?? null, computed,
    difference: difference !== undefined && Number.isFinite(difference) ? difference * 100 : null,
    reason: found.reason, clause: found.clause ?? (cell ? clauseOfCell(subject, cell) : ''),
  };
}

/** Clause of the outermost of our functions in a cell. */
function clauseOfCell(subject: Subject, cell: NonNullable<Found['cell']>): string {
  const call = subject.ownCalls(cell)[0];
  const entry = call && subject.entryOf(call);
  return entry ? clauseOf(entry.declaration) : '';
}

/** By class, then as the workbook reads. */
function inOrder(subject: Subject, findings: readonly Finding[]): Finding[] {
  const sheets = new Map(subject.facts.sheets.map(({ name }, place) => [name, place]));
  const place = (address: string): [number, number] => {
    const [, letters = '', row = '0'] = /^([A-Z]*)(\d*)/.exec(address) ?? [];
    return [Number(row), [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)];
  };
  const keyed = findings.map((finding) => ({ finding, key: [FINDING_CLASSES.indexOf(finding.class), sheets.get(finding.sheet) ?? -1, ...place(finding.cell)] }));
  keyed.sort((a, b) => a.key.reduce((order, value, at) => order || value - b.key[at]!, 0));
  return keyed.map(({ finding }) => finding);
}
