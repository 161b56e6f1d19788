// npm run fuzz [-- --tuples 1000000 --workbooks 2000 --laws 5 --seed 20261125 --only NAME]: every function with hostile arguments, spoiled
// workbooks, then the laws of the tests with random cases of their own; a seed brings a fault again.
import { spawnSync } from 'node:child_process';
import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { catalogue } from '../src/sheet/catalogue';
import { schedule } from '../tests/support/checked';
import { FUZZ_SEED, fuzz } from '../tests/support/fuzz';
import { fuzzWorkbooks } from '../tests/support/fuzz-workbooks';

const { values } = parseArgs({ options: { tuples: { type: 'string', default: '1000000' }, workbooks: { type: 'string', default: '2000' }, laws: { type: 'string', default: '5' }, from: { type: 'string', default: '0' }, seed: { type: 'string', default: String(FUZZ_SEED) }, only: { type: 'string' } } });

const root = path.resolve(import.meta.dirname, '..');

const whole = (name: 'tuples' | 'seed' | 'workbooks' | 'from' | 'laws', least = 1): number => {
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
  const folder = path.join(root, 'sample-workbooks');
  const books = [schedule(), ...readdirSync(folder).filter((name) => name.endsWith('.xlsx')).sort().map((name) => new Uint8Array(readFileSync(path.join(folder, name))))];
  const start = performance.now();
  const { tried, refused, faults } = fuzzWorkbooks(books, count, seed, from);
  for (const { file, fault } of faults) console.error(`workbook ${file}: ${fault}\n  again: npm run fuzz -- --tuples 1 --seed ${seed} --workbooks 1 --from ${file}`);
  console.log(`${tried} spoiled workbooks in ${((performance.now() - start) / 1000).toFixed(1)} s, seed ${seed}: ${refused} refused in words, ${faults.length} at fault`);
  return faults.length === 0 ? 0 : 1;
}

const TRIES_LAWS = /from '(?:fast-check|[./]*\/support\/(?:hostile-calls|curves|meshes))'/;

/** Every test that tries random cases, with a seed for each round. */
function laws(): number {
  const [seed, rounds] = [whole('seed'), whole('laws', 0)];
  const tests = readdirSync(path.join(root, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts') && TRIES_LAWS.test(readFileSync(path.join(root, 'tests', name), 'utf8')));
  let faulty = 0;
  for (let round = 1; round <= rounds; round += 1) {
    const { status } = spawnSync('npx', ['--no-install', 'jest', '--selectProjects', 'node', '--silent', '--runTestsByPath', ...tests.map((name) => path.join('tests', name))], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32', env: { ...process.env, LAWS_SEED: String(seed + round) } });
    if (status === 0) continue;
    faulty += 1;
    console.error(`laws broken\n  again: LAWS_SEED=${seed + round} npm test`);
  }
  console.log(`${rounds} rounds of the laws in ${tests.length} test files: ${faulty} at fault`);
  return faulty === 0 ? 0 : 1;
}

try {
  const all = values.only === undefined;
  process.exitCode = Math.max(functions(), all ? workbooks() : 0, all ? laws() : 0);
} catch (error) {
  console.error(`fuzz: ${(error as Error).message}`);
  process.exitCode = 2;
}
