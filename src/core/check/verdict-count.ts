import type { SheetCell } from './agree';

const classes = ['FAIL', 'not shown', 'pass', 'error', 'other', 'blank'] as const;
type Class = (typeof classes)[number];

const verdicts: Readonly<Record<string, Class>> = { fail: 'FAIL', 'not shown': 'not shown', pass: 'pass' };

function classOf(cell: SheetCell): Class {
  if (cell === null) return 'blank';
  if (typeof cell === 'object') return 'error';
  const folded = String(cell).trim().toLowerCase().replace(/\s+/g, ' ');
  return Object.hasOwn(verdicts, folded) ? verdicts[folded]! : 'other';
}

/**
 * How many verdicts of each kind there are: "2 FAIL, 1 not shown, 9 pass, 1 error". A count, never a verdict of its own.
 * Every cell is counted somewhere: what is no verdict under "other", an empty cell under "blank".
 */
export function countVerdicts(cells: readonly SheetCell[]): string {
  const counts = new Map<Class, number>();
  for (const cell of cells) counts.set(classOf(cell), (counts.get(classOf(cell)) ?? 0) + 1);
  return classes.filter((name) => counts.has(name)).map((name) => `${counts.get(name)} ${name}`).join(', ');
}
