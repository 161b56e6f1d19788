// npm test: install, type check, lint, generated files, build, jest with real Chromium; one plain line at the end.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { ensureBuilt } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { inRoot } from './lib/root.mjs';
import { run, runTool } from './lib/run.mjs';

await ensureInstalled();

let passed = 0;
let failed = 0;
const step = async (name, work) => {
  console.log(`\n== ${name}`);
  const status = await work();
  if (status === 0) passed += 1;
  else failed += 1;
  console.log(status === 0 ? `${name}: passed` : `${name}: FAILED (exit status ${status})`);
};

await step('type check', () => runTool('tsc', ['--noEmit']));
await step('lint', () => runTool('eslint', ['.', '--max-warnings', '0']));
await step('generated files', () => run('npm', ['run', '--silent', 'generate', '--', '--check']));
await step('sample workbooks', () => run('npm', ['run', '--silent', 'samples', '--', '--check']));
await ensureBuilt();

console.log('\n== jest, with real Chromium');
mkdirSync(inRoot('build'), { recursive: true });
const report = inRoot('build', 'jest.json');
rmSync(report, { force: true });
const jestArgs = ['--json', '--outputFile', report, ...process.argv.slice(2)];
const status = await runTool('jest', jestArgs);
let skipped = 0;
if (existsSync(report)) {
  const facts = JSON.parse(readFileSync(report, 'utf8'));
  passed += facts.numPassedTests;
  failed += facts.numFailedTests + facts.numRuntimeErrorTestSuites;
  skipped = facts.numPendingTests + facts.numTodoTests;
  if (status !== 0 && facts.numFailedTests + facts.numRuntimeErrorTestSuites === 0) failed += 1;
} else {
  console.error('jest wrote no report');
  failed += 1;
}

console.log(`\n${passed} passed, ${failed} failed${skipped === 0 ? '' : `, ${skipped} skipped`}`);
process.exitCode = failed === 0 ? 0 : 1;
