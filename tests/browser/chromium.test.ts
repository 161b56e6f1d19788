import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import http from 'node:http';
import os from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { launchChromium, openPage } from '../support/chromium';
import { type StaticServer, serveFolder } from '../support/static-server';

jest.setTimeout(30_000);

let folder: string;
let server: StaticServer;
let browser: Browser;

beforeAll(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'joulewright-page-'));
  await writeFile(path.join(folder, 'index.html'), '<!doctype html><title>t</title><p id="p">I²t</p><script src="missing.js"></script>');
  server = await serveFolder(folder);
  browser = await launchChromium();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  await rm(folder, { recursive: true, force: true });
});

test('Chromium shows a served page and what went wrong in it', async () => {
  const { page, troubles } = await openPage(browser);
  await page.goto(`${server.origin}/`);
  expect(await page.innerText('#p')).toBe('I²t');
  expect(await page.locator('#p').evaluate((each) => each.getBoundingClientRect().height)).toBeGreaterThan(10);
  expect(troubles.join('\n')).toContain('404');
});

test('nothing outside this machine is reachable', async () => {
  const { page } = await openPage(browser);
  await expect(page.goto('http://elsewhere.invalid/')).rejects.toThrow(/ERR_NAME_NOT_RESOLVED/);
});

const raw = (pathname: string, method = 'GET'): Promise<number> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(server.origin);
    http.request({ host: '127.0.0.1', port, path: pathname, method }, (response) => resolve(response.resume().statusCode ?? 0)).on('error', reject).end();
  });

test.each([['/index.html', 200], ['/../package.json', 404], ['/%2e%2e%2fpackage.json', 403], ['/%00', 403], ['/%zz', 400], ['/none', 404]])('the server answers %s with %i', async (pathname, status) => {
  expect(await raw(pathname)).toBe(status);
});

test('the server only reads', async () => {
  expect(await raw('/index.html', 'PUT')).toBe(405);
});
