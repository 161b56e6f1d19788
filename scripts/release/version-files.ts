/** The places where our version stands, as texts: read, compared and set without touching a file. */
export const VERSION_FILES = ['package.json', 'package-lock.json', 'src/core/version.ts', 'manifest.xml', 'CHANGELOG.md'] as const;

export type VersionFile = (typeof VERSION_FILES)[number];
export type VersionTexts = Readonly<Record<VersionFile, string>>;

const NUMBERS = /^(0|[1-9]\d{0,3})\.(0|[1-9]\d{0,3})\.(0|[1-9]\d{0,3})$/;

export function numbersOf(version: string): readonly [number, number, number] {
  const found = version.match(NUMBERS);
  if (!found) throw new Error(`a version is three whole numbers like 0.2.0, got ${version}`);
  return [Number(found[1]), Number(found[2]), Number(found[3])];
}

/**
 * Version for Excel. Office passes over manifests below 1.0 without a word, therefore the first number is raised by one for every version of
 * ours; order is kept.
 */
export function manifestVersion(version: string): string {
  const [major, minor, patch] = numbersOf(version);
  return `${major + 1}.${minor}.${patch}.0`;
}

export function isLater(version: string, than: string): boolean {
  const [a, b] = [numbersOf(version), numbersOf(than)];
  const first = a.findIndex((number, place) => number !== b[place]);
  return first >= 0 && a[first]! > b[first]!;
}

interface Place {
  read(text: string): string[];
  write(text: string, version: string): string;
}

/** A place told by its pattern; the first group is what comes before the version. */
const pattern = (shape: RegExp): Place => ({
  read: (text) => (shape.exec(text) ?? []).slice(2),
  write: (text, version) => text.replace(shape, (_, before: string) => before + version),
});

interface PackageText {
  version: string;
  packages?: { '': { version: string } };
}

/** npm's own files, in the form in which npm writes them. */
const npmFile: Place = {
  read: (text) => {
    const { version, packages } = JSON.parse(text) as PackageText;
    return packages === undefined ? [version] : [version, packages[''].version];
  },
  write: (text, version) => {
    const content = JSON.parse(text) as PackageText;
    content.version = version;
    if (content.packages !== undefined) content.packages[''].version = version;
    return `${JSON.stringify(content, null, 2)}\n`;
  },
};

const PLACES: Readonly<Record<VersionFile, Place>> = {
  'package.json': npmFile,
  'package-lock.json': npmFile,
  'src/core/version.ts': pattern(/(export const version = ')([^']+)(?=')/),
  'manifest.xml': pattern(/(<Version>)([^<]+)(?=<)/),
  // The newest release stands first.
  'CHANGELOG.md': pattern(/(^## \[)(\d[^\]]*)(?=\] - \d{4}-\d{2}-\d{2}$)/m),
};

const ownVersion = (texts: VersionTexts): string => npmFile.read(texts['package.json'])[0]!;

/** Files whose version is not that of package.json, in words. */
export function versionFaults(texts: VersionTexts): string[] {
  const version = ownVersion(texts);
  return VERSION_FILES.flatMap((file) => {
    const here = PLACES[file].read(texts[file]);
    if (here.length === 0) return [`${file}: the version was not found`];
    const wanted = file === 'manifest.xml' ? manifestVersion(version) : version;
    return here.filter((each) => each !== wanted).map((each) => `${file}: ${each} in place of ${wanted}`);
  });
}

const UNRELEASED = '## [Unreleased]\n';

/** All files with another version and its day. */
export function withVersion(texts: VersionTexts, version: string, day: string): VersionTexts {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || new Date(`${day}T00:00:00Z`).toISOString().slice(0, 10) !== day) throw new Error(`a day is like 2026-11-25, got ${day}`);
  const now = ownVersion(texts);
  if (!isLater(version, now)) throw new Error(`the new version must be later than ${now}, got ${version}`);
  const faults = versionFaults(texts);
  if (faults.length > 0) throw new Error(faults.join('; '));
  if (!texts['CHANGELOG.md'].includes(UNRELEASED)) throw new Error('CHANGELOG.md has no heading [Unreleased]');
  const set = (file: VersionFile, to = version): string => PLACES[file].write(texts[file], to);
  return {
    'package.json': set('package.json'),
    'package-lock.json': set('package-lock.json'),
    'src/core/version.ts': set('src/core/version.ts').replace(/(versionDate = ')[^']+(?=')/, (_, before: string) => `${before}${day}`),
    'manifest.xml': set('manifest.xml', manifestVersion(version)),
    'CHANGELOG.md': texts['CHANGELOG.md'].replace(UNRELEASED, `${UNRELEASED}\n## [${version}] - ${day}\n`),
  };
}
