import { existsSync } from 'node:fs';
import path from 'node:path';
import { call } from '../src/functions/kernel/call';
import type { Argument, Matrix } from '../src/functions/kernel/cell';
import { catalogue } from '../src/sheet/catalogue';
import { excelFolder, handedOver, openExcelPage } from '../tests/support/excel-page';
import { exampleArguments } from '../tests/support/hostile-tuples';
import { type Options, type Row, median, time } from './figures';

/**
 * What a sheet costs in Excel, as far as our side goes: the built bundle with Microsoft's runtime in Chromium, every call
 * by itself with its arguments and its result as JSON, as they pass between Excel and the runtime. Excel's own work comes on top.
 */

const CELLS = 10_000;
const BOARDS = 500;

interface Call {
  readonly id: string;
  /** Arguments as JSON; a place in `texts`, since many cells hand over the same table. */
  readonly handed: number;
}
interface Sheet {
  readonly texts: readonly string[];
  readonly calls: readonly Call[];
}

/** One-row functions by their examples, in turn, each cell with figures of its own. */
function schedule(): Sheet {
  const rows = catalogue.entries.flatMap((entry) => {
    if (entry.declaration.family === 'check' || entry.declaration.family === 'network' || entry.member.spill) return [];
    const argv = exampleArguments(entry).find((list) => call(catalogue, entry, list).error === undefined);
    return argv ? [{ id: entry.member.name, argv }] : [];
  });
  const calls = Array.from({ length: CELLS }, (_, at) => ({ id: rows[at % rows.length]!.id, handed: at }));
  const texts = calls.map(({ id, handed }) => {
    const { argv } = rows[handed % rows.length]!;
    const place = argv.findIndex((argument) => typeof argument === 'number' && !Number.isInteger(argument));
    const own = argv.map((argument, at): Argument => (at === place ? (argument as number) * (1 + handed / 1e9) : argument));
    return JSON.stringify(handedOver(id, own));
  });
  return { texts, calls };
}

/** A column that asks a table of boards for one board a row. */
function boards(): Sheet {
  const table: Matrix = Array.from({ length: BOARDS }, (_, i) => [`B${i}`, i === 0 ? 'source' : `B${Math.floor((i - 1) / 3)}`, '0.1+0.05i', '0.1+0.05i']);
  const texts = Array.from({ length: BOARDS }, (_, i) => JSON.stringify(handedOver('NET_RADIAL_AT', [table, '1.9+9.4i', `B${i}`, 'Ik3', 415])));
  return { texts, calls: Array.from({ length: CELLS }, (_, at) => ({ id: 'NET_RADIAL_AT', handed: at % BOARDS })) };
}

/** Inside the page: all calls of a sheet, one after the other. */
function recalculated({ texts, calls }: Sheet): { seconds: number; errors: number } {
  const { CustomFunctions } = window as unknown as { CustomFunctions: { _association: { mappings: Record<string, (...handed: unknown[]) => unknown> } } };
  let [errors, sent] = [0, 0];
  const start = performance.now();
  for (const { id, handed } of calls) {
    try {
      const argv = JSON.parse(texts[handed]!) as unknown[];
      sent += (JSON.stringify(CustomFunctions._association.mappings[id]!.apply(null, [...argv, { functionName: id, address: 'Sheet1!A1' }])) ?? '').length;
    } catch {
      errors += 1;
    }
  }
  return { seconds: (performance.now() - start) / 1000, errors: sent === 0 ? calls.length : errors };
}

export async function excel({ repeats }: Options): Promise<Row[]> {
  if (!existsSync(path.join(excelFolder, 'functions.js'))) return [{ what: 'add-in in Chromium', measured: 'not built: npm run build' }];
  const opened = await openExcelPage();
  try {
    const rows: Row[] = [];
    for (const [what, sheet] of [[`a sheet of ${CELLS} cells of a schedule`, schedule()], [`${CELLS} cells that ask a table of ${BOARDS} boards`, boards()]] as const) {
      const seconds: number[] = [];
      for (let repeat = 0; repeat < Math.min(repeats, 5); repeat += 1) {
        const run = await opened.page.evaluate(recalculated, sheet);
        if (run.errors > 0) throw new Error(`${run.errors} cells of ${what} gave errors`);
        seconds.push(run.seconds);
      }
      rows.push({ what: `Microsoft's runtime in Chromium: ${what}, first time and again`, measured: `${time(seconds[0]!)}, ${time(median(seconds.slice(1)))}` });
    }
    return rows;
  } finally {
    await opened.close();
  }
}
