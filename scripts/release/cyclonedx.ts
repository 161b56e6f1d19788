import type { ShippedWork } from './shipped';

/** Bill of materials after CycloneDX 1.6. Without day and serial number: the same build gives the same bytes. */

interface LockEntry {
  integrity?: string;
  dependencies?: Record<string, string>;
}
export interface Lock {
  packages: Record<string, LockEntry>;
}

export interface Product {
  name: string;
  version: string;
  description: string;
  license: string;
}

/** Package address after the purl specification: the sign @ of a scope is written %40. */
export const purlOf = (name: string, version: string): string => `pkg:npm/${name.replace('@', '%40')}@${version}`;

/** Digest of the package's archive, as package-lock.json holds it. */
function hashes(integrity: string | undefined): object[] {
  const digest = integrity?.match(/^sha512-(.+)$/)?.[1];
  return digest === undefined ? [] : [{ alg: 'SHA-512', content: Buffer.from(digest, 'base64').toString('hex') }];
}

const licences = (licence: string): object[] => {
  if (/^\(.* (AND|OR) .*\)$/.test(licence)) return [{ expression: licence }];
  return [{ license: /^[\w.-]+$/.test(licence) ? { id: licence } : { name: licence } }];
};

function component(work: ShippedWork, lock: Lock): object {
  const [scope, short] = work.name.startsWith('@') ? work.name.split('/') : [undefined, work.name];
  return {
    type: 'library',
    'bom-ref': purlOf(work.name, work.version),
    ...(scope === undefined ? {} : { group: scope }),
    name: short,
    version: work.version,
    scope: 'required',
    hashes: hashes(lock.packages[`node_modules/${work.name}`]?.integrity),
    licenses: licences(work.licence),
    purl: purlOf(work.name, work.version),
    properties: [
      ...work.bundledIn.map((bundle) => ({ name: 'joulewright:bundled-in', value: `dist/${bundle}` })),
      ...work.files.map((file) => ({ name: 'joulewright:file-unchanged', value: `dist/${file}` })),
    ],
  };
}

/** Bill of materials of what is shipped. */
export function billOfMaterials(product: Product, works: readonly ShippedWork[], lock: Lock): object {
  const ref = new Map(works.map(({ name, version }) => [name, purlOf(name, version)]));
  const needs = (name: string): string[] => Object.keys(lock.packages[`node_modules/${name}`]?.dependencies ?? {}).flatMap((other) => ref.get(other) ?? []).sort();
  const needed = new Set(works.flatMap(({ name }) => needs(name)));
  const own = purlOf(product.name, product.version);
  return {
    $schema: 'http://cyclonedx.org/schema/bom-1.6.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.6',
    version: 1,
    metadata: {
      component: {
        type: 'application', 'bom-ref': own, name: product.name, version: product.version, description: product.description,
        licenses: [{ license: { id: product.license } }], purl: own,
      },
    },
    components: works.map((work) => component(work, lock)),
    dependencies: [
      { ref: own, dependsOn: [...ref.values()].filter((each) => !needed.has(each)) },
      ...works.map(({ name }) => ({ ref: ref.get(name)!, dependsOn: needs(name) })),
    ],
  };
}
