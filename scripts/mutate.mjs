// npm run mutate [-- PART …]: changes our code in small ways and tells which changes no test notices. Parts: families of functions, kernel and base (what lies below all of them).
import { run } from './lib/run.mjs';

const PARTS = ['fault', 'impedance', 'network', 'cable', 'curve', 'duty', 'selectivity', 'hazard', 'life', 'check', 'kernel', 'base'];
const parts = process.argv.slice(2);
let worst = 0;
for (const part of parts.length > 0 ? parts : PARTS) {
  console.log(`\n== ${part}`);
  worst = Math.max(worst, await run('npx', ['--no-install', 'stryker', 'run', 'stryker.config.js'], { env: { ...process.env, MUTATE: part } }));
}
process.exitCode = worst;
