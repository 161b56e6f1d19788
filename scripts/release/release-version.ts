/**
 * npm run release-version -- 0.2.0 [--day 2026-12-01]: sets the version wherever it stands, writes the generated files anew and keeps the
 * released part of functions.json for the next comparison. Refuses where a formula in somebody's file would change its meaning.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { catalogue } from '../../src/sheet/catalogue';
import { customFunctionsMetadata } from '../../src/sheet/metadata/custom-functions';
import { type Released, releasedPart, releasedText, upgradeFaults } from './upgrade-rules';
import { VERSION_FILES, type VersionTexts, withVersion } from './version-files';

const root = path.resolve(import.meta.dirname, '../..');
const RELEASED = path.join(root, 'tests/fixtures/released-functions.json');

function main(): number {
  const { values, positionals } = parseArgs({ allowPositionals: true, options: { day: { type: 'string', default: new Date().toISOString().slice(0, 10) } } });
  const [version] = positionals;
  if (version === undefined || positionals.length > 1) throw new Error('one version is needed: npm run release-version -- 0.2.0');
  const texts = Object.fromEntries(VERSION_FILES.map((file) => [file, readFileSync(path.join(root, file), 'utf8')])) as unknown as VersionTexts;
  const changed = withVersion(texts, version, values.day);
  const released = releasedPart(version, customFunctionsMetadata(catalogue), catalogue);
  const faults = upgradeFaults(JSON.parse(readFileSync(RELEASED, 'utf8')) as Released, released);
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) return 1;
  for (const file of VERSION_FILES) writeFileSync(path.join(root, file), changed[file]);
  writeFileSync(RELEASED, releasedText(released));
  // A process of its own, so that the generated files are made with the new version.
  const made = spawnSync('npm', ['run', '--silent', 'generate'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
  if (made.status !== 0) return 2;
  console.log(`${version} stands everywhere. Next: npm run samples, npm run build, npm run sbom, npm test, read CHANGELOG.md, commit.`);
  return 0;
}

try {
  process.exitCode = main();
} catch (error) {
  console.error(`release-version: ${(error as Error).message}`);
  process.exitCode = 2;
}
