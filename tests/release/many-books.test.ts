import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { calculated, withStored } from '../support/checked';
import { typedBook } from '../support/sheet-text';

/** The guide's own commands are run as they stand in it. */
const root = path.resolve(__dirname, '../..');
const guide = readFileSync(path.join(root, 'docs/many-books.md'), 'utf8');
const blocks = Array.from(guide.matchAll(/^```(?:sh|bash)\n([\s\S]*?)^```$/gm), (match) => match[1]!);
const block = (holds: string): string => {
  const found = blocks.filter((text) => text.includes(holds));
  if (found.length !== 1) throw new Error(`${found.length} blocks of the guide hold ${holds}`);
  return found[0]!;
};

const has = (program: string): boolean => spawnSync('bash', ['-c', `command -v ${program}`]).status === 0;
const hasParallel = has('parallel') && /GNU parallel/.test(execFileSync('parallel', ['--version'], { encoding: 'utf8' }));
if (!hasParallel) console.warn('GNU parallel is not installed: its part of the guide to many books is skipped.');

const good = calculated(typedBook({ sheets: { Sheet: { A1: 143, A2: 70, A3: '=JW.CABLE_WITHSTAND(A1,A2)', A4: '=A3/10^6' } } }));
const wrong = withStored(good, 'Sheet', 'A3', 99);
const damaged = good.subarray(0, 300);

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-books-'));
  mkdirSync(path.join(folder, 'bin'));
  writeFileSync(path.join(folder, 'bin/joulewright'), `#!/bin/sh\nexec "${process.execPath}" "${path.join(root, 'bin/joulewright.mjs')}" "$@"\n`, { mode: 0o755 });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const shell = (script: string, env: Record<string, string> = {}): { status: number | null; stdout: string; stderr: string } =>
  spawnSync('bash', ['-c', script], { cwd: folder, encoding: 'utf8', timeout: 500_000, env: { ...process.env, ...env, PATH: `${path.join(folder, 'bin')}:${process.env['PATH']}`, HOME: folder } });

/** Every twentieth book holds a wrong value, every fiftieth is damaged; names as people give them. */
function books(count: number): Map<string, number> {
  const statuses = new Map<string, number>();
  for (let i = 1; i <= count; i += 1) {
    const name = path.join('books', `site ${i % 3}`, i % 7 === 0 ? `it's "${i}" $(exit 9); ü.xlsx` : `board-${String(i).padStart(3, '0')}.xlsm`);
    const status = i % 50 === 0 ? 2 : i % 20 === 0 ? 1 : 0;
    mkdirSync(path.join(folder, path.dirname(name)), { recursive: true });
    writeFileSync(path.join(folder, name), [good, wrong, damaged][status]!);
    statuses.set(name, status);
  }
  return statuses;
}

const counts = (statuses: Iterable<number>): Record<string, number> => {
  const found: Record<string, number> = {};
  for (const status of statuses) found[status] = (found[status] ?? 0) + 1;
  return found;
};

(hasParallel ? test : test.skip)('GNU parallel: 200 books, one process each; statuses, reasons, records, going on', () => {
  const expected = books(200);
  const command = block('parallel --null');
  const ran = shell(command, { JOBS: '2' });
  const failed = [...expected.values()].filter((status) => status !== 0).length;
  expect([ran.stdout, ran.status]).toEqual(['', failed]);
  const jobs = readFileSync(path.join(folder, 'checked/jobs.tsv'), 'utf8').trim().split('\n').slice(1).map((line) => line.split('\t'));
  expect(counts(jobs.map((columns) => Number(columns[6])))).toEqual(counts(expected.values()));

  expect(shell(block('END { for (status in books)')).stdout).toBe(Object.entries(counts(expected.values())).map(([status, n]) => `${status} ${n}\n`).join(''));
  const unreadable = shell(block('while read -r number; do\n  echo')).stdout.trim().split('\n');
  expect(unreadable).toHaveLength(4);
  for (const line of unreadable) expect(line).toMatch(/^\d+: .*"file": "books\/.*"error": "\w/);
  const withA = shell(block('"class": "A"')).stdout.trim().split('\n');
  const named = withA.map((file) => (JSON.parse(readFileSync(path.join(folder, file), 'utf8')) as { files: { file: string }[] }).files[0]!.file);
  expect(named.sort()).toEqual([...expected].filter(([, status]) => status === 1).map(([name]) => name).sort());

  const before = readFileSync(path.join(folder, 'checked/jobs.tsv'), 'utf8');
  expect(shell(command, { JOBS: '2' }).stderr).not.toMatch(/error/i);
  expect(readFileSync(path.join(folder, 'checked/jobs.tsv'), 'utf8')).toBe(before);
}, 600_000);

test('Slurm array: every book once, whatever the number of tasks', () => {
  const expected = books(21);
  const script = block('#SBATCH --array');
  const start = block('sbatch check-books.sh').replace('sbatch check-books.sh\n', '');
  expect(start).not.toBe(block('sbatch check-books.sh'));
  expect(shell(start).status).toBe(0);
  for (const task of [1, 2, 3, 4]) expect(shell(script, { SLURM_ARRAY_TASK_ID: String(task), SLURM_ARRAY_TASK_COUNT: '4' })).toMatchObject({ status: 0, stderr: '' });
  const lines = readdirSync(path.join(folder, 'checked')).filter((name) => name.startsWith('statuses-')).flatMap((name) => readFileSync(path.join(folder, 'checked', name), 'utf8').trim().split('\n').map((line) => line.split('\t')));
  expect(lines.map(([status, , book]) => [book, Number(status)]).sort()).toEqual([...expected].sort());
  expect(new Set(lines.map(([, number]) => number)).size).toBe(21);
  expect(shell(block('uniq -c')).stdout.trim().split('\n').map((line) => line.trim())).toEqual(['20 0', '1 1']);
}, 120_000);

test('the guide’s statuses are those of the command line', () => {
  const help = execFileSync(process.execPath, [path.join(root, 'bin/joulewright.mjs'), 'check', '--help'], { encoding: 'utf8' });
  expect(help.replace(/\s+/g, ' ')).toContain('Exit status: 0 no finding of class A or B, 1 findings, 2 something could not be read');
});
