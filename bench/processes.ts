import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname, '..');

/** A folder for the files of one measurement, gone afterwards. */
export async function withFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(path.join(tmpdir(), 'joulewright-bench-'));
  try {
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const MOST_SECONDS = 600;

/** Runs a program from start to end; gives its time in s and its exit status. */
export function whole(program: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): Promise<{ seconds: number; status: number | null }> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const child = spawn(program, args, { stdio: 'ignore', cwd: root, env: { ...process.env, ...env }, timeout: MOST_SECONDS * 1000 });
    child.once('error', reject);
    child.once('exit', (status) => resolve({ seconds: (performance.now() - start) / 1000, status }));
  });
}

/** Writes what the process took when it ends. */
const REPORT = 'import{writeFileSync as w}from"node:fs";process.on("exit",()=>{const{maxRSS,userCPUTime,systemCPUTime}=process.resourceUsage();w(process.env.BENCH_REPORT,JSON.stringify({memory:maxRSS*1024,processor:(userCPUTime+systemCPUTime)/1e6}))});';

export interface Taken {
  readonly seconds: number;
  /** Processor time, s; over the elapsed time where several threads work. */
  readonly processor: number;
  /** Greatest memory, bytes. */
  readonly memory: number;
  readonly status: number | null;
}

/** Our command line as a whole process. */
export async function joulewright(folder: string, ...args: readonly string[]): Promise<Taken> {
  const report = path.join(folder, 'usage.json');
  const { seconds, status } = await whole(process.execPath, ['--import', `data:text/javascript,${encodeURIComponent(REPORT)}`, path.join(root, 'bin/joulewright.mjs'), ...args], { BENCH_REPORT: report });
  return { seconds, status, ...(JSON.parse(await readFile(report, 'utf8')) as { memory: number; processor: number }) };
}

export const put = (folder: string, name: string, bytes: Uint8Array): Promise<string> => {
  const file = path.join(folder, name);
  return writeFile(file, bytes).then(() => file);
};
