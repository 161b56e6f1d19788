import { customFunctions } from '../sheet/custom-functions';
import { type Comparison, type Difference, type Side, compareWorkbooks } from '../sheet/check';
import { openBook } from '../sheet/book';
import { jsonCell } from './cell-text';
import { readInput } from './files';
import { optionsOf } from './options';
import { named } from './recompute';
import { shownCell } from './report/cell';
import { CouldNotRun, DISAGREES, DONE, type Terminal, oneLine } from './terminal';
import { toleranceOf } from './tolerance';

/** Tells what changed between two states of a workbook, in the words of a revision block. */
export async function compareCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = optionsOf(args, { tolerance: { type: 'string' }, json: { type: 'boolean', default: false } });
  const [before, after, ...more] = positionals;
  if (before === undefined || after === undefined || more.length > 0) throw new CouldNotRun(`two workbooks are compared: joulewright compare OLD.xlsx NEW.xlsx, got ${positionals.length}`);
  const tolerance = toleranceOf(values.tolerance);
  const [old, now] = [await readInput(before), await readInput(after)];
  // Each is opened once for itself, so that words about a damaged file name it.
  for (const [file, bytes] of [[before, old], [after, now]] as const) named(file, () => openBook(bytes, customFunctions));
  const comparison = compareWorkbooks(old, now, customFunctions, tolerance);
  if (values.json) terminal.out(JSON.stringify(asData(before, after, comparison), null, 2));
  else tell(before, after, comparison, terminal);
  return comparison.differences.length + comparison.structure.length > 0 ? DISAGREES : DONE;
}

const HEADINGS: readonly (readonly [Difference['kind'], string])[] = [['input', 'Inputs changed'], ['formula', 'Formulas changed'], ['result', 'Results changed']];

function tell(before: string, after: string, { differences, structure, compared }: Comparison, terminal: Terminal): void {
  const count = (kind: Difference['kind']): number => differences.filter((each) => each.kind === kind).length;
  terminal.out(`${oneLine(before)} → ${oneLine(after)}: ${compared} cells compared; ${count('input')} inputs, ${count('formula')} formulas, ${count('result')} results changed${structure.length > 0 ? `; ${structure.length} other changes` : ''}`);
  if (structure.length > 0) terminal.out('Structure:');
  for (const words of structure) terminal.out(`  ${oneLine(words)}`);
  for (const [kind, heading] of HEADINGS) {
    const own = differences.filter((each) => each.kind === kind);
    if (own.length > 0) terminal.out(`${heading}:`);
    for (const each of own) terminal.out(`  ${placeOf(each)}: ${sideText(each, each.was)} → ${sideText(each, each.now)}`);
  }
}

function placeOf({ sheet, row, column, was, now }: Difference): string {
  const moved = was && now && was.address !== now.address ? ` (was ${was.address})` : '';
  const words = row === '' ? '' : ` ${oneLine(row)}, ${oneLine(column)}`;
  return `${oneLine(sheet)}!${(now ?? was)!.address}${words}${moved}`;
}

function sideText({ kind }: Difference, side: Side | undefined): string {
  if (side === undefined) return '(nothing)';
  if (kind !== 'formula' || side.formula === null) return shownCell(jsonCell(side.value));
  return `${oneLine(side.formula)} (${shownCell(jsonCell(side.value))})`;
}

const sideData = (side: Side | undefined): object | null => (side === undefined ? null : { cell: side.address, formula: side.formula, value: jsonCell(side.value) });

const asData = (before: string, after: string, { differences, structure, compared }: Comparison): object => ({
  old: before, new: after, compared, structure,
  ...Object.fromEntries(HEADINGS.map(([kind]) => [`${kind}s`, differences.filter((each) => each.kind === kind).map(({ sheet, row, column, was, now }) => ({ sheet, row, column, old: sideData(was), new: sideData(now) }))])),
});
