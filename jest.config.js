import { createRequire } from 'node:module';

const swc = createRequire(import.meta.url)('./scripts/lib/swc.json');

// Packages that ship only ES modules; jest compiles them as it does our own sources.
const esModules = ['@borgar/fx', 'numfmt', '@formulajs/formulajs', 'fflate', 'strip-bom', 'uuid', 'node-fetch', 'data-uri-to-buffer', 'fetch-blob', 'formdata-polyfill', '@odoo/o-spreadsheet', '@odoo/owl', 'complex.js', 'linkedom', 'uhyphen', 'htmlparser2', 'domhandler', 'domutils', 'dom-serializer', 'domelementtype', 'entities', 'css-select', 'css-what', 'nth-check', 'boolbase', 'cssomnom', 'html-escaper', 'parse5', '@xmldom/xmldom', 'd3-array', 'd3-color', 'd3-format', 'd3-interpolate', 'd3-path', 'd3-scale', 'd3-shape', 'd3-time', 'd3-time-format', 'internmap'];

const common = {
  rootDir: import.meta.dirname,
  testEnvironment: 'node',
  setupFiles: ['<rootDir>/tests/support/laws-seed.ts'],
  transform: { '\\.[cm]?[jt]s$': ['@swc/jest', { jsc: { ...swc, target: 'es2022' }, module: { type: 'commonjs' } }] },
  transformIgnorePatterns: [`/node_modules/(?!(.*/)?(${esModules.join('|')})/)`],
  // numfmt names a CommonJS file that its package does not hold.
  moduleNameMapper: { '^numfmt$': '<rootDir>/node_modules/numfmt/dist/index.js' },
  modulePathIgnorePatterns: ['<rootDir>/dist/', '<rootDir>/build/'],
};

export default {
  rootDir: import.meta.dirname,
  projects: [
    { ...common, displayName: 'node', testMatch: ['<rootDir>/tests/**/*.test.ts'], testPathIgnorePatterns: ['/node_modules/', '<rootDir>/tests/browser/'] },
    { ...common, displayName: 'browser', testMatch: ['<rootDir>/tests/browser/**/*.test.ts'] },
  ],
};
