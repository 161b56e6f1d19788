import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { filesBelow } from '../../scripts/release/shipped';
import { version } from '../../src/core/version';
import { inDist, root } from '../support/built';

jest.setTimeout(180_000);

/** The package as people get it: packed here, installed into an empty folder without any network and without scripts. */
let folder: string;
let tarball: string;
let installed: string;

/** npm of the test run hands its own settings down; they would lead the inner npm into our checkout. */
const clean = (): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name))),
  npm_config_cache: path.join(folder, 'cache'), npm_config_offline: 'true', npm_config_audit: 'false', npm_config_fund: 'false', npm_config_update_notifier: 'false',
});
const windows = process.platform === 'win32';
const tool = (program: string, args: readonly string[], cwd: string) => spawnSync(program, args, { cwd, encoding: 'utf8', env: clean(), shell: windows });

beforeAll(() => {
  folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-package-'));
  installed = path.join(folder, 'place');
  mkdirSync(installed);
  inDist();
  // prepack would build anew under the other tests; it is looked at below.
  const packed = tool('npm', ['pack', '--ignore-scripts', '--silent', '--pack-destination', folder], root);
  expect(packed).toMatchObject({ status: 0 });
  tarball = path.join(folder, `joulewright-${version}.tgz`);
  expect(tool('npm', ['install', '--ignore-scripts', '--omit=dev', '--silent', tarball], installed)).toMatchObject({ status: 0, stderr: '' });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const inPackage = (...parts: string[]): string => path.join(installed, 'node_modules/joulewright', ...parts);

describe('npx in a folder where the package is installed', () => {
  const npx = (...args: string[]) => tool('npx', ['--no-install', 'joulewright', ...args], installed);
  test('--version', () => expect(npx('--version')).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' }));
  test('evaluate', () => {
    expect(npx('evaluate', windows ? '"=JW.CABLE_WITHSTAND(143,70)"' : '=JW.CABLE_WITHSTAND(143,70)')).toMatchObject({ status: 0, stdout: '100200100\n', stderr: '' });
  });
  test('recompute and check a workbook', () => {
    copyFileSync(inPackage('sample-workbooks/cable-schedule.xlsx'), path.join(installed, 'a.xlsx'));
    expect(npx('recompute', 'a.xlsx', '-o', 'b.xlsx')).toMatchObject({ status: 0 });
    expect(readFileSync(path.join(installed, 'b.xlsx')).length).toBeGreaterThan(1000);
    expect(npx('check', 'b.xlsx')).toMatchObject({ status: 0, stdout: expect.stringContaining('b.xlsx') });
  });
  test('a fault is told in words, with status 2', () => {
    expect(npx('recompute', 'none.xlsx', '-o', 'c.xlsx')).toMatchObject({ status: 2, stdout: '', stderr: expect.stringMatching(/^joulewright: .+\n$/) });
  });
});

test('npx straight from the packed file, in an empty folder', () => {
  const empty = path.join(folder, 'empty');
  mkdirSync(empty);
  expect(tool('npx', ['--yes', `--package=${tarball}`, 'joulewright', '--version'], empty)).toMatchObject({ status: 0, stdout: `${version}\n` });
  expect(readdirSync(empty)).toEqual([]);
});

test('nothing else is pulled in: no dependency, few megabytes', () => {
  expect(readdirSync(path.join(installed, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['joulewright']);
  const { dependencies, optionalDependencies, peerDependencies, scripts } = JSON.parse(readFileSync(inPackage('package.json'), 'utf8')) as Record<string, Record<string, string> | undefined>;
  expect([dependencies, optionalDependencies, peerDependencies]).toEqual([undefined, undefined, undefined]);
  // Nothing of ours runs at its installation.
  for (const name of ['preinstall', 'install', 'postinstall', 'prepare']) expect(scripts).not.toHaveProperty(name);
  const bytes = filesBelow(inPackage()).reduce((sum, name) => sum + statSync(inPackage(name)).size, 0);
  expect(bytes).toBeLessThan(30e6);
  expect(statSync(tarball).size).toBeLessThan(8e6);
});

test('it holds what is needed and nothing of the workshop', () => {
  const files = filesBelow(inPackage());
  for (const name of ['bin/joulewright.mjs', 'dist/cli/joulewright.cjs', 'dist/excel/functions.json', 'dist/workbench/index.html', 'dist/workbench/vendor/LICENSE.owl.txt', 'manifest.xml', 'LICENSE', 'README.md',
    'CHANGELOG.md', 'docs/handbook.md', 'docs/licences.md', 'docs/sbom.cdx.json', 'docs/check-findings.schema.json', 'docs/hosting.md', 'docs/many-books.md', 'scripts/release/host.mjs']) expect(files).toContain(name);
  expect(files.filter((name) => /\.map$|^(src|tests|bench|build)\/|^dist\/hosted\/|(^|\/)\./.test(name))).toEqual([]);
  for (const name of files.filter((each) => /\.(cjs|mjs|js|json|html|css|md|txt|xml)$/.test(each) && !each.startsWith('dist/excel/office/'))) {
    expect([name, readFileSync(inPackage(name), 'utf8').includes(root)]).toEqual([name, false]);
  }
});

test('out of the package, without the sources, an add-in for a host is made', () => {
  const made = tool(process.execPath, [inPackage('scripts/release/host.mjs'), 'https://tools.example.org/jw', '-o', 'hosted'], installed);
  expect(made).toMatchObject({ status: 0, stderr: '' });
  expect(readFileSync(path.join(installed, 'hosted/manifest.xml'), 'utf8')).toContain('https://tools.example.org/jw/taskpane.html');
});

test('links of the README and of the guides lead to files of the package', () => {
  let links = 0;
  for (const page of ['README.md', 'docs/hosting.md', 'docs/many-books.md']) {
    for (const [, link] of readFileSync(inPackage(page), 'utf8').matchAll(/\]\(((?!https?:|#)[^)#]+)[^)]*\)/g)) {
      links += 1;
      if (link === 'DEVELOPERS.md') continue;
      expect([page, link, existsSync(path.join(path.dirname(inPackage(page)), link!))]).toEqual([page, link, true]);
    }
  }
  expect(links).toBeGreaterThan(0);
});

test('packing builds first, where dist/ is not what the sources say', () => {
  const { scripts } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
  expect(scripts['prepack']).toBe('node scripts/release/prepack.mjs');
  const text = readFileSync(path.join(root, 'scripts/release/prepack.mjs'), 'utf8');
  expect(text).toMatch(/await ensureInstalled\(\);\nawait ensureBuilt\(\);/);
  // It loads, and knows the build's own rule.
  expect(execFileSync(process.execPath, ['--input-type=module', '-e', `import { ensureBuilt } from 'file://${path.join(root, 'scripts/lib/build.mjs').split(path.sep).join('/')}'; console.log(typeof ensureBuilt);`], { encoding: 'utf8' })).toBe('function\n');
});
