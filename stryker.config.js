// Mutation testing of one part of the engineering by the tests that are about it: npm run mutate -- fault cable duty kernel.
import jestConfig from './jest.config.js';

const part = process.env['MUTATE'] ?? 'fault';

/** Where the code of a part stands, if it is no family of functions, and which tests are about it. */
const OTHERS = {
  kernel: { mutate: ['src/functions/kernel/**/*.ts', 'src/functions/plausible.ts', 'src/functions/shared-parameters.ts'], tests: ['kernel', 'check', 'check-contract', 'fault', 'cable', 'curve-bands', 'duty-let-through', 'duty-sheet', 'network-radial', 'bounds-words', '*-kind', 'left-out', 'explain', 'plausible', '*-audit'] },
  base: { mutate: ['src/core/*.ts', '!src/core/version.ts'], tests: ['kernel', 'working', 'impedance', 'cable', 'check', 'duty-sheet', 'duty-let-through', 'selectivity', 'bounds-words'] },
};
const family = { mutate: [`src/core/${part}/**/*.ts`, `src/functions/${part}*.ts`, `src/functions/${part}-tables/*.ts`], tests: [part, `${part}-*`, 'working*'] };
const { mutate, tests } = OTHERS[part] ?? family;
const node = jestConfig.projects.find(({ displayName }) => displayName === 'node');

export default {
  mutate,
  // Words of steps and messages: a test of every wording would only say the wording twice.
  mutator: { excludedMutations: ['StringLiteral', 'ObjectLiteral'] },
  testRunner: 'jest',
  jest: {
    projectType: 'custom',
    // Tests of single figures, not the laws: those try hundreds of random cases each, which hundreds of times over takes hours.
    config: { ...node, rootDir: undefined, testMatch: tests.map((name) => `**/tests/functions/${name}.test.ts`) },
  },
  coverageAnalysis: 'perTest',
  ignoreStatic: true,
  concurrency: Number(process.env['MUTATE_AT_ONCE'] ?? 1),
  timeoutMS: 5_000,
  incremental: true,
  incrementalFile: `build/mutation/${part}.json`,
  tempDirName: 'build/stryker',
  ignorePatterns: ['dist', 'build', 'sample-workbooks', 'docs', 'bench', 'src/excel', 'src/workbench', 'src/cli', 'src/pane', 'src/samples', 'tests/browser', 'tests/workbench', 'tests/excel', 'tests/cli', 'tests/pane'],
  reporters: ['clear-text', 'progress-append-only', 'json'],
  jsonReporter: { fileName: `build/mutation/${part}.report.json` },
  clearTextReporter: { allowColor: false, reportTests: false, logTests: false },
  allowEmpty: false,
};
