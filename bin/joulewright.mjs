#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

const program = path.resolve(import.meta.dirname, '../dist/cli/joulewright.cjs');
if (existsSync(program)) {
  await createRequire(import.meta.url)(program).start();
} else {
  console.error('joulewright is not built yet: run `npm start -- --no-serve` (or `npm ci` and `npm run build`) in its folder first.');
  process.exitCode = 2;
}
