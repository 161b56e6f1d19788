// Runs before `npm pack` and `npm publish`: the package holds dist/, so dist/ must be what the sources say.
import { ensureBuilt } from '../lib/build.mjs';
import { ensureInstalled } from '../lib/install.mjs';

await ensureInstalled();
await ensureBuilt();
