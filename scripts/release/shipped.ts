import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';

/**
 * What of others is in dist/: told by what the build left there, not by what package.json asks for. A tree of dependencies would list
 * what the bundler dropped and miss what is copied as files of its own.
 */
export interface ShippedWork {
  readonly name: string;
  readonly version: string;
  /** SPDX expression, or the name of a licence that has none. */
  readonly licence: string;
  /** Bundles whose program holds parts of it: "cli", "excel", "workbench". */
  readonly bundledIn: readonly string[];
  /** Files of dist/ that are its own files, byte for byte. */
  readonly files: readonly string[];
  /** Its notice, as it stands in its package. */
  readonly notice: string;
}

export const BUNDLES = ['cli', 'excel', 'workbench'] as const;
/** Folders of dist/ that hold files of others, unchanged. */
export const COPIED = ['excel/office', 'workbench/vendor'] as const;
/** Texts about the works of others that stand beside them. */
const ABOUT = /(^|\/)(LICENSE[^/]*|NOTICE\.txt)$/;

const slashed = (file: string): string => file.split(path.sep).join('/');

export const filesBelow = (folder: string): string[] =>
  !existsSync(folder) ? [] : readdirSync(folder, { recursive: true }).map((name) => slashed(String(name))).filter((name) => statSync(path.join(folder, name)).isFile()).sort();

/** Packages whose modules stand in a source map; the bundler's own runtime stands in every bundle. */
export function packagesOfMap(text: string): string[] {
  const { sources } = JSON.parse(text) as { sources: string[] };
  const names = sources.map((source) => {
    if (source.split('node_modules/').length > 2) throw new Error(`${source}: two versions of one package in a bundle; only the first would be listed`);
    const inPackage = source.match(/.*node_modules\/((?:@[^/]+\/)?[^/]+)\//);
    return inPackage?.[1] ?? (/webpack\/(bootstrap|runtime|startup)/.test(source) ? 'webpack' : undefined);
  });
  return [...new Set(names.filter((name) => name !== undefined))];
}

interface PackageFacts {
  version: string;
  license?: string;
  licenses?: { type: string }[];
}

/** Licences of packages whose package.json names none by its SPDX sign. */
const NAMED: Readonly<Record<string, string>> = { '@microsoft/office-js': 'Microsoft Office JavaScript API licence' };

export class Shipped {
  constructor(private readonly root: string) {}

  private modules = (...parts: string[]): string => path.join(this.root, 'node_modules', ...parts);
  private dist = (...parts: string[]): string => path.join(this.root, 'dist', ...parts);

  /** Bundles by package. Throws where dist/ is not built. */
  private bundled(): Map<string, Set<string>> {
    const found = new Map<string, Set<string>>();
    for (const bundle of BUNDLES) {
      const maps = filesBelow(this.dist(bundle)).filter((name) => /\.c?js\.map$/.test(name));
      if (maps.length === 0) throw new Error(`dist/${bundle} holds no source map: run npm run build first`);
      for (const map of maps) for (const name of packagesOfMap(readFileSync(this.dist(bundle, map), 'utf8'))) found.set(name, (found.get(name) ?? new Set()).add(bundle));
    }
    return found;
  }

  /** Copied files by the package that holds the same bytes under the same name. Throws for a file that no package holds. */
  private copied(): Map<string, string[]> {
    const { devDependencies = {}, dependencies = {} } = JSON.parse(readFileSync(path.join(this.root, 'package.json'), 'utf8')) as { devDependencies?: object; dependencies?: object };
    const packages = Object.keys({ ...dependencies, ...devDependencies });
    const found = new Map<string, string[]>();
    for (const folder of COPIED) {
      for (const file of filesBelow(this.dist(folder))) {
        if (ABOUT.test(file)) continue;
        const bytes = readFileSync(this.dist(folder, file));
        const owner = packages.find((name) => this.holds(name, path.basename(file), bytes));
        if (owner === undefined) throw new Error(`dist/${folder}/${file} is not a file of an installed package as it is`);
        found.set(owner, [...(found.get(owner) ?? []), `${folder}/${file}`]);
      }
    }
    return found;
  }

  private places = new Map<string, Map<string, string[]>>();
  private holds(name: string, basename: string, bytes: Buffer): boolean {
    if (!this.places.has(name)) {
      const byName = new Map<string, string[]>();
      for (const file of filesBelow(this.modules(name))) byName.set(path.basename(file), [...(byName.get(path.basename(file)) ?? []), file]);
      this.places.set(name, byName);
    }
    return (this.places.get(name)!.get(basename) ?? []).some((file) => readFileSync(this.modules(name, file)).equals(bytes));
  }

  private noticeOf(name: string): string {
    const file = readdirSync(this.modules(name)).find((each) => /^licen[cs]e(\.\w+)?$/i.test(each));
    return file === undefined ? '' : readFileSync(this.modules(name, file), 'utf8').replace(/\r\n/g, '\n').trim();
  }

  /** Every work of others in dist/, by name. */
  works(): ShippedWork[] {
    const [bundled, copied] = [this.bundled(), this.copied()];
    return [...new Set([...bundled.keys(), ...copied.keys()])].sort().map((name) => {
      const facts = JSON.parse(readFileSync(this.modules(name, 'package.json'), 'utf8')) as PackageFacts;
      const licence = NAMED[name] ?? facts.license ?? facts.licenses?.map(({ type }) => type).join(' OR ');
      if (licence === undefined) throw new Error(`${name} names no licence`);
      return {
        name, licence, version: facts.version, notice: this.noticeOf(name), files: copied.get(name) ?? [],
        bundledIn: BUNDLES.filter((bundle) => bundled.get(name)?.has(bundle)),
      };
    });
  }
}

/** Licences under which a work may stand inside our bundles. */
const BUNDLED_LICENCES = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'Apache-2.0'];
/** Licences under which files may be copied as they are. */
const COPIED_LICENCES = [...BUNDLED_LICENCES, 'LGPL-3.0-only', 'LGPL-3.0-or-later', '(OFL-1.1 AND MIT)', ...Object.values(NAMED)];

/** What may not be shipped as it is, in words. */
export function licenceFaults(works: readonly ShippedWork[]): string[] {
  return works.flatMap(({ name, licence, bundledIn, files, notice }) => {
    const faults: string[] = [];
    if (bundledIn.length > 0 && !BUNDLED_LICENCES.includes(licence)) faults.push(`${name} (${licence}) may not stand inside a bundle: ${bundledIn.join(', ')}`);
    if (files.length > 0 && !COPIED_LICENCES.includes(licence)) faults.push(`${name} (${licence}) may not be copied into dist/`);
    if (bundledIn.length > 0 && notice === '') faults.push(`${name} stands inside a bundle and its package holds no notice`);
    return faults;
  });
}
