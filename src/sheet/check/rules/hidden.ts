import { columnLetters } from '../../evaluate/references';
import type { Rule } from '../rule';
import type { Subject } from '../subject';

const HIDDEN_ROW = /<(?:\w+:)?row\b[^>]*?\bhidden\s*=\s*["'](?:1|true|on)["'][^>]*>/g;
const HIDDEN_COLUMN = /<(?:\w+:)?col\b[^>]*?\bhidden\s*=\s*["'](?:1|true|on)["'][^>]*>/g;

/** What a reader of the print does not see. */
export const hidden: Rule = {
  kind: 'hidden', class: 'C',
  looksFor: 'Sheets, rows and columns that are out of sight.',
  *look(subject) {
    for (const sheet of subject.facts.sheets) {
      if (sheet.state !== 'visible') yield { sheet: sheet.name, reason: sheet.state === 'hidden' ? 'the sheet is hidden' : 'the sheet is hidden so that no menu shows it' };
      if (sheet.kind !== 'worksheet') continue;
      const { rows, columns } = hiddenOf(subject, sheet.part);
      if (rows.length > 0) yield { sheet: sheet.name, reason: `rows out of sight: ${spans(rows)}` };
      if (columns.length > 0) yield { sheet: sheet.name, reason: `columns out of sight: ${spans(columns, letters)}` };
    }
  },
};

function hiddenOf(subject: Subject, part: string): { rows: number[]; columns: number[] } {
  const text = subject.book.workbook.package.text(part);
  const number = (tag: string, name: string): number => Number(new RegExp(`\\b${name}\\s*=\\s*["'](\\d+)["']`).exec(tag)?.[1] ?? 0);
  const rows = (text.match(HIDDEN_ROW) ?? []).map((tag) => number(tag, 'r')).filter((row) => row > 0);
  const columns = (text.match(HIDDEN_COLUMN) ?? []).flatMap((tag) => {
    const [from, to] = [number(tag, 'min'), Math.min(number(tag, 'max'), LAST_SHOWN)];
    return from > 0 ? Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at) : [];
  });
  return { rows, columns };
}

/** Columns behind the last one in use are often hidden in one stroke; no list of them all is made. */
const LAST_SHOWN = 702;
const MOST_SPANS = 12;

const letters = (column: number): string => columnLetters(column - 1);

function spans(numbers: readonly number[], name: (n: number) => string = String): string {
  const list: [number, number][] = [];
  for (const n of [...new Set(numbers)].sort((a, b) => a - b)) {
    const last = list.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else list.push([n, n]);
  }
  const shown = list.slice(0, MOST_SPANS).map(([from, to]) => (from === to ? name(from) : `${name(from)} to ${name(to)}`));
  return shown.join(', ') + (list.length > MOST_SPANS ? ` and ${list.length - MOST_SPANS} more` : '');
}
