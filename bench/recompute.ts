import { execFileSync } from 'node:child_process';
import { mkdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { sheetCells } from '../src/sheet/xlsx/sheet';
import { openWorkbook } from '../src/sheet/xlsx/workbook';
import { FORMULAS, scheduleBook } from './books';
import { type Options, type Row, median, megabytes, time, times } from './figures';
import { type Taken, joulewright, put, whole, withFolder } from './processes';

const ROWS = 1000;
const WHAT = `${ROWS} rows × ${FORMULAS.length} formulas recomputed, whole process`;

const officeVersion = (): string | undefined => {
  try {
    return /^LibreOffice \S+/.exec(execFileSync('soffice', ['--version'], { encoding: 'utf8', timeout: 60_000 }))?.[0];
  } catch {
    return undefined;
  }
};

async function numbersOf(file: string): Promise<number[]> {
  const workbook = openWorkbook(new Uint8Array(await readFile(file)));
  return sheetCells(workbook, workbook.facts.sheets[0]!).flatMap(({ value, formula }) => (formula !== null && typeof value === 'number' ? [value] : []));
}

/** Greatest difference between the results of the two programs, in proportion. */
async function difference(ours: string, theirs: string): Promise<number> {
  const [a, b] = await Promise.all([numbersOf(ours), numbersOf(theirs)]);
  if (a.length !== b.length || a.length < ROWS * (FORMULAS.length - 2)) throw new Error(`${a.length} numbers here, ${b.length} there`);
  return Math.max(...a.map((value, at) => Math.abs(value - b[at]!) / Math.abs(value)));
}

/** Our command line and LibreOffice, in turn, on the same sums: ours as our functions, theirs as plain formulas. */
export const againstOffice = ({ repeats }: Options): Promise<Row[]> => withFolder(async (folder) => {
  const ours = await put(folder, 'ours.xlsx', scheduleBook({ rows: ROWS }));
  const plain = await put(folder, 'plain.xlsx', scheduleBook({ rows: ROWS, plain: true }));
  const out = path.join(folder, 'recomputed.xlsx');
  const version = officeVersion();
  const office = (): Promise<{ seconds: number }> =>
    whole('soffice', [`-env:UserInstallation=file://${path.join(folder, 'profile')}`, '--headless', '--convert-to', 'xlsx', '--outdir', path.join(folder, 'out'), plain]);
  await mkdir(path.join(folder, 'out'));
  if (version !== undefined) await office(); // makes its profile, which is not what is measured
  const runs: { ours: Taken; theirs: number }[] = [];
  for (let repeat = 0; repeat < repeats; repeat += 1) runs.push({ ours: await joulewright(folder, 'recompute', ours, '-o', out), theirs: version === undefined ? NaN : (await office()).seconds });
  const seconds = median(runs.map((run) => run.ours.seconds));
  const measured = `${time(seconds)}, ${megabytes(median(runs.map((run) => run.ours.memory)))}`;
  if (version === undefined) return [{ what: WHAT, measured, against: 'LibreOffice is not installed here' }];
  const apart = await difference(out, path.join(folder, 'out', 'plain.xlsx'));
  const ratio = median(runs.map((run) => run.ours.seconds / run.theirs));
  return [
    { what: WHAT, measured, against: `${version}: ${time(median(runs.map(({ theirs }) => theirs)))}`, ratio: times(ratio), aim: 'ahead (< 1×)', met: ratio < 1 },
    { what: 'the same: greatest difference of a result', measured: apart.toExponential(1), aim: '≤ 1e-9', met: apart <= 1e-9 },
  ];
});

const SIZES = [1_000, 10_000, 100_000] as const;
const shown = ({ seconds, processor, memory }: Taken): string => `${time(seconds)} (processor ${time(processor)}), ${megabytes(memory)}`;
const middle = (runs: readonly Taken[]): Taken => {
  const of = (pick: (run: Taken) => number): number => median(runs.map(pick));
  return { seconds: of((run) => run.seconds), processor: of((run) => run.processor), memory: of((run) => run.memory), status: runs[0]!.status };
};

/** Time a row from 10,000 to 100,000 rows, over that from 1,000 to 10,000; the start of the program is in neither. */
const growthOf = ([small, medium, large]: readonly [Taken, Taken, Taken]): number => ((large.processor - medium.processor) / 90) / ((medium.processor - small.processor) / 9);

/** Recompute and check of larger and larger sheets, and of a sheet with as many formulas but fewer rows. */
export const growth = ({ repeats }: Options): Promise<Row[]> => withFolder(async (folder) => {
  const files = await Promise.all(SIZES.map((rows) => put(folder, `rows-${rows}.xlsx`, scheduleBook({ rows, formulas: [7], constants: 'GHI' }))));
  const wide = await put(folder, 'wide.xlsx', scheduleBook({ rows: Math.ceil(100_000 / FORMULAS.length) }));
  const rows: Row[] = [];
  const outOf = (file: string): string => file.replace('.xlsx', '-out.xlsx');
  const commands = [
    { name: 'recompute', run: (file: string) => joulewright(folder, 'recompute', file, '-o', outOf(file)) },
    { name: 'check', run: (file: string) => joulewright(folder, 'check', outOf(file)) },
  ];
  for (const { name, run } of commands) {
    const taken: Taken[][] = [...SIZES.map(() => []), []];
    for (let repeat = 0; repeat < repeats; repeat += 1) for (const [at, file] of [...files, wide].entries()) taken[at]!.push(await run(file));
    const [small, medium, large, twelve] = taken.map(middle) as [Taken, Taken, Taken, Taken];
    const fits = (one: Taken): boolean => one.processor <= 5 && one.memory <= 0.5e9;
    const ratio = growthOf([small, medium, large]);
    rows.push(
      { what: `${name}, 1,000 rows of one formula`, measured: shown(small) },
      { what: `${name}, 10,000 rows of one formula`, measured: shown(medium) },
      { what: `${name}, 100,000 rows of one formula`, measured: shown(large), aim: '≤ 5 s, ≤ 500 MB', met: fits(large) },
      { what: `${name}, growth: time a row, 10,000 to 100,000 over 1,000 to 10,000`, measured: '', ratio: times(ratio), aim: 'linear (≤ 1.5×)', met: ratio <= 1.5 },
      { what: `${name}, 8,334 rows of twelve formulas`, measured: shown(twelve), aim: '≤ 5 s, ≤ 500 MB', met: fits(twelve) },
    );
  }
  return rows;
});
