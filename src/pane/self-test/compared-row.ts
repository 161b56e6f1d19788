import { counted, rounded } from '../../core/figure';
import { type Cell, CellError, type Matrix } from '../../functions/kernel/cell';
import { roundedCell } from '../../sheet/rounded-cell';
import type { Compared } from '../../sheet/published/compare';
import { PUBLISHED_KINDS, isAgreement } from '../../sheet/published/entry';
import { element } from '../dom';

const oursInWords = (ours: Cell | Matrix): string => {
  if (Array.isArray(ours)) return counted(ours.length, 'row');
  return ours instanceof CellError ? `${ours.code} ${ours.message}`.trim() : roundedCell(ours, 7);
};

const differenceInWords = ({ difference, agrees }: Compared): string => {
  if (difference === undefined) return agrees ? 'none' : 'differs';
  const figure = Number(difference.toPrecision(3));
  return figure === 0 ? '0' : `${figure > 0 ? '+' : '−'}${rounded(Math.abs(figure), 3)}`;
};

/** One published figure: what is printed, ours, the difference, and where it is printed. */
export function comparedRow(compared: Compared): HTMLElement {
  const { entry, ours, agrees } = compared;
  const { function: name, printed, source, edition, clause, seen, kind, note, tolerance } = entry;
  const where = [source, edition, clause].filter((part) => part !== undefined && part !== '').join(', ');
  const remarks = [...(isAgreement(entry) ? [] : [PUBLISHED_KINDS[kind]]), ...(seen === 'from memory' ? ['from memory'] : [])];
  const pair = (term: string, text: string): HTMLElement[] => [element('dt', {}, term), element('dd', {}, text)];
  return element('li', { class: agrees ? 'jw-compared' : 'jw-compared jw-differs' },
    element('p', { class: 'jw-compared-name' }, element('span', { class: 'jw-name' }, `JW.${name}`), remarks.length === 0 ? undefined : element('span', { class: 'jw-remark' }, remarks.join('; '))),
    element('dl', { class: 'jw-figures' },
      ...pair('printed', printed), ...pair('ours', oursInWords(ours)),
      ...pair('difference', `${differenceInWords(compared)}${tolerance === undefined || typeof entry.expected === 'string' ? '' : ` (within ${rounded(tolerance, 3)})`}${agrees ? '' : ': does not agree'}`)),
    element('p', { class: 'jw-where' }, where),
    note === undefined ? undefined : element('p', { class: 'jw-where' }, note),
  );
}
