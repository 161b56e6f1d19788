import path from 'node:path';
import webpack from 'webpack';
import swc from '../../scripts/lib/swc.json';

/** Bundles one entry for a page of a test, with the loader of the project's own bundles. */
export function bundle(entry: string, folder: string, filename: string): Promise<void> {
  const compiler = webpack({
    mode: 'development',
    devtool: false,
    target: ['web', 'es2020'],
    context: path.resolve(__dirname, '../..'),
    entry: path.resolve(entry),
    output: { path: folder, filename },
    resolve: { extensions: ['.ts', '.js', '.mjs'] },
    module: { rules: [{ test: /\.ts$/, use: { loader: 'swc-loader', options: { jsc: { ...swc, target: 'es2020' } } } }] },
    performance: { hints: false },
  });
  return new Promise((resolve, reject) => {
    compiler.run((error, stats) => {
      const faults = error?.message ?? (stats?.hasErrors() ? stats.toString({ all: false, errors: true }) : undefined);
      compiler.close(() => (faults === undefined ? resolve() : reject(new Error(faults))));
    });
  });
}
