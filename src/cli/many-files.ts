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

  constructor(private readonly file: string, private readonly tolerance: number) {}

  check(file: string): Promise<CheckedFile> {
    const workerData: WorkerStart = { task: CHECK_WORKER, tolerance: this.tolerance };
    const worker = (this.worker ??= new Worker(this.file, { workerData, resourceLimits: { maxOldGenerationSizeMb: MEGABYTES } }));
    return new Promise((resolve) => {
      const timer = setTimeout(() => giveUp(`gave up after ${SECONDS} s`), SECONDS * 1000);
      const finish = (result: CheckedFile): void => {
        clearTimeout(timer);
        worker.removeAllListeners();
        resolve(result);
      };
      const giveUp = (words: string): void => {
        this.worker = undefined;
        finish(notReadable(file, words));
        void worker.terminate();
      };
      worker.on('message', finish);
      worker.on('error', (error: NodeJS.ErrnoException) => giveUp(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? `needs more than ${MEGABYTES} MB of memory` : `could not be checked: ${error.message}`));
      worker.on('exit', () => giveUp('could not be checked: its thread ended'));
      worker.postMessage(file);
    });
  }

  async end(): Promise<void> {
    await this.worker?.terminate();
  }
}
