import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { inRoot } from './root.mjs';
import { run } from './run.mjs';

const lockDigest = () => createHash('sha256').update(readFileSync(inRoot('package-lock.json'))).digest('hex');

/** Installs what package-lock.json names, once for each state of that file. */
export async function ensureInstalled() {
  const mark = inRoot('node_modules', '.joulewright-installed');
  const digest = lockDigest();
  if (existsSync(mark) && readFileSync(mark, 'utf8') === digest) return;
  console.log('Installing what the project needs (once; about a minute) …');
  const status = await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (status !== 0) {
    console.error('The installation did not succeed. Joulewright needs Node 20.11 or newer and the npm registry.');
    process.exit(2);
  }
  writeFileSync(mark, digest);
}
