import { cpus } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type CheckedFile, checkFile, notReadable } from './checked-file';
import { CHECK_WORKER, type WorkerStart } from './check-worker';

const MOST_WORKERS = 8;
/** A file that takes longer or needs more is given up; the others go on. */
const SECONDS = 300;
const MEGABYTES = 2048;

/** The program itself where it is bundled into one file, which workers then start from; undefined where it runs from its sources. */
const program = typeof __filename === 'string' && __filename.endsWith('.cjs') ? __filename : undefined;

export interface ManyFilesOptions {
  readonly tolerance: number;
  /** Told of each file as soon as it is done, in whatever order that is. */
  readonly done: (file: CheckedFile, count: number) => void;
}

/** Checks files side by side, each in a thread of its own kind; results stand in the order of the files. */
export async function checkFiles(files: readonly string[], { tolerance, done }: ManyFilesOptions): Promise<CheckedFile[]> {
  const results = new Array<CheckedFile>(files.length);
  let next = 0;
  let count = 0;
  const line = async (check: (file: string) => Promise<CheckedFile>): Promise<void> => {
    for (let place = next++; place < files.length; place = next++) {
      results[place] = await check(files[place]!);
      done(results[place]!, ++count);
    }
  };
  if (program === undefined) {
    await line((file) => checkFile(file, tolerance));
    return results;
  }
  const threads = Array.from({ length: Math.min(files.length, MOST_WORKERS, Math.max(1, cpus().length)) }, () => new CheckThread(program, tolerance));
  try {
    await Promise.all(threads.map((thread) => line((file) => thread.check(file))));
  } finally {
    await Promise.all(threads.map((thread) => thread.end()));
  }
  return results;
}

/** A worker that checks one file after the other, and is started anew after one that it could not bear. */
class CheckThread {
  private worker: Worker | undefined;
  private answer: ((result: CheckedFile) => void) | undefined;

  constructor(private readonly program: string, private readonly tolerance: number) {}

  async check(file: string): Promise<CheckedFile> {
    const worker = (this.worker ??= this.started());
    let timer: NodeJS.Timeout | undefined;
    try {
      return await new Promise<CheckedFile>((resolve) => {
        this.answer = resolve;
        this.failed = (words) => resolve(notReadable(file, words));
        timer = setTimeout(() => this.giveUp(worker, `gave up after ${SECONDS} s`), SECONDS * 1000);
        worker.postMessage(file);
      });
    } finally {
      clearTimeout(timer);
    }
  }

  async end(): Promise<void> {
    const { worker } = this;
    this.worker = undefined;
    await worker?.terminate();
  }

  private failed: (words: string) => void = () => {};

  private started(): Worker {
    const workerData: WorkerStart = { task: CHECK_WORKER, tolerance: this.tolerance };
    const worker = new Worker(this.program, { workerData, resourceLimits: { maxOldGenerationSizeMb: MEGABYTES } });
    worker.on('message', (result: CheckedFile) => this.answer?.(result));
    worker.on('error', (error: NodeJS.ErrnoException) => this.giveUp(worker, error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? `needs more than ${MEGABYTES} MB of memory` : `could not be checked: ${error.message}`));
    worker.on('exit', () => this.giveUp(worker, 'could not be checked: its thread ended'));
    return worker;
  }

  private giveUp(worker: Worker, words: string): void {
    if (this.worker !== worker) return;
    this.worker = undefined;
    void worker.terminate();
    this.failed(words);
  }
}
