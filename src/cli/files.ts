import { randomBytes } from 'node:crypto';
import { open, readFile, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { CouldNotRun } from './terminal';

const MOST_BYTES = 512 * 1024 * 1024;

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file', EACCES: 'permission denied', EPERM: 'permission denied', EISDIR: 'is a folder, not a file',
  ENOTDIR: 'a part of its path is no folder', ENOSPC: 'the disk is full', EROFS: 'the disk is read-only', EMFILE: 'too many open files',
};
const reason = (error: unknown): string => reasons[(error as NodeJS.ErrnoException).code ?? ''] ?? (error as Error).message;

/** The bytes of a file that a user named. */
export async function readInput(file: string): Promise<Uint8Array> {
  try {
    const facts = await stat(file);
    if (facts.isDirectory()) throw new CouldNotRun(`${file}: is a folder, not a file`);
    if (!facts.isFile()) throw new CouldNotRun(`${file}: is no ordinary file`);
    if (facts.size > MOST_BYTES) throw new CouldNotRun(`${file}: ${facts.size} bytes; workbooks up to ${MOST_BYTES} bytes are read`);
    return new Uint8Array(await readFile(file));
  } catch (error) {
    if (error instanceof CouldNotRun) throw error;
    throw new CouldNotRun(`${file}: ${reason(error)}`);
  }
}

/** Writes a file whole or not at all: beside its place first, then moved there. */
export async function writeWhole(file: string, bytes: Uint8Array): Promise<void> {
  const beside = path.join(path.dirname(file), `.${path.basename(file)}.${randomBytes(6).toString('hex')}.part`);
  try {
    const handle = await open(beside, 'wx');
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(beside, file);
  } catch (error) {
    await rm(beside, { force: true });
    const words = (error as NodeJS.ErrnoException).code === 'ENOENT' ? `there is no folder ${path.dirname(file)}` : reason(error);
    throw new CouldNotRun(`${file}: not written, ${words}`);
  }
}
