import path from 'node:path';
import { type CheckedFile, countOf, notReadable } from './checked-file';
import { writeWhole } from './files';
import { findFiles } from './find-files';
import { checkFiles } from './many-files';
import { optionsOf } from './options';
import { htmlReport } from './report/html';
import { jsonReport } from './report/json';
import { sarifReport } from './report/sarif';
import { fileLine, findingLines, summaryLine } from './report/text';
import { COULD_NOT_RUN, CouldNotRun, DISAGREES, DONE, type Terminal, oneLine } from './terminal';
import { toleranceOf } from './tolerance';

/** Checks workbooks and tells what a checker would write down. */
export async function checkCommand(args: readonly string[], terminal: Terminal): Promise<number> {
  const { values, positionals } = optionsOf(args, {
    tolerance: { type: 'string' },
    json: { type: 'boolean', default: false },
    sarif: { type: 'boolean', default: false },
    html: { type: 'string' },
    list: { type: 'boolean', default: false },
  });
  if (positionals.length === 0) throw new CouldNotRun('no workbook to check: joulewright check FILE.xlsx …');
  if (values.json && values.sarif) throw new CouldNotRun('one form at a time: --json or --sarif');
  const tolerance = toleranceOf(values.tolerance);
  if (values.html !== undefined) judgeReportName(values.html);

  const { files, missing } = await findFiles(positionals);
  const asData = values.json || values.sarif;
  const progress = progressOf(terminal, files.length, asData);
  const results = await checkFiles(files, { tolerance, done: progress.done });
  progress.end();
  const all = [...results, ...missing.map(({ asked, why }) => notReadable(asked, why))];

  // Before the lines, which a reader such as `head` may break off; where the page cannot be written the lines are told all the same.
  const page = values.html === undefined ? undefined : writeWhole(values.html, new TextEncoder().encode(htmlReport(all, { tolerance, at: new Date() })));
  await page?.catch(() => {});
  if (values.json) terminal.out(JSON.stringify(jsonReport(all, tolerance), null, 2));
  else if (values.sarif) terminal.out(JSON.stringify(sarifReport(all), null, 2));
  else tell(all, values.list, terminal);
  await page;
  if (values.html !== undefined) terminal.error(`joulewright: report written: ${oneLine(values.html)}`);
  return statusOf(all);
}

function tell(files: readonly CheckedFile[], list: boolean, terminal: Terminal): void {
  for (const file of files) {
    terminal.out(fileLine(file));
    for (const line of findingLines(file, list)) terminal.out(line);
  }
  if (files.length > 1) terminal.out(summaryLine(files));
}

/** 2 where anything could not be read, since the check is then not whole; 1 where a finding of class A or B stands. */
function statusOf(files: readonly CheckedFile[]): number {
  if (files.some(({ error }) => error !== undefined)) return COULD_NOT_RUN;
  return countOf(files, 'A') + countOf(files, 'B') > 0 ? DISAGREES : DONE;
}

function judgeReportName(file: string): void {
  if (/\.xl\w+$/i.test(path.basename(file))) throw new CouldNotRun(`--html ${oneLine(file)}: is the name of a workbook; name the report something.html`);
}

/** A bar on a terminal; elsewhere one line a file, unless the lines of the result are the same. */
function progressOf(terminal: Terminal, total: number, asData: boolean): { done: (file: CheckedFile, count: number) => void; end: () => void } {
  const { status } = terminal;
  if (status && total > 1) {
    const WIDTH = 30;
    return {
      done: ({ file }, count) => {
        const filled = Math.round((WIDTH * count) / total);
        status(`${'█'.repeat(filled)}${'░'.repeat(WIDTH - filled)} ${count}/${total} ${oneLine(path.basename(file)).slice(0, 40)}`);
      },
      end: () => status(''),
    };
  }
  return { done: (file) => { if (asData && total > 1) terminal.error(fileLine(file)); }, end: () => {} };
}
