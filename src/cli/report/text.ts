import { counted } from '../../core/figure';
import { CLASS_WORDS, FINDING_CLASSES } from '../../sheet/check';
import { type CheckedFile, countOf } from '../checked-file';
import { oneLine } from '../terminal';
import { shownCell, shownDifference } from './cell';
import { grouped } from './groups';


/** What became of a file in one line. */
export function fileLine(file: CheckedFile): string {
  const name = oneLine(file.file);
  if (file.error !== undefined) return `${name}: NOT CHECKED, ${oneLine(file.error)}`;
  const findings = FINDING_CLASSES.map((each) => `${countOf([file], each)} ${each}`).join(', ');
  return `${name}: ${counted(file.formulas, 'formula')}, ${file.checked} checked, ${file.notChecked} not checked; findings: ${findings}`;
}

/** A file's findings, each with what a reader needs to look it up. */
export function* findingLines({ findings, changes, notices, notRecomputed, error }: CheckedFile, listChanges: boolean): Generator<string> {
  if (error !== undefined) return;
  for (const notice of notices) yield `  note: ${oneLine(notice)}`;
  for (const { first, members, cells } of grouped(findings)) {
    const where = [first.sheet, cells].filter((part) => part !== '').join('!') || 'workbook';
    yield `  ${first.class} ${oneLine(where)} [${first.kind}] ${oneLine(first.reason)}`;
    if (first.formula !== null) yield `      ${oneLine(first.formula)}`;
    if (first.computed !== null) {
      for (const { cell, stored, computed, difference } of members) {
        const apart = shownDifference(difference);
        yield `      ${members.length > 1 ? `${cell}: ` : ''}stored ${shownCell(stored)}, computed ${shownCell(computed)}${apart === '' ? '' : ` (${apart})`}`;
      }
    } else if (members.length === 1 && first.formula === null && first.stored !== null) yield `      stored ${shownCell(first.stored)}`;
    if (first.clause !== '') yield `      ${oneLine(first.clause)}`;
  }
  if (notRecomputed > 0) yield `  Computed anew as a whole, ${counted(notRecomputed, 'formula')} could not be worked out or ${notRecomputed === 1 ? 'hangs' : 'hang'} on one that could not`;
  if (changes.length > 0) {
    yield `  Computed anew as a whole, ${counted(changes.length, 'stored value')} change${changes.length === 1 ? 's' : ''}${listChanges ? ':' : ' (--list names them)'}`;
    if (listChanges) for (const { sheet, cell, stored, computed } of changes) yield `      ${oneLine(sheet)}!${cell}: ${shownCell(stored)} → ${shownCell(computed)}`;
  }
}

/** All files in one line. */
export const summaryLine = (files: readonly CheckedFile[]): string => {
  const failed = files.filter(({ error }) => error !== undefined).length;
  const findings = FINDING_CLASSES.map((each) => `${countOf(files, each)} ${each} (${CLASS_WORDS[each]})`).join(', ');
  const sum = (of: 'checked' | 'notChecked'): number => files.reduce((total, file) => total + file[of], 0);
  return `${counted(files.length - failed, 'file')} checked${failed ? `, ${failed} could not be read` : ''}: ${sum('checked')} formulas checked, ${sum('notChecked')} not checked; findings: ${findings}`;
};
