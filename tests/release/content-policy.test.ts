import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { filesBelow } from '../../scripts/release/shipped';
import { inDist, root } from '../support/built';
import { joulewright } from '../support/terminal';

/** The policy of a page by directive; none where the page has no policy. */
function policyOf(page: string): Map<string, string[]> {
  const content = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(page)?.[1] ?? '';
  return new Map(content.split(';').map((each) => each.trim().split(/\s+/)).filter(([name]) => name !== '').map(([name, ...values]) => [name!, values]));
}

/** What a page may not hold, in words. `evalAllowed` belongs to the page of the grid alone. */
function faultsOf(page: string, evalAllowed = false): string[] {
  const faults: string[] = [];
  const policy = policyOf(page);
  const at = page.indexOf('http-equiv="Content-Security-Policy"');
  if (policy.size === 0) return ['no content policy'];
  if (/<(?:script|link|style|img|body)\b/.test(page.slice(0, at))) faults.push('something is loaded before the policy');
  if (policy.get('default-src')?.join(' ') !== "'none'") faults.push('default-src is not none');
  for (const [name, values] of policy) {
    const allowed = ["'none'", "'self'", ...(name === 'style-src' ? ["'unsafe-inline'"] : []), ...(name === 'img-src' ? ['data:'] : []), ...(name === 'script-src' && evalAllowed ? ["'unsafe-eval'"] : [])];
    for (const value of values) if (!allowed.includes(value)) faults.push(`${name} allows ${value}`);
  }
  for (const name of ['base-uri', 'form-action']) if (policy.get(name)?.join(' ') !== "'none'") faults.push(`${name} is not none`);
  const markup = page.replace(/<!--[\s\S]*?-->/g, '');
  for (const [, attributes, body] of markup.matchAll(/<script\b([^>]*)>([\s\S]*?)<\/script>/g)) {
    if (!/\bsrc="(?!\w+:|\/\/)[^"]+"/.test(attributes!)) faults.push('a script without a file of ours');
    if (body!.trim() !== '') faults.push('a script in the page');
  }
  if (/<[^>]+\son\w+\s*=/i.test(markup)) faults.push('a script in an attribute');
  if (/(?:href|src)\s*=\s*["']?\s*javascript:/i.test(markup)) faults.push('a script in an address');
  if (/(?:src|href)="(?:https?:)?\/\//.test(markup.replace(/<a\b[^>]*>/g, ''))) faults.push('something is loaded from elsewhere');
  const inlineStyles = policy.get('style-src')?.includes("'unsafe-inline'") ?? false;
  if (!inlineStyles && (/<style\b/.test(markup) || /<[^>]+\sstyle\s*=/.test(markup))) faults.push('a style in the page');
  return faults;
}

const GRID = 'workbench/index.html';
const pages = ['excel', 'workbench'].flatMap((host) => filesBelow(inDist(host)).filter((name) => name.endsWith('.html')).map((name) => `${host}/${name}`));

test('the pages are those that are known here', () => {
  expect(pages).toEqual(['excel/handbook.html', 'excel/taskpane.html', 'workbench/handbook.html', 'workbench/index.html']);
});

test.each(pages)('%s loads from its own address only, and no script stands in it', (name) => {
  expect(faultsOf(readFileSync(inDist(name), 'utf8'), name === GRID)).toEqual([]);
});

test("only the grid's page may make programs of texts, and says why", () => {
  const grid = readFileSync(inDist(GRID), 'utf8');
  expect(faultsOf(grid)).toEqual(["script-src allows 'unsafe-eval'"]);
  expect(/<!--((?:(?!-->)[\s\S])*'unsafe-eval'(?:(?!-->)[\s\S])*)-->/.exec(grid)?.[1]).toMatch(/framework makes functions of its templates/);
  for (const name of pages.filter((each) => each !== GRID)) expect(policyOf(readFileSync(inDist(name), 'utf8')).get('style-src')).toEqual(["'self'"]);
});

test('the record of a check needs no script and nothing from elsewhere', async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-record-'));
  try {
    await joulewright(['check', '--html', path.join(folder, 'r.html'), path.join(root, 'sample-workbooks/cable-schedule.xlsx')]);
    const page = readFileSync(path.join(folder, 'r.html'), 'utf8');
    expect([...policyOf(page).keys()]).not.toContain('script-src');
    expect(faultsOf(page)).toEqual([]);
    expect(page).not.toMatch(/<(?:script|form|iframe|object|base)\b/);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

describe('a planted fault is found', () => {
  const page = readFileSync(inDist('excel/taskpane.html'), 'utf8');
  test.each<[string, (text: string) => string, string]>([
    ['no policy', (text) => text.replace(/<meta http-equiv[^>]*>/, ''), 'no content policy'],
    ['script of another address', (text) => text.replace('src="taskpane.js"', 'src="https://cdn.example.org/x.js"'), 'a script without a file of ours'],
    ['address without scheme', (text) => text.replace('src="taskpane.js"', 'src="//cdn.example.org/x.js"'), 'a script without a file of ours'],
    ['inline script', (text) => text.replace('</body>', '<script>start()</script></body>'), 'a script in the page'],
    ['handler', (text) => text.replace('<main ', '<main onclick="x()" '), 'a script in an attribute'],
    ['javascript address', (text) => text.replace('<main ', '<a href="javascript:x()">x</a><main '), 'a script in an address'],
    ['style', (text) => text.replace('<main ', '<main style="color:red" '), 'a style in the page'],
    ['style sheet from elsewhere', (text) => text.replace('href="pane.css"', 'href="https://cdn.example.org/x.css"'), 'something is loaded from elsewhere'],
    ['inline scripts allowed', (text) => text.replace("script-src 'self'", "script-src 'self' 'unsafe-inline'"), "script-src allows 'unsafe-inline'"],
    ['eval allowed', (text) => text.replace("script-src 'self'", "script-src 'self' 'unsafe-eval'"), "script-src allows 'unsafe-eval'"],
    ['everything allowed', (text) => text.replace("default-src 'none'", 'default-src *'), 'default-src is not none'],
    ['forms', (text) => text.replace("; form-action 'none'", ''), 'form-action is not none'],
    ['loaded before the policy', (text) => text.replace('<meta charset="utf-8">', '<meta charset="utf-8"><script src="early.js"></script>'), 'something is loaded before the policy'],
  ])('%s', (_what, change, words) => {
    expect(change(page)).not.toBe(page);
    expect(faultsOf(change(page))).toContain(words);
  });
});

test('our programs write text into pages as text, and make no programs of texts', () => {
  const sources = readdirSync(path.join(root, 'src'), { recursive: true }).map(String).filter((name) => name.endsWith('.ts'));
  expect(sources.length).toBeGreaterThan(200);
  for (const name of sources) {
    expect([name, readFileSync(path.join(root, 'src', name), 'utf8').match(/\b(?:innerHTML|outerHTML|insertAdjacentHTML|document\.write|srcdoc)\b|\beval\(|new Function\(|createContextualFragment|setTimeout\(\s*['"`]/)?.[0]]).toEqual([name, undefined]);
  }
});
