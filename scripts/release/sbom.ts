/**
 * npm run sbom: writes docs/sbom.cdx.json and docs/licences.md from the built dist/.
 * With --check nothing is written: a file that is not as it would be made now is named, and the exit status is 1.
 *
 * A script of our own, because the generators at hand read trees of dependencies: they list what the bundler dropped and know nothing of the
 * files that are copied.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type Lock, type Product, billOfMaterials } from './cyclonedx';
import { licencesPage } from './licences-page';
import { Shipped, licenceFaults } from './shipped';

const root = path.resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8').replace(/\r\n/g, '\n');

function main(check: boolean): number {
  const works = new Shipped(root).works();
  const faults = licenceFaults(works);
  for (const fault of faults) console.error(fault);
  if (faults.length > 0) return 1;
  const bill = billOfMaterials(JSON.parse(read('package.json')) as Product, works, JSON.parse(read('package-lock.json')) as Lock);
  const wanted = { 'docs/sbom.cdx.json': `${JSON.stringify(bill, null, 2)}\n`, 'docs/licences.md': licencesPage(works, read('scripts/release/font-awesome-notice.txt')) };
  let stale = 0;
  for (const [file, text] of Object.entries(wanted)) {
    if (existsSync(path.join(root, file)) && read(file) === text) continue;
    if (check) {
      stale += 1;
      console.error(`${file} is not what dist/ holds: run npm run sbom after a build and commit the result`);
      continue;
    }
    writeFileSync(path.join(root, file), text);
    console.log(`wrote ${file}`);
  }
  return stale === 0 ? 0 : 1;
}

try {
  process.exitCode = main(process.argv.includes('--check'));
} catch (error) {
  console.error(`sbom: ${(error as Error).message}`);
  process.exitCode = 2;
}
