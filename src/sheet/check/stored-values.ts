import type { Cell } from '../../functions/kernel/cell';
import { CellError } from '../../functions/kernel/cell';
import { FromCell } from '../calculate/results';
import { NotSupported } from '../evaluate';
import type { FormulaCell, StoredCheck } from '../book';
import { agrees } from './agree';
import type { FindingClass } from './finding';
import type { Found, Rule } from './rule';
import type { Subject } from './subject';
import { calledName, expressions } from './templates';

type Heading = Pick<Rule, 'kind' | 'class' | 'looksFor'>;

export const STORED_VALUE: Heading = {
  kind: 'stored-value', class: 'B',
  looksFor: 'A stored value that its formula does not give from the stored values of the cells it reads. A where the formula is one of the protection functions, C where only a wording differs, or which error it is.',
};
export const NOT_CHECKED: Heading = {
  kind: 'not-checked', class: 'B',
  looksFor: 'A formula that could not be worked out here, with the reason. C where its value changes at every recalculation.',
};
export const EXTERNAL_FORMULA: Heading = {
  kind: 'external-link', class: 'B',
  looksFor: 'A formula that reads another workbook, whose values cannot be seen. C where a link is left over that no formula uses.',
};

/** Results of these change without any cell that they name. */
const VOLATILE = new Set(['NOW', 'TODAY', 'RAND', 'RANDBETWEEN', 'RANDARRAY']);
const VERDICTS: ReadonlySet<Cell> = new Set<Cell>(['pass', 'FAIL', 'not shown']);
/** Functions that answer with words about a calculation and not with a result of it. */
const WORDS = new Set(['SHOW_WORKING', 'SHOW_STEPS', 'CAUTION', 'ASSUMED', 'CLAUSE', 'CORE_VERSION']);
const EXTERNAL = /^'?[^'!]*\[[^\]]+\][^!]*!/;

interface Judged { readonly rule: Heading; readonly found: Found[] }

/** The central rule: each formula against the stored values of the cells it reads. */
export class StoredValues {
  checked = 0;
  private readonly differing: Judged = { rule: STORED_VALUE, found: [] };
  private readonly unchecked: Judged = { rule: NOT_CHECKED, found: [] };
  private readonly external: Judged = { rule: EXTERNAL_FORMULA, found: [] };

  constructor(private readonly subject: Subject, readonly tolerance: number) {}

  judge(cell: FormulaCell, { computed, reason, differs }: StoredCheck): void {
    if (this.calls(cell, VOLATILE)) {
      this.unchecked.found.push({ cell, class: 'C', reason: 'not checked: its value changes at every recalculation' });
    } else if (reason !== undefined) {
      if (readsOtherBook(this.subject, cell)) this.external.found.push({ cell, reason: 'not checked: it reads another workbook, whose values cannot be seen here' });
      else this.unchecked.found.push({ cell, reason: `not checked: ${reason}` });
    } else if (isCircle(cell.value) && (!(cell.value instanceof FromCell) || (this.subject.facts.iterative && differs.length > 0))) {
      this.unchecked.found.push({ cell, reason: `not checked: ${cell.value.message}${this.subject.facts.iterative ? ', which the workbook goes round several times' : ''}` });
    } else if (cell.stored === null && computed !== '') {
      this.unchecked.found.push({ cell, computed, reason: 'not checked: the file holds no value of it, the program that wrote it did not compute' });
    } else if (isLostName(computed) && !isLostName(cell.stored)) {
      this.unchecked.found.push({ cell, reason: 'not checked: it reads a cell stored as #NAME?, a function that the program which saved the file last does not know' });
    } else {
      this.checked++;
      for (const { sheet, address, was, now } of differs) if (!agrees(was, now, this.tolerance)) this.differing.found.push(this.difference(cell, sheet, address, was, now));
    }
  }

  results(): readonly Judged[] {
    return [this.differing, this.unchecked, this.external];
  }

  private difference(cell: FormulaCell, sheet: string, address: string, was: Cell, now: Cell): Found {
    const place = address === cell.address ? cell : this.subject.book.cell(sheet, address) ?? cell;
    if (isLostName(was)) {
      return { cell: place, computed: now, class: 'B', reason: 'stored as #NAME?: the program that saved the file last does not know a function of it' };
    }
    if (was instanceof CellError && now instanceof CellError) {
      return { cell: place, computed: now, class: 'C', reason: `stored as ${was.code}, worked out here as ${now.code}${now.message === '' ? '' : `: ${now.message}`}: some programs store one error for another` };
    }
    const because = now instanceof CellError && now.message !== '' ? `: ${now.message}` : '';
    return {
      cell: place, computed: now, class: this.classOf(cell, was, now),
      reason: `${was === null ? 'nothing is stored where the formula gives a value' : 'the stored value is not what the formula gives from the values stored in the cells it reads'}${because}`,
    };
  }

  private classOf(cell: FormulaCell, was: Cell, now: Cell): FindingClass {
    if (VERDICTS.has(was) || VERDICTS.has(now)) return 'A';
    const [outer] = this.subject.ownCalls(cell);
    const entry = outer && this.subject.entryOf(outer);
    if (!entry) return 'B';
    return WORDS.has(entry.member.name) ? 'C' : 'A';
  }

  private calls(cell: FormulaCell, names: ReadonlySet<string>): boolean {
    if (!/NOW|TODAY|RAND/i.test(cell.formula)) return false;
    return [...expressions(this.subject.templates.of(cell)?.tree)].some((node) => names.has(calledName(node)));
  }
}

/** Came up when all was computed anew: by the stored values alone a circle may look as if it agreed. */
const isCircle = (value: Cell): value is NotSupported => value instanceof NotSupported && value.code === '#CYCLE!';

/** An error as a file stores it; one that came up here has its reason with it. */
const isLostName = (value: Cell): boolean => value instanceof CellError && value.code === '#NAME?' && value.message === '';

/** A path, as some programs write it. */
const BY_PATH = /\[[^[\]]+\.(?:xl|od)\w+\][^'!]*'?!/i;

/** Whether a formula names cells of another workbook. */
export function readsOtherBook(subject: Subject, cell: FormulaCell): boolean {
  if (!cell.formula.includes('[')) return false;
  return BY_PATH.test(cell.formula) || [...expressions(subject.templates.of(cell)?.tree)].some((node) => node.type === 'ReferenceIdentifier' && node.kind !== 'table' && EXTERNAL.test(node.value));
}
