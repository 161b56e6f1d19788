import type { Dirent } from 'node:fs';
import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';

// Node 20 has no glob of its own, and shells of Windows hand patterns over as they are. The three signs * ? ** need no library.

const WORKBOOK = /\.(xlsx|xlsm|xltx|xltm)$/i;
const MOST_FILES = 10_000;
/** Copies that programs keep while a workbook is open, and hidden files. */
const PASSED_OVER = /^(~\$|\.)/;

export interface FilesFound {
  readonly files: readonly string[];
  /** Words about what leads to no file, by what was asked for. */
  readonly missing: readonly { readonly asked: string; readonly why: string }[];
}

/** The workbooks that are named by files, folders and patterns, each once, in order. */
export async function findFiles(asked: readonly string[]): Promise<FilesFound> {
  const files = new Map<string, string>();
  const missing: { asked: string; why: string }[] = [];
  for (const each of asked) {
    const closed: string[] = [];
    const found = await filesOf(each, closed);
    for (const folder of closed) missing.push({ asked: folder, why: 'this folder cannot be read' });
    if (found.length === 0 && closed.length === 0) missing.push({ asked: each, why: hasPattern(each) ? 'no workbook fits this pattern' : 'the folder holds no workbook' });
    for (const file of found) if (files.size < MOST_FILES) files.set(path.resolve(file), file);
      else if (!files.has(path.resolve(file))) return { files: [...files.values()], missing: [...missing, { asked: each, why: `more than ${MOST_FILES} workbooks; the rest was left out` }] };
  }
  return { files: [...files.values()], missing };
}

const hasPattern = (text: string): boolean => /[*?]/.test(text);

async function filesOf(asked: string, closed: string[]): Promise<string[]> {
  const facts = await stat(asked).catch(() => undefined);
  if (facts?.isDirectory()) return below(asked, () => true, closed);
  if (facts || !hasPattern(asked)) return [asked];
  const steps = asked.replace(/\\/g, '/').split('/');
  const fixed = steps.findIndex(hasPattern);
  const base = steps.slice(0, fixed).join('/') || (asked.startsWith('/') ? '/' : '.');
  const fits = patternOf(steps.slice(fixed));
  const found = await below(base, (relative) => fits.test(relative), closed);
  return base === '.' && fixed === 0 ? found.map((file) => path.normalize(file)) : found;
}

/** `*` and `?` stay within one step of a path, `**` goes over any number of them. */
function patternOf(steps: readonly string[]): RegExp {
  const source = steps.map((step, place) => {
    const last = place === steps.length - 1;
    if (step === '**') return last ? '.*' : '(?:[^/]+/)*';
    return step.replace(/[.+^${}()|[\]\\]/g, '\\$&').replace(/\*+/g, '[^/]*').replace(/\?/g, '[^/]') + (last ? '' : '/');
  });
  return new RegExp(`^${source.join('')}$`, process.platform === 'win32' ? 'i' : '');
}

/** Workbooks below a folder; links to folders are not followed, so that no walk goes round. Folders that do not open are named. */
async function below(folder: string, wanted: (relative: string) => boolean, closed: string[]): Promise<string[]> {
  const found: string[] = [];
  const open = [''];
  while (open.length > 0 && found.length <= MOST_FILES) {
    const step = open.shift()!;
    const entries = await readdir(path.join(folder, step), { withFileTypes: true }).catch((error: NodeJS.ErrnoException): Dirent[] => {
      if (error.code !== 'ENOENT') closed.push(path.join(folder, step));
      return [];
    });
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      if (PASSED_OVER.test(entry.name)) continue;
      const relative = step === '' ? entry.name : `${step}/${entry.name}`;
      if (entry.isDirectory()) open.push(relative);
      else if (WORKBOOK.test(entry.name) && wanted(relative)) found.push(path.join(folder, relative));
    }
  }
  return found;
}
