// npm run host -- https://tools.example.org/jw [-o FOLDER]: the add-in's files with a manifest for that address.
// Plain Node without dependencies, so that it also runs out of the installed package.
import { cpSync, existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parseArgs } from 'node:util';

const root = path.resolve(import.meta.dirname, '../..');
/** Where manifest and functions.json point while the add-in is developed. */
const HERE = 'https://localhost:3000';
const USAGE = 'npm run host -- https://tools.example.org/jw [-o FOLDER]';

class Refused extends Error {}

/** The address without a slash at its end. */
function addressOf(text) {
  let url;
  try {
    url = new URL(text);
  } catch {
    throw new Refused(`the address must be like https://tools.example.org/jw, got ${text}`);
  }
  if (url.protocol !== 'https:') throw new Refused(`Excel loads add-ins over https only, got ${text}`);
  if (url.username !== '' || url.password !== '') throw new Refused('the address may not hold a user name or password: everybody who gets the manifest reads it');
  if (url.search !== '' || url.hash !== '') throw new Refused(`the address is that of a folder, without ? and #, got ${text}`);
  return `${url.origin}${url.pathname}`.replace(/\/+$/, '');
}

const xmlText = (text) => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;').replace(/'/g, '&apos;');

/** An AppDomain is an origin; everything else is a file below the address. */
const manifestFor = (xml, address) =>
  xml
    .replace(/(<AppDomain>\s*)https:\/\/localhost:3000\/?(\s*<\/AppDomain>)/g, (_, before, after) => `${before}${new URL(address).origin}${after}`)
    .replaceAll(HERE, () => xmlText(address));

function functionsFor(text, address) {
  const metadata = JSON.parse(text);
  for (const each of metadata.functions) each.helpUrl = each.helpUrl.replace(HERE, () => address);
  return `${JSON.stringify(metadata, null, 2)}\n`;
}

function emptyFolder(asked) {
  const folder = asked === undefined ? path.join(root, 'dist/hosted') : path.resolve(asked);
  if (asked === undefined) rmSync(folder, { recursive: true, force: true });
  else if (existsSync(folder) && readdirSync(folder).length > 0) throw new Refused(`${asked} is not empty`);
  mkdirSync(folder, { recursive: true });
  return folder;
}

/** Every file that manifest and functions.json lead to must be in the folder. */
function missingFiles(folder, text, address) {
  const names = text.split(address).slice(1).map((rest) => rest.match(/^\/([^"#?<\s]+)/)?.[1]);
  return [...new Set(names)].filter((name) => name !== undefined && !existsSync(path.join(folder, decodeURIComponent(name))));
}

function host(args) {
  let asked;
  try {
    asked = parseArgs({ args, allowPositionals: true, options: { output: { type: 'string', short: 'o' } } });
  } catch (error) {
    throw new Refused(`${error.message.split('\n')[0]}; ${USAGE}`);
  }
  if (asked.positionals.length !== 1) throw new Refused(`one address is needed: ${USAGE}`);
  const address = addressOf(asked.positionals[0]);
  const built = path.join(root, 'dist/excel');
  if (!existsSync(path.join(built, 'taskpane.html'))) throw new Refused('the add-in is not built yet: run npm run build first');
  const folder = emptyFolder(asked.values.output);
  cpSync(built, folder, { recursive: true, filter: (file) => !file.endsWith('.map') });
  const manifest = manifestFor(readFileSync(path.join(root, 'manifest.xml'), 'utf8'), address);
  const functions = functionsFor(readFileSync(path.join(built, 'functions.json'), 'utf8'), address);
  for (const [name, text] of [['manifest.xml', manifest], ['functions.json', functions]]) {
    if (text.includes(HERE)) throw new Refused(`${name} still leads to ${HERE}`);
    writeFileSync(path.join(folder, name), text);
  }
  cpSync(path.join(root, 'LICENSE'), path.join(folder, 'LICENSE.txt'));
  const missing = [...missingFiles(folder, manifest, xmlText(address)), ...missingFiles(folder, functions, address)];
  if (missing.length > 0) throw new Refused(`not in the built add-in: ${missing.join(', ')}`);
  console.log(`${folder}\n  goes to ${address}/ as it is. Excel gets ${address}/manifest.xml; headers and caching: docs/hosting.md`);
}

try {
  host(process.argv.slice(2));
} catch (error) {
  console.error(`host: ${error instanceof Error ? error.message : String(error)}`);
  process.exitCode = 2;
}
