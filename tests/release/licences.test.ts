import { readFileSync } from 'node:fs';
import path from 'node:path';
import { Spec, Validation } from '@cyclonedx/cyclonedx-library';
import { type Lock, type Product, billOfMaterials } from '../../scripts/release/cyclonedx';
import { licencesPage } from '../../scripts/release/licences-page';
import { Shipped, type ShippedWork, filesBelow, licenceFaults, packagesOfMap } from '../../scripts/release/shipped';
import { inDist, root } from '../support/built';

const read = (file: string): string => readFileSync(path.join(root, file), 'utf8').replace(/\r\n/g, '\n');
const works = new Shipped(root).works();
const work = (name: string): ShippedWork => works.find((each) => each.name === name)!;
const bill = (of: readonly ShippedWork[] = works): string =>
  `${JSON.stringify(billOfMaterials(JSON.parse(read('package.json')) as Product, of, JSON.parse(read('package-lock.json')) as Lock), null, 2)}\n`;

describe('bill of materials and page of licences', () => {
  test('are what dist/ holds', () => {
    expect(read('docs/sbom.cdx.json')).toBe(bill());
    expect(read('docs/licences.md')).toBe(licencesPage(works, read('scripts/release/font-awesome-notice.txt')));
  });
  test('say the same when they are made once more, and hold no day and no number by chance', () => {
    const again = new Shipped(root).works();
    expect(bill(again)).toBe(bill());
    expect(Object.keys(JSON.parse(bill()))).not.toContain('serialNumber');
    expect(JSON.parse(bill()).metadata).not.toHaveProperty('timestamp');
  });
  test('fit the published schema of CycloneDX 1.6, and the schema refuses what does not', async () => {
    const validator = new Validation.JsonStrictValidator(Spec.Version.v1dot6);
    expect(await validator.validate(bill())).toBeNull();
    expect(await validator.validate(bill().replace('"type": "application"', '"type": "addin"'))).not.toBeNull();
    expect(await validator.validate(bill().replace('"id": "MIT"', '"id": "MTI"'))).not.toBeNull();
  });
  test('every reference leads to a component, and the digests are those of package-lock.json', () => {
    const data = JSON.parse(bill());
    const refs = data.components.map((each: { 'bom-ref': string }) => each['bom-ref']);
    expect(new Set(refs).size).toBe(works.length);
    for (const { dependsOn } of data.dependencies) for (const ref of dependsOn) expect(refs).toContain(ref);
    for (const { hashes } of data.components) expect(hashes[0].content).toMatch(/^[0-9a-f]{128}$/);
    const integrity = JSON.parse(read('package-lock.json')).packages['node_modules/@odoo/owl'].integrity as string;
    expect(data.components.find(({ name }: { name: string }) => name === 'owl').hashes[0].content).toBe(Buffer.from(integrity.slice(7), 'base64').toString('hex'));
  });
  test.each(['docs/sbom.cdx.json', 'docs/licences.md', 'package-lock.json'])('%s names no registry and no place to load from', (file) => {
    expect(read(file)).not.toMatch(/registry\.|"resolved"|\.tgz|npmjs|downloadLocation/);
  });
  test('every permission to copy stands on the page', () => {
    const page = read('docs/licences.md');
    for (const { name, version, notice, bundledIn } of works) {
      expect(page).toContain(`| ${name} | ${version} |`);
      if (bundledIn.length > 0) expect(page).toContain(notice);
    }
    expect(page).toContain('SIL OPEN FONT LICENSE Version 1.1');
    for (const host of ['excel', 'workbench']) expect(readFileSync(inDist(host, 'licences.md'), 'utf8').replace(/\r\n/g, '\n')).toBe(page);
  });
});

