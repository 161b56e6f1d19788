// npm run bench [-- --only functions,office,growth,networks,bundle,excel,workbench --repeats 7]: one table, with ratios measured in one run.
import os from 'node:os';
import { parseArgs } from 'node:util';
import { bundle } from './bundle';
import { excel } from './excel';
import { type Options, type Row, tableText } from './figures';
import { functions } from './functions';
import { networks } from './networks';
import { againstOffice, growth } from './recompute';
import { workbench } from './workbench';

const parts: Readonly<Record<string, (options: Options) => Row[] | Promise<Row[]>>> = {
  functions,
  office: againstOffice,
  growth: ({ repeats }) => growth({ repeats: Math.min(repeats, 3) }),
  networks,
  bundle,
  excel,
  workbench,
};

async function main(): Promise<void> {
  const { values } = parseArgs({ options: { only: { type: 'string' }, repeats: { type: 'string', default: '7' } } });
  const repeats = Number(values.repeats);
  if (!Number.isInteger(repeats) || repeats < 1) throw new Error(`--repeats takes a whole number from 1, got ${values.repeats}`);
  const wanted = values.only?.split(',') ?? Object.keys(parts);
  const unknown = wanted.find((name) => !Object.hasOwn(parts, name));
  if (unknown !== undefined) throw new Error(`no part named ${unknown}; the parts are ${Object.keys(parts).join(', ')}`);
  const rows: Row[] = [];
  for (const name of wanted) {
    console.error(`${name} …`);
    rows.push(...(await parts[name]!({ repeats })));
  }
  console.log(`Node ${process.version}, ${os.cpus().length} processors, load ${os.loadavg()[0]!.toFixed(1)}; medians of up to ${repeats} repeats.\n`);
  console.log(tableText(rows));
}

try {
  await main();
} catch (error) {
  console.error(`bench: ${(error as Error).message}`);
  process.exitCode = 2;
}
