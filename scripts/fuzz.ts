// npm run fuzz [-- --tuples 1000000 --seed 20261125 --only NAME]: every function with hostile arguments; a seed brings a fault again.
import { parseArgs } from 'node:util';
import { catalogue } from '../src/sheet/catalogue';
import { FUZZ_SEED, fuzz } from '../tests/support/fuzz';

const { values } = parseArgs({ options: { tuples: { type: 'string', default: '1000000' }, seed: { type: 'string', default: String(FUZZ_SEED) }, only: { type: 'string' } } });

const whole = (name: 'tuples' | 'seed'): number => {
  const value = Number(values[name]);
  if (!Number.isInteger(value) || value < 1) throw new Error(`--${name} takes a whole number from 1, got ${values[name]}`);
  return value;
};

function main(): number {
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

try {
  process.exitCode = main();
} catch (error) {
  console.error(`fuzz: ${(error as Error).message}`);
  process.exitCode = 2;
}
