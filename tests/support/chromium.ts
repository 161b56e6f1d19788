import { execFile } from 'node:child_process';
import { existsSync, promises as files } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { type Browser, type BrowserContextOptions, type Page, chromium } from 'playwright-core';

const run = promisify(execFile);
/** The checkout: tests and benchmarks are started in it. `__dirname` is not known where this file is loaded as a module. */
const root = process.cwd();

const packageVersion = async (): Promise<string> =>
  (JSON.parse(await files.readFile(path.join(root, 'node_modules/@sparticuz/chromium/package.json'), 'utf8')) as { version: string }).version;

/**
 * Real Chromium for tests, from an npm package: nothing has to be installed by the system's package manager.
 * The package's own default arguments are not used, for they switch web security off.
 */
const FLAGS = [
  '--disable-background-networking', '--disable-component-update', '--disable-sync', '--disable-quic', '--disable-domain-reliability',
  '--no-first-run', '--no-default-browser-check', '--no-pings', '--disable-webgl', '--font-render-hinting=none',
  // Tests talk to this machine only: every other name fails to resolve.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
];

interface Unpacked {
  executable: string;
  /** Libraries that come with the package, for systems that lack them. */
  libraries: string;
  /** Settings that name the fonts of the system and, where it has none, those of the package. */
  fonts: string;
}

/** The package's own settings name folders of the service that it was made for. */
const fontSettings = (folder: string): string => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <dir>/usr/local/share/fonts</dir>
  <dir>${folder}/fonts</dir>
  <cachedir>${folder}/font-cache</cachedir>
</fontconfig>
`;

/**
 * Unpacks the package into a folder of its own, once for each version. The work is done in a folder beside and renamed,
 * so that two test runs at once never see half a browser.
 */
async function unpacked(): Promise<Unpacked> {
  const home = path.join(os.tmpdir(), `joulewright-chromium-${await packageVersion()}-${os.userInfo().uid}`);
  const facts = { executable: path.join(home, 'chromium'), libraries: path.join(home, 'al2023', 'lib'), fonts: path.join(home, 'fonts.conf') };
  if (existsSync(facts.fonts)) return facts;
  const work = await files.mkdtemp(`${home}.`);
  // The package unpacks into the temporary folder and decides by this variable whether its libraries come along.
  await run(process.execPath, ['--input-type=module', '-e', "import c from '@sparticuz/chromium'; await c.executablePath();"], {
    cwd: root,
    env: { ...process.env, TMPDIR: work, AWS_LAMBDA_JS_RUNTIME: 'nodejs20.x' },
  });
  await files.writeFile(path.join(work, 'fonts.conf'), fontSettings(home));
  await files.rename(work, home).catch(async (error: NodeJS.ErrnoException) => {
    await files.rm(work, { recursive: true, force: true });
    if (!existsSync(facts.fonts)) throw error;
  });
  return facts;
}

type Environment = Record<string, string>;
const ownEnvironment = (): Environment => Object.fromEntries(Object.entries(process.env).filter((pair): pair is [string, string] => pair[1] !== undefined));

async function program(): Promise<{ executable: string; env: Environment }> {
  const { executable, libraries, fonts } = await unpacked();
  const env = { ...ownEnvironment(), FONTCONFIG_FILE: fonts };
  const starts = await run(executable, ['--version'], { env }).then(() => true, () => false);
  return { executable, env: starts ? env : { ...env, LD_LIBRARY_PATH: [libraries, process.env['LD_LIBRARY_PATH']].filter(Boolean).join(':') } };
}

/**
 * Starts Chromium with a fresh profile. `CHROMIUM` in the environment names another executable; on systems that the
 * package has no program for, an installed Chrome is used.
 */
export async function launchChromium(): Promise<Browser> {
  // The sandbox cannot be used by root, as in most containers.
  const options = { headless: true, chromiumSandbox: process.getuid?.() !== 0, args: FLAGS };
  const chosen = process.env['CHROMIUM'];
  if (chosen) return chromium.launch({ ...options, executablePath: chosen });
  if (process.platform !== 'linux' || process.arch !== 'x64') return chromium.launch({ ...options, channel: 'chrome' });
  const { executable, env } = await program();
  return chromium.launch({ ...options, executablePath: executable, env });
}

export interface WatchedPage {
  page: Page;
  /** Errors of scripts, errors written to the console, requests that failed: what a test expects to be empty. */
  troubles: string[];
}

/** A page in a context of its own that takes down everything that went wrong in it. */
export async function openPage(browser: Browser, options: BrowserContextOptions = {}): Promise<WatchedPage> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.setDefaultTimeout(10_000);
  const troubles: string[] = [];
  page.on('pageerror', (error) => troubles.push(`script: ${error.message}`));
  page.on('console', (message) => void (message.type() === 'error' && troubles.push(`console: ${message.text()}`)));
  page.on('requestfailed', (request) => troubles.push(`request: ${request.url()} ${request.failure()?.errorText ?? ''}`));
  return { page, troubles };
}
