import { createRequire } from 'node:module';
import path from 'node:path';
import CopyPlugin from 'copy-webpack-plugin';
import webpack from 'webpack';

const here = import.meta.dirname;
const swc = createRequire(import.meta.url)('./scripts/lib/swc.json');
const modules = (file) => path.join(here, 'node_modules', file);

/** Settings that all bundles share. Third-party files that are copied are never minified again. */
const bundle = (name, options) => ({
  name,
  devtool: 'source-map',
  performance: { hints: false },
  resolve: { extensions: ['.ts', '.js', '.mjs'] },
  module: { rules: [{ test: /\.ts$/, use: { loader: 'swc-loader', options: { jsc: { ...swc, target: 'es2020' } } } }] },
  stats: 'errors-warnings',
  ...options,
});

const asIs = (from, to) => ({ from, to, info: { minimized: true } });

/** The pane's looks: those of the frame, then those of its views. */
const paneLooks = {
  from: 'src/pane/**/*.css', to: 'pane.css', info: { minimized: true },
  transformAll: (files) => {
    const own = (file) => path.basename(file.sourceFilename) === 'pane.css';
    return files.sort((a, b) => own(b) - own(a) || (a.sourceFilename < b.sourceFilename ? -1 : 1)).map(({ data }) => data.toString()).join('\n');
  },
};

/** The handbook beside every page: its search is an entry, the rest is copied. */
const handbookSearch = { handbook: './src/sheet/handbook/search/page.ts' };
const handbookFiles = [asIs('src/sheet/handbook/generated/handbook.html', 'handbook.html'), asIs('src/sheet/handbook/static/handbook.css', 'handbook.css')];
/** Licences of what our bundles hold, beside the bundles (`npm run sbom` writes the page). */
const licences = asIs('docs/licences.md', 'licences.md');

export default [
  bundle('cli', {
    target: 'node20',
    entry: { joulewright: './src/cli/main.ts' },
    output: { path: path.join(here, 'dist/cli'), filename: '[name].cjs', clean: true, library: { type: 'commonjs2' } },
    plugins: [new webpack.optimize.LimitChunkCountPlugin({ maxChunks: 1 })],
  }),
  bundle('excel', {
    target: ['web', 'es2020'],
    entry: { functions: './src/excel/functions.ts', taskpane: './src/excel/taskpane.ts', ...handbookSearch },
    output: { path: path.join(here, 'dist/excel'), filename: '[name].js', clean: true },
    plugins: [
      new CopyPlugin({
        patterns: [
          asIs('src/excel/static', '.'),
          paneLooks,
          asIs('src/excel/generated/functions.json', 'functions.json'),
          ...handbookFiles,
          licences,
          // Microsoft's library, unchanged and from our own server: what its loader asks for in Excel, English texts only.
          ...['office.js', 'o15apptofilemappingtable.js', 'excel-*-16.*.js', 'custom-functions-runtime.js'].map((name) => ({
            from: name, context: modules('@microsoft/office-js/dist'), to: 'office/', globOptions: { ignore: ['**/*.debug.js'] }, info: { minimized: true },
          })),
          asIs(modules('@microsoft/office-js/dist/en-us/office_strings.js'), 'office/en-us/'),
          { from: modules('@microsoft/office-js/LICENSE.md'), to: 'office/LICENSE.md' },
        ],
      }),
    ],
  }),
  bundle('workbench', {
    target: ['web', 'es2020'],
    entry: { app: './src/workbench/app.ts', ...handbookSearch },
    output: { path: path.join(here, 'dist/workbench'), filename: '[name].js', clean: true },
    // The grid and its framework are LGPL: they stay separate files that anyone can replace.
    externalsType: 'var',
    externals: { '@odoo/o-spreadsheet': 'o_spreadsheet', '@odoo/owl': 'owl' },
    plugins: [
      new CopyPlugin({
        patterns: [
          asIs('src/workbench/static', '.'),
          paneLooks,
          ...handbookFiles,
          licences,
          asIs('src/excel/static/assets/icon-16.png', 'assets/'),
          { from: 'sample-workbooks/*.xlsx', to: 'samples/[name][ext]', info: { minimized: true } },
          {
            from: 'sample-workbooks/*.xlsx',
            to: 'samples/index.json',
            transformAll: (files) => JSON.stringify(files.map(({ sourceFilename }) => path.basename(sourceFilename)).sort()),
          },
          asIs(modules('@odoo/o-spreadsheet/dist/o_spreadsheet.iife.js'), 'vendor/'),
          asIs(modules('@odoo/o-spreadsheet/dist/o_spreadsheet.xml'), 'vendor/'),
          asIs(modules('@odoo/o-spreadsheet/dist/o_spreadsheet.css'), 'vendor/'),
          { from: modules('@odoo/o-spreadsheet/LICENSE'), to: 'vendor/LICENSE.o-spreadsheet.txt', toType: 'file' },
          asIs(modules('@odoo/owl/dist/owl.iife.js'), 'vendor/'),
          asIs(modules('bootstrap/dist/css/bootstrap.min.css'), 'vendor/'),
          asIs(modules('font-awesome/css/font-awesome.min.css'), 'vendor/font-awesome/css/'),
          asIs(modules('font-awesome/fonts'), 'vendor/font-awesome/fonts'),
          ...[['@odoo/owl', 'owl'], ['bootstrap', 'bootstrap']].map(([name, short]) => ({
            from: modules(`${name}/LICENSE`), to: `vendor/LICENSE.${short}.txt`, toType: 'file', info: { minimized: true },
          })),
        ],
      }),
    ],
  }),
];
