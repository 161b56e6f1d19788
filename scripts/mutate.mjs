// npm run mutate [-- PART …]: changes our code in small ways and tells which changes no test notices. Parts: folders of src/core, and kernel.
import { run } from './lib/run.mjs';

const parts = process.argv.slice(2);
let worst = 0;
for (const part of parts.length > 0 ? parts : ['fault', 'cable', 'duty', 'kernel']) {
  console.log(`\n== ${part}`);
  worst = Math.max(worst, await run('npx', ['--no-install', 'stryker', 'run', 'stryker.config.js'], { env: { ...process.env, MUTATE: part } }));
}
process.exitCode = worst;
