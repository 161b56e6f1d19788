// Mutation testing of one part of the engineering by the tests that are about it: npm run mutate -- fault cable duty kernel.
import jestConfig from './jest.config.js';

const part = process.env['MUTATE'] ?? 'fault';
const source = part === 'kernel' ? 'src/functions/kernel' : `src/core/${part}`;
// Tests of single figures, not the laws: those try hundreds of random cases each, which hundreds of times over takes hours.
const tests = part === 'kernel' ? ['kernel', 'check-contract', 'fault', 'cable', 'curve-bands'] : [part, `${part}-*`, 'working'];
const node = jestConfig.projects.find(({ displayName }) => displayName === 'node');

export default {
  mutate: [`${source}/**/*.ts`],
  // Words of steps and messages: a test of every wording would only say the wording twice.
  mutator: { excludedMutations: ['StringLiteral', 'ObjectLiteral'] },
  testRunner: 'jest',
  jest: {
    projectType: 'custom',
    config: { ...node, rootDir: undefined, testMatch: tests.map((name) => `**/tests/functions/${name}.test.ts`) },
  },
  coverageAnalysis: 'perTest',
  ignoreStatic: true,
  concurrency: 1,
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
