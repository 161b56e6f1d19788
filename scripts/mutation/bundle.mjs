import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import webpack from 'webpack';

const swc = createRequire(import.meta.url)('../lib/swc.json');

/**
 * One script out of the code under trial and its test files, each of which says its name before it is loaded.
 * @param folder checkout, or the copy of it that holds the changed code
 * @param files test files, as paths in that folder; what has to be set before any test comes first
 */
export async function bundled(folder, files) {
  const name = 'mutation-bundle.cjs';
  const place = path.join(folder, name);
  // A runner that was stopped in an endless loop is started again: what it bundled before is as good as new.
  if (!existsSync(place)) {
    const own = `${process.pid}-${name}`;
    await compiled(folder, files, own);
    renameSync(path.join(folder, own), place);
  }
  return readFileSync(place, 'utf8');
}

function compiled(folder, files, filename) {
  const entry = path.join(folder, `entry-${filename}`);
  writeFileSync(entry, files.map((file) => `globalThis.currentTestFile = ${JSON.stringify(file)};\nrequire(${JSON.stringify(`./${file}`)});\n`).join(''));
  const compiler = webpack({
    mode: 'development',
    devtool: false,
    target: 'node20',
    context: folder,
    entry,
    output: { path: folder, filename },
    resolve: { extensions: ['.ts', '.js', '.mjs'] },
    module: { rules: [{ test: /\.ts$/, use: { loader: 'swc-loader', options: { jsc: { ...swc, target: 'es2022' } } } }] },
    performance: { hints: false },
  });
  return new Promise((resolve, reject) => {
    compiler.run((error, stats) => {
      const faults = error?.message ?? (stats?.hasErrors() ? stats.toString({ all: false, errors: true }) : undefined);
      compiler.close(() => (faults === undefined ? resolve() : reject(new Error(faults))));
    });
  });
}
