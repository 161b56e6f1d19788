// npm start: install, build, do the main job on the sample, show the result, serve workbench and add-in.
import { existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { ensureBuilt } from './lib/build.mjs';
import { ensureInstalled } from './lib/install.mjs';
import { inRoot, root } from './lib/root.mjs';
import { run } from './lib/run.mjs';

const SAMPLE = 'sample-workbooks/cable-schedule.xlsx';
const OUTPUT = 'build/cable-schedule.recomputed.xlsx';
/** What a reader of the schedule looks at first. */
const SHOWN = ['Cables', 'cable', 'to', 'size', 'Ik3 max', 'let-through', 'k²S²', 'withstand', 'margin'];

const joulewright = (...args) => run(process.execPath, [inRoot('bin/joulewright.mjs'), ...args]);

const words = process.argv.slice(2);
const unknown = words.find((word) => word !== '--no-serve');
if (unknown !== undefined) {
  console.error(`npm start takes only --no-serve (npm start -- --no-serve), got ${unknown}`);
  process.exit(2);
}

await ensureInstalled();
await ensureBuilt();

mkdirSync(inRoot('build'), { recursive: true });
console.log(`\nRecomputing ${SAMPLE} by the command line:`);
const recomputed = await joulewright('recompute', SAMPLE, '-o', OUTPUT);
if (recomputed !== 0) process.exit(recomputed);
console.log('');
const shown = await joulewright('table', OUTPUT, ...SHOWN);
if (shown !== 0) process.exit(shown);
console.log(`\nThe recomputed workbook: ${path.join(root, OUTPUT)}\n(An invented works; a calculation aid, not a design approval.)`);

if (words.includes('--no-serve')) process.exit(0);

const { serve } = await import('./lib/serve.mjs');
const { servers, facts } = await serve();
console.log('');
for (const problem of facts.problems) console.warn(problem);
if (facts.workbench) console.log(`Workbench (no Excel needed):  ${facts.workbench}`);
if (facts.addIn) {
  console.log(`Add-in for Excel:             ${facts.addIn}   manifest: ${inRoot('manifest.xml')}`);
  if (!facts.trusted) console.log('  Its certificate is self-made and not trusted yet: run `npm run certs` once on the machine that runs Excel.');
}
console.log(`
Excel gets it like this (this server must keep running):
  Windows  share the folder of manifest.xml, add the share under File > Options > Trust Center > Trusted Add-in Catalogs,
           restart Excel, then Home > Add-ins > Shared Folder > Joulewright
  Mac      copy manifest.xml to ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef, restart Excel, then Home > Add-ins
  Web      Home > Add-ins > More Settings > Upload My Add-in > manifest.xml (the browser must trust the certificate)
Then type =JW.CABLE_K("Cu","XLPE") in a cell.`);
if (servers.length === 0) process.exit(existsSync(inRoot(OUTPUT)) ? 1 : 2);
console.log('\nCtrl+C ends it.');
