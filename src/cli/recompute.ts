import { realpath } from 'node:fs/promises';
import { counted } from '../core/figure';
import type { Cell } from '../functions/kernel/cell';
import { customFunctions } from '../sheet/custom-functions';
import { type Recomputed, recompute } from '../sheet/recompute';
import { typedFormula } from '../sheet/explain/calls-in-formula';
import { cellLine, jsonCell } from './cell-text';
import { readInput, writeWhole } from './files';
import { optionsOf } from './options';
import { CouldNotRun, DISAGREES, DONE, type Terminal, columns, oneLine } from './terminal';
import { noticesOf } from './workbook-notices';

/** Recomputes a workbook into a copy whose stored values are new. */
export async function recomputeCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = optionsOf(args, {
    output: { type: 'string', short: 'o' },
    'dry-run': { type: 'boolean', default: false },
    list: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  });
  const [file, ...more] = positionals;
  if (file === undefined) throw new CouldNotRun('no workbook to recompute: joulewright recompute IN.xlsx -o OUT.xlsx');
  if (more.length > 0) throw new CouldNotRun(`one workbook at a time, got ${positionals.length}`);
  const output = values['dry-run'] ? undefined : values.output;
  if (output === undefined && !values['dry-run']) throw new CouldNotRun('say where the copy goes with -o OUT.xlsx, or use --dry-run');

  const bytes = await readInput(file);
  const result = named(file, () => recompute(bytes, customFunctions));
  for (const notice of noticesOf(result.facts)) terminal.error(`joulewright: ${oneLine(file)}: ${notice}`);
  if (output !== undefined) {
    if (await same(file, output)) throw new CouldNotRun(`${output}: is the workbook itself, which is never changed in place; name another file`);
    await writeWhole(output, result.bytes);
  }
  if (values.json) terminal.out(JSON.stringify(facts(file, output, result), null, 2));
  else tell(file, output, result, values.list, terminal);
  return result.notComputed.length > 0 ? DISAGREES : DONE;
}

/** Words about a workbook begin with its name. */
export function named<T>(file: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw new CouldNotRun(`${file}: ${(error as Error).message}`);
  }
}

async function same(file: string, output: string): Promise<boolean> {
  try {
    return (await realpath(file)) === (await realpath(output));
  } catch {
    return false;
  }
}

const facts = (file: string, output: string | undefined, { formulas, changed, notComputed }: Recomputed): object => ({
  file, output: output ?? null, formulas,
  changed: changed.map(({ sheet, address, was, now }) => ({ sheet, cell: address, was: jsonCell(was), now: jsonCell(now) })),
  notComputed: notComputed.map(({ sheet, address, formula, reason }) => ({ sheet, cell: address, formula: `=${typedFormula(formula)}`, reason })),
});

const shown = (cell: Cell): string => (cell === null ? '(none)' : cellLine(cell));
function tell(file: string, output: string | undefined, { formulas, changed, notComputed }: Recomputed, list: boolean, terminal: Terminal): void {
  terminal.out(`${oneLine(file)}: ${counted(formulas, 'formula')}, ${counted(changed.length, 'stored value')} differ${changed.length === 1 ? 's' : ''}, ${notComputed.length} not computed`);
  if (list) for (const line of columns(changed.map(({ sheet, address, was, now }) => [`  ${oneLine(sheet)}!${address}`, shown(was), '→', shown(now)]))) terminal.out(line);
  for (const { sheet, address, reason } of notComputed) terminal.error(`joulewright: ${oneLine(sheet)}!${address} keeps its stored value: ${oneLine(reason)}`);
  terminal.out(output === undefined ? 'Nothing was written.' : `Written: ${oneLine(output)}`);
}
