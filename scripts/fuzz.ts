// npm run fuzz [-- --tuples 1000000 --workbooks 2000 --seed 20261125 --only NAME]: every function with hostile arguments, then spoiled
// workbooks; a seed brings a fault again.
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { catalogue } from '../src/sheet/catalogue';
import { schedule } from '../tests/support/checked';
import { FUZZ_SEED, fuzz } from '../tests/support/fuzz';
import { fuzzWorkbooks } from '../tests/support/fuzz-workbooks';

const { values } = parseArgs({ options: { tuples: { type: 'string', default: '1000000' }, workbooks: { type: 'string', default: '2000' }, from: { type: 'string', default: '0' }, seed: { type: 'string', default: String(FUZZ_SEED) }, only: { type: 'string' } } });

const whole = (name: 'tuples' | 'seed' | 'workbooks' | 'from', least = 1): number => {
  const value = Number(values[name]);
  if (!Number.isInteger(value) || value < least) throw new Error(`--${name} takes a whole number from ${least}, got ${values[name]}`);
  return value;
};

function functions(): number {
  const seed = whole('seed');
  const entries = values.only === undefined ? catalogue.entries : catalogue.entries.filter(({ member }) => member.name === values.only!.toUpperCase());
  if (entries.length === 0) throw new Error(`no function named ${values.only}`);
  const each = Math.ceil(whole('tuples') / entries.length);
  const start = performance.now();
  let [called, refused, faulty] = [0, 0, 0];
  for (const entry of entries) {
    const done = fuzz(entry, each, seed);
    called += done.called;
    refused += done.refused;
    if (done.faults.length === 0) continue;
    faulty += 1;
    for (const fault of done.faults) console.error(`${fault}\n  again: npm run fuzz -- --seed ${seed} --only ${entry.member.name} --tuples ${done.called}`);
  }
  console.log(`${called} calls of ${entries.length} functions in ${((performance.now() - start) / 1000).toFixed(1)} s, seed ${seed}: ${refused} refused in words, ${faulty} functions at fault`);
  return faulty === 0 ? 0 : 1;
}

/** The sample workbooks and a schedule, spoiled. `--from N --workbooks 1` brings one of them again. */
function workbooks(): number {
  const [seed, count, from] = [whole('seed'), whole('workbooks', 0), whole('from', 0)];
  const folder = path.resolve(import.meta.dirname, '../sample-workbooks');
  const books = [schedule(), ...readdirSync(folder).filter((name) => name.endsWith('.xlsx')).sort().map((name) => new Uint8Array(readFileSync(path.join(folder, name))))];
  const start = performance.now();
  const { tried, refused, faults } = fuzzWorkbooks(books, count, seed, from);
  for (const { file, fault } of faults) console.error(`workbook ${file}: ${fault}\n  again: npm run fuzz -- --tuples 1 --seed ${seed} --workbooks 1 --from ${file}`);
  console.log(`${tried} spoiled workbooks in ${((performance.now() - start) / 1000).toFixed(1)} s, seed ${seed}: ${refused} refused in words, ${faults.length} at fault`);
  return faults.length === 0 ? 0 : 1;
}

try {
  process.exitCode = Math.max(functions(), values.only === undefined ? workbooks() : 0);
} catch (error) {
  console.error(`fuzz: ${(error as Error).message}`);
  process.exitCode = 2;
}
