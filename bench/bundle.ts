import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import vm from 'node:vm';
import { gzipSync } from 'node:zlib';
import { type Options, type Row, kilobytes, median, time } from './figures';
import { root } from './processes';

/** What Excel loads for its cells: size on the wire, and time to read and run it once in an engine that has never seen it. */
export function bundle({ repeats }: Options): Row[] {
  const file = path.join(root, 'dist/excel/functions.js');
  if (!existsSync(file)) return [{ what: 'functions bundle', measured: 'not built: npm run build' }];
  const source = readFileSync(file, 'utf8');
  let associated = 0;
  const load = (): number => {
    associated = 0;
    // A comment of its own, so that the engine cannot take the code it compiled before.
    const text = `${source}\n// ${Math.random()}`;
    const context = vm.createContext({ CustomFunctions: { associate: () => { associated += 1; } }, console, TextEncoder, TextDecoder });
    const start = performance.now();
    new vm.Script(text).runInContext(context);
    return (performance.now() - start) / 1000;
  };
  const seconds = median(Array.from({ length: Math.max(5, repeats) }, load));
  const packed = gzipSync(source, { level: 9 }).length;
  return [
    { what: `functions bundle of the add-in, ${associated} functions: size gzipped (plain)`, measured: `${kilobytes(packed)} (${kilobytes(source.length)})`, aim: '≤ 90 kB gzip', met: packed <= 90e3 },
    { what: 'functions bundle: read and run once', measured: time(seconds), aim: '≤ 40 ms', met: seconds <= 0.04 },
  ];
}
