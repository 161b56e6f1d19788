// Mutation testing of one part of the engineering by the tests that are about it: npm run mutate -- fault cable duty kernel.
import { readdirSync } from 'node:fs';
import path from 'node:path';

const part = process.env['MUTATE'] ?? 'fault';

/** Where the code of a part stands, if it is no family of functions, and which tests are about it. */
const OTHERS = {
  kernel: {
    mutate: ['src/functions/kernel/**/*.ts', 'src/functions/plausible.ts', 'src/functions/shared-parameters.ts'],
    tests: ['kernel*', 'check', 'check-contract', 'fault', 'cable', 'curve', 'curve-bands', 'duty-let-through', 'duty-sheet', 'network-radial', 'bounds-words', 'flags', '*-kind', 'left-out', 'explain', 'plausible*', 'signatures', '*-audit'],
  },
  base: {
    mutate: ['src/core/*.ts', '!src/core/version.ts'],
    tests: ['kernel*', 'working', 'impedance', 'cable', 'check', 'duty-sheet', 'duty-let-through', 'selectivity', 'bounds-words', 'complex-text', 'figure', 'check-agree', 'check-units'],
  },
};
const family = { mutate: [`src/core/${part}/**/*.ts`, `src/functions/${part}*.ts`, `src/functions/${part}-tables/*.ts`], tests: [part, `${part}-*`, 'working*', 'signatures'] };
const { mutate, tests } = OTHERS[part] ?? family;

const folder = 'tests/functions';
const about = tests.map((name) => new RegExp(`^${name.replaceAll('*', '.*')}\\.test\\.ts$`));
// Tests of single figures, not of sizes and not the laws: those try hundreds of random cases each, which hundreds of times over takes hours.
const isTried = (file) => about.some((pattern) => pattern.test(file)) && !/\.laws\.|-size\./.test(file);

export default {
  mutate,
  // Words of steps and messages: a test of every wording would only say the wording twice.
  mutator: { excludedMutations: ['StringLiteral', 'ObjectLiteral'] },
  plugins: ['runner', 'words'].map((name) => path.resolve(import.meta.dirname, `scripts/mutation/${name}.mjs`)),
  ignorers: ['words'],
  testRunner: 'in-one-process',
  inOneProcess: { testFiles: ['tests/support/laws-seed.ts', ...readdirSync(path.join(import.meta.dirname, folder)).filter(isTried).sort().map((file) => `${folder}/${file}`)] },
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env['MUTATE_AT_ONCE'] ?? 2),
  timeoutMS: 5_000,
  tempDirName: 'build/stryker',
  ignorePatterns: ['dist', 'build', 'sample-workbooks', 'docs', 'bench', 'src/excel', 'src/workbench', 'src/cli', 'src/pane', 'src/samples', 'tests/browser', 'tests/workbench', 'tests/excel', 'tests/cli', 'tests/pane'],
  reporters: ['clear-text', 'progress-append-only', 'json'],
  jsonReporter: { fileName: `build/mutation/${part}.report.json` },
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
  allowEmpty: false,
};
