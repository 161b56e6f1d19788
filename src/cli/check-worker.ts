import { isMainThread, parentPort, workerData } from 'node:worker_threads';
import { checkFile } from './checked-file';

export const CHECK_WORKER = 'joulewright check';

export interface WorkerStart {
  readonly task: typeof CHECK_WORKER;
  readonly tolerance: number;
}

const isStart = (data: unknown): data is WorkerStart => typeof data === 'object' && data !== null && (data as Partial<WorkerStart>).task === CHECK_WORKER;

/** Where the program was started as a worker of a check: answers each name of a file with what was found in it. */
export function serveIfWorker(): void {
  if (isMainThread || !parentPort || !isStart(workerData)) return;
  const port = parentPort;
  const { tolerance } = workerData;
  port.on('message', (file: string) => void checkFile(file, tolerance).then((result) => port.postMessage(result)));
}
