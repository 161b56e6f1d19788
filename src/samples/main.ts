import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { cableSchedule } from './cable-schedule';
import { checker } from './checker';
import { engineer } from './engineer';
import { estimator } from './estimator';
import { starter } from './starter';

/** Writes the sample workbooks; with --check says whether those in the folder are what would be written. */
const SAMPLES: Readonly<Record<string, () => Promise<Uint8Array>>> = {
  'cable-schedule.xlsx': cableSchedule,
  'estimator.xlsx': estimator,
  'engineer.xlsx': engineer,
  'checker.xlsx': checker,
  'starter.xlsx': starter,
};

const folder = path.resolve(import.meta.dirname, '../../sample-workbooks');
const check = process.argv.includes('--check');
mkdirSync(folder, { recursive: true });
for (const [name, build] of Object.entries(SAMPLES)) {
  const file = path.join(folder, name);
  const bytes = await build();
  const fresh = existsSync(file) && Buffer.compare(readFileSync(file), bytes) === 0;
  if (!check) {
    writeFileSync(file, bytes);
    console.log(`wrote sample-workbooks/${name}`);
  } else if (!fresh) {
    console.error(`sample-workbooks/${name} is not what its builder writes: run npm run samples`);
    process.exitCode = 1;
  }
}