describe('what may be shipped', () => {
  test('nothing is against its licence', () => expect(licenceFaults(works)).toEqual([]));
  test.each<[string, Partial<ShippedWork>, RegExp]>([
    ['LGPL inside a bundle', { licence: 'LGPL-3.0-only', bundledIn: ['workbench'] }, /may not stand inside a bundle: workbench/],
    ['GPL beside it', { licence: 'GPL-3.0-only', bundledIn: [], files: ['workbench/vendor/x.js'] }, /may not be copied/],
    ['unknown licence', { licence: 'UNLICENSED' }, /may not stand inside/],
    ['no notice', { notice: '' }, /holds no notice/],
  ])('%s is found', (_what, change, words) => {
    expect(licenceFaults([{ ...work('complex.js'), ...change }]).join('\n')).toMatch(words);
  });
  test('packages of a bundle are read from its map', () => {
    const map = (...sources: string[]): string => JSON.stringify({ sources });
    expect(packagesOfMap(map('webpack://x/./src/a.ts', 'webpack://x/./node_modules/@a/b/c.js', 'webpack://x/./node_modules/d/e/f.js', 'webpack://x/webpack/runtime/x'))).toEqual(['@a/b', 'd', 'webpack']);
    expect(() => packagesOfMap(map('webpack://x/./node_modules/a/node_modules/b/c.js'))).toThrow(/two versions/);
  });
});

describe('LGPL parts are apart and replaceable', () => {
  const LGPL = ['@odoo/o-spreadsheet', '@odoo/owl'];
  const page = readFileSync(inDist('workbench/index.html'), 'utf8');
  test('they stand in no bundle', () => {
    for (const name of LGPL) expect(work(name)).toMatchObject({ licence: expect.stringMatching(/^LGPL-3.0/), bundledIn: [] });
    expect(works.filter(({ licence }) => /GPL/.test(licence)).map(({ name }) => name)).toEqual(LGPL);
    for (const host of ['cli', 'excel', 'workbench']) {
      for (const map of filesBelow(inDist(host)).filter((name) => name.endsWith('js.map'))) expect(readFileSync(inDist(host, map), 'utf8')).not.toMatch(/node_modules\/@odoo\//);
    }
  });
  test.each([
    ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.iife.js'], ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.xml'], ['@odoo/o-spreadsheet', 'dist/o_spreadsheet.css'], ['@odoo/owl', 'dist/owl.iife.js'],
  ])('%s: %s is the file of its package, byte for byte', (name, file) => {
    const shipped = `workbench/vendor/${path.basename(file)}`;
    expect(readFileSync(inDist(shipped)).equals(readFileSync(path.join(root, 'node_modules', name, file)))).toBe(true);
    expect(work(name).files).toContain(shipped);
  });
  test('the page loads them as files of their own, before our program and without a digest that would tie it to one version', () => {
    const scripts = Array.from(page.matchAll(/<script\b([^>]*)>/g), (match) => match[1]!);
    expect(scripts.map((attributes) => /src="([^"]+)"/.exec(attributes)?.[1])).toEqual(['vendor/owl.iife.js', 'vendor/o_spreadsheet.iife.js', 'app.js']);
    expect(page).not.toMatch(/integrity=/);
    expect(page).toContain('href="vendor/o_spreadsheet.css"');
  });
  test('licence texts and a notice with their versions stand beside them, and the page leads there', () => {
    for (const [name, short] of [['@odoo/o-spreadsheet', 'o-spreadsheet'], ['@odoo/owl', 'owl']] as const) {
      const text = readFileSync(inDist(`workbench/vendor/LICENSE.${short}.txt`), 'utf8');
      expect(text).toBe(readFileSync(path.join(root, 'node_modules', name, 'LICENSE'), 'utf8'));
      // The LGPL asks for the text of the GPL as well.
      expect(text).toMatch(/GNU LESSER GENERAL PUBLIC LICENSE\n\s+Version 3[\s\S]+ {2}GNU GENERAL PUBLIC LICENSE\n\s+Version 3/);
    }
    const notice = readFileSync(inDist('workbench/vendor/NOTICE.txt'), 'utf8');
    expect(notice).toContain(`o-spreadsheet ${work('@odoo/o-spreadsheet').version},`);
    expect(notice).toContain(`Owl ${work('@odoo/owl').version},`);
    expect(page).toContain('href="vendor/NOTICE.txt"');
  });
});
