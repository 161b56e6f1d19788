import { existsSync, readdirSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from './root.mjs';
import { runTool } from './run.mjs';

function newest(place) {
  const facts = statSync(place);
  if (!facts.isDirectory()) return facts.mtimeMs;
  return readdirSync(place).reduce((latest, name) => Math.max(latest, newest(path.join(place, name))), 0);
}

/** Builds command line, add-in and workbench unless dist/ is newer than everything it is made from. */
export async function ensureBuilt() {
  const mark = inRoot('dist', '.built');
  const sources = ['src', 'sample-workbooks', 'docs/licences.md', 'webpack.config.js', 'package-lock.json'].map((name) => inRoot(name)).filter(existsSync);
  if (existsSync(mark) && statSync(mark).mtimeMs > Math.max(...sources.map(newest))) return;
  const started = new Date();
  console.log('Building command line, add-in and workbench …');
  const status = await runTool('webpack', ['--mode', 'production']);
  if (status !== 0) {
    console.error('The build did not succeed; its messages are above.');
    process.exit(2);
  }
  writeFileSync(mark, '');
  // What was saved while the build ran is newer than the build.
  utimesSync(mark, started, started);
}
