import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { VERSION_FILES, type VersionFile, type VersionTexts, isLater, manifestVersion, numbersOf, versionFaults, withVersion } from '../../scripts/release/version-files';
import { version, versionDate } from '../../src/core/version';
import released from '../fixtures/released-functions.json';
import { checkManifest } from '../support/check-manifest';
import { run } from '../support/run';
import { joulewright } from '../support/terminal';

const root = path.resolve(__dirname, '../..');
const read = (file: string): string => readFileSync(path.join(root, file), 'utf8');
const texts = Object.fromEntries(VERSION_FILES.map((file) => [file, read(file)])) as unknown as VersionTexts;

describe('one version', () => {
  test('stands in every file that holds it', () => {
    expect(versionFaults(texts)).toEqual([]);
    expect(JSON.parse(texts['package.json']).version).toBe(version);
    expect(texts['CHANGELOG.md']).toContain(`## [${version}] - ${versionDate}`);
  });
  test('shows where people read it: command line, cell, handbook', async () => {
    expect((await joulewright(['--version'])).out).toEqual([version]);
    expect(run('CORE_VERSION')).toContain(version);
    expect(read('docs/handbook.md')).toContain(`core ${version}`);
    expect(read('src/sheet/handbook/generated/handbook.html')).toContain(`core ${version}, ${versionDate}`);
  });
  test('in bill of materials and released functions', () => {
    expect(JSON.parse(read('docs/sbom.cdx.json')).metadata.component.version).toBe(version);
    expect(released.version).toBe(version);
  });
  test.each<[VersionFile, string, RegExp]>([
    ['package-lock.json', `"version": "${version}"`, /package-lock.json: 9\.9\.9 in place of/],
    ['src/core/version.ts', `'${version}'`, /version.ts: 9\.9\.9 in place/],
    ['manifest.xml', manifestVersion(version), /manifest.xml: 9\.9\.9 in place/],
    ['CHANGELOG.md', `[${version}]`, /CHANGELOG.md: 9\.9\.9 in place/],
  ])('another one in %s is found', (file, text, words) => {
    const other = texts[file].replace(text, text.replace(/[\d.]+\d/, '9.9.9'));
    expect(other).not.toBe(texts[file]);
    expect(versionFaults({ ...texts, [file]: other }).join('\n')).toMatch(words);
  });
  test('a file without a version is found', () => {
    expect(versionFaults({ ...texts, 'CHANGELOG.md': '# Changelog\n' })).toEqual(['CHANGELOG.md: the version was not found']);
  });
});

describe('the next version', () => {
  const next = withVersion(texts, '1.2.3', '2027-01-31');
  test('stands everywhere afterwards, and nothing else has changed', () => {
    expect(versionFaults(next)).toEqual([]);
    expect(next['src/core/version.ts']).toContain("versionDate = '2027-01-31'");
    expect(next['CHANGELOG.md']).toContain('## [Unreleased]\n\n## [1.2.3] - 2027-01-31\n');
    for (const file of ['package.json', 'package-lock.json', 'manifest.xml'] as const) {
      const lines = next[file].split('\n').filter((line, place) => line !== texts[file].split('\n')[place]);
      expect([file, lines.length]).toEqual([file, file === 'package-lock.json' ? 2 : 1]);
    }
  });
  test('its manifest is sound', () => {
    expect(checkManifest(next['manifest.xml'])).toEqual([]);
    expect(next['manifest.xml']).toContain('<Version>2.2.3.0</Version>');
  });
  test.each<[string, string, RegExp]>([
    ['0.1', '2027-01-31', /three whole numbers/], ['v0.2.0', '2027-01-31', /three whole numbers/], ['0.2.0-rc.1', '2027-01-31', /three whole numbers/],
    ['01.2.3', '2027-01-31', /three whole numbers/], [version, '2027-01-31', /must be later/], ['0.0.9', '2027-01-31', /must be later/],
    ['1.2.3', '2027-02-30', /a day is like/], ['1.2.3', 'today', /a day is like/],
  ])('%s of %s is refused in words', (asked, day, words) => {
    expect(() => withVersion(texts, asked, day)).toThrow(words);
  });
  test('files that differ beforehand, or a changelog without its heading, are refused', () => {
    expect(() => withVersion({ ...texts, 'manifest.xml': texts['manifest.xml'].replace(manifestVersion(version), '1.0.0.0') }, '1.2.3', '2027-01-31')).toThrow(/manifest.xml: 1.0.0.0 in place of/);
    expect(() => withVersion({ ...texts, 'CHANGELOG.md': texts['CHANGELOG.md'].replace('## [Unreleased]', '') }, '1.2.3', '2027-01-31')).toThrow(/Unreleased/);
  });
  test('the command refuses in words and writes nothing', () => {
    const refused = (...args: string[]): { status: number; stderr: string } => {
      try {
        execFileSync(process.execPath, ['--import', 'tsx', 'scripts/release/release-version.ts', ...args], { cwd: root, encoding: 'utf8', stdio: 'pipe' });
        throw new Error('it was taken');
      } catch (error) {
        return error as { status: number; stderr: string };
      }
    };
    expect(refused()).toMatchObject({ status: 2, stderr: expect.stringMatching(/^release-version: one version is needed.*\n$/) });
    expect(refused(version)).toMatchObject({ status: 2, stderr: expect.stringMatching(/^release-version: the new version must be later than .*\n$/) });
    for (const file of VERSION_FILES) expect(read(file)).toBe(texts[file]);
  }, 60_000);
});

test('order of versions is that of their numbers, and the manifest keeps it', () => {
  const order = ['0.0.9', '0.1.0', '0.1.10', '0.2.0', '0.10.0', '1.0.0', '1.0.1', '10.0.0'];
  const weight = (text: string): number => text.split('.').reduce((sum, part) => sum * 10_000 + Number(part), 0);
  order.forEach((a, i) => order.forEach((b, j) => {
    expect([a, b, isLater(a, b)]).toEqual([a, b, i > j]);
    expect(weight(manifestVersion(a)) > weight(manifestVersion(b))).toBe(i > j);
  }));
  expect(numbersOf('10.0.3')).toEqual([10, 0, 3]);
});
