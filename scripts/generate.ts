/**
 * npm run generate: writes the files that are made from the declarations, and the plans of the starter sheets.
 * With --check nothing is written: a file that is not as it would be made now is named, and the exit status is 1.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { starterPlans } from '../src/samples/starter';
import { catalogue } from '../src/sheet/catalogue';
import { handbookContent } from '../src/sheet/handbook/content';
import { handbookMarkdown } from '../src/sheet/handbook/markdown';
import { handbookPage } from '../src/sheet/handbook/page';
import { worked } from '../src/sheet/handbook/worked';
import { customFunctionsMetadata } from '../src/sheet/metadata/custom-functions';

const root = path.resolve(import.meta.dirname, '..');

const families = handbookContent(catalogue, worked);

/** Arguments under their names as literals: an object out of a literal is made in a fraction of the time of one built name by name. */
const recordsSource = (): string => [
  '// Made from the declarations by `npm run generate`.',
  "import type { Records } from '../kernel/catalogue';",
  '',
  'export const records: Records = {',
  ...catalogue.entries.filter(({ member }) => member.order.length > 0)
    .map(({ member }) => `  ${member.name}: (from) => ({ ${member.order.map(([name], place) => `${name}: from.read(${place})`).join(', ')} }),`),
  '};',
  '',
].join('\n');

const generated: readonly { file: string; text: () => string }[] = [
  { file: 'src/functions/generated/records.ts', text: recordsSource },
  { file: 'src/excel/generated/functions.json', text: () => `${JSON.stringify(customFunctionsMetadata(catalogue), null, 2)}\n` },
  { file: 'src/pane/sheets/generated/starter.json', text: () => `${JSON.stringify(starterPlans(), null, 1)}\n` },
  { file: 'docs/handbook.md', text: () => handbookMarkdown(families) },
  { file: 'src/sheet/handbook/generated/handbook.html', text: () => handbookPage(families) },
];

const check = process.argv.includes('--check');
const stale: string[] = [];

for (const { file, text } of generated) {
  const place = path.join(root, file);
  const wanted = text();
  const present = existsSync(place) ? readFileSync(place, 'utf8').replace(/\r\n/g, '\n') : undefined;
  if (present === wanted) continue;
  if (check) {
    stale.push(present === undefined ? `${file} is missing` : `${file} is not what the declarations say`);
    continue;
  }
  mkdirSync(path.dirname(place), { recursive: true });
  writeFileSync(place, wanted);
  console.log(`wrote ${file}`);
}

if (stale.length > 0) {
  for (const line of stale) console.error(line);
  console.error('Run `npm run generate` and commit the result.');
  process.exitCode = 1;
}
