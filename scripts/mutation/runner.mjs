/**
 * Runs the tests of the engineering for Stryker inside of its own process: all code is evaluated anew for each change, out of one script that
 * was compiled once, and only the tests that meet the change are run. A change so takes milliseconds, where a whole run of jest takes seconds.
 */
import { createRequire } from 'node:module';
import path from 'node:path';
import vm from 'node:vm';
import { PluginKind, declareFactoryPlugin } from '@stryker-mutator/api/plugin';
import { DryRunStatus, TestStatus, determineHitLimitReached, toMutantRunResult } from '@stryker-mutator/api/test-runner';
import { expect } from 'expect';
import { bundled } from './bundle.mjs';
import { Frame } from './frame.mjs';

const stryker = (globalThis.__stryker__ ??= {});

class InOneProcess {
  constructor(options) {
    this.files = options.inOneProcess.testFiles;
  }

  capabilities() {
    return { reloadEnvironment: true };
  }

  async init() {
    // The copy of the checkout that holds the changed code: the process stands in it by now.
    this.folder = process.cwd();
    this.require = createRequire(path.join(this.folder, 'package.json'));
    this.script = new vm.Script(`(function (require, module, exports, __filename, __dirname) {${await bundled(this.folder, this.files)}\n})`, { filename: 'tests.cjs' });
  }

  /** Evaluates code and tests anew. */
  #load() {
    const frame = new Frame();
    Object.assign(globalThis, { test: frame.test, it: frame.test, describe: frame.describe, expect });
    const module = { exports: {} };
    this.script.runInThisContext()(this.require, module, module.exports, path.join(this.folder, 'tests.cjs'), this.folder);
    return frame.gathered;
  }

  async #run(wanted, bail) {
    const tests = [];
    for (const { id, fileName, body } of this.#load().filter((test) => wanted?.has(test.id) ?? true)) {
      stryker.currentTestId = id;
      const start = performance.now();
      const failure = await Promise.resolve().then(body).then(() => undefined, (thrown) => thrown ?? new Error('failed'));
      stryker.currentTestId = undefined;
      const told = { id, name: id, fileName, timeSpentMs: performance.now() - start };
      tests.push(failure === undefined ? { ...told, status: TestStatus.Success } : { ...told, status: TestStatus.Failed, failureMessage: String(failure.message ?? failure) });
      if (failure !== undefined && bail) break;
    }
    return tests;
  }

  async dryRun({ coverageAnalysis }) {
    Object.assign(stryker, { activeMutant: undefined, hitCount: undefined, hitLimit: undefined, mutantCoverage: undefined });
    const tests = await this.#run(undefined, false);
    return { status: DryRunStatus.Complete, tests, mutantCoverage: coverageAnalysis === 'off' ? undefined : stryker.mutantCoverage };
  }

  async mutantRun({ activeMutant, testFilter, disableBail, hitLimit }) {
    Object.assign(stryker, { activeMutant: activeMutant.id, hitLimit, hitCount: hitLimit ? 0 : undefined });
    const wanted = testFilter && new Set(testFilter);
    try {
      const tests = await this.#run(wanted, !disableBail);
      return toMutantRunResult(determineHitLimitReached(stryker.hitCount, hitLimit) ?? { status: DryRunStatus.Complete, tests });
    } catch (thrown) {
      // Code that cannot even be loaded is noticed by every test.
      const all = { id: 'loading', name: 'loading', timeSpentMs: 0, status: TestStatus.Failed, failureMessage: String(thrown?.message ?? thrown) };
      return toMutantRunResult({ status: DryRunStatus.Complete, tests: [all] });
    }
  }
}

const make = (options) => new InOneProcess(options);
make.inject = ['options'];

export const strykerPlugins = [declareFactoryPlugin(PluginKind.TestRunner, 'in-one-process', make)];
export const strykerValidationSchema = {
  properties: {
    inOneProcess: {
      type: 'object',
      required: ['testFiles'],
      additionalProperties: false,
      properties: { testFiles: { type: 'array', minItems: 1, items: { type: 'string' } } },
    },
  },
};
