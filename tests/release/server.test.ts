import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { root } from '../support/built';

jest.setTimeout(60_000);

const module_ = (name: string): string => JSON.stringify(`file://${path.join(root, 'scripts/lib', name).split(path.sep).join('/')}`);

/** Starts plain Node on a text and gives the line of data that it prints; the maker of certificates prints lines of its own. */
async function started(text: string, env: Record<string, string> = {}): Promise<{ child: ChildProcess; line: string }> {
  const child = spawn(process.execPath, ['--input-type=module', '-e', text], { env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'inherit'] });
  const line = await new Promise<string>((resolve, reject) => {
    let got = '';
    child.stdout!.on('data', (part: Buffer) => {
      got += part.toString();
      const line = got.split('\n').slice(0, -1).find((each) => /^[{\d]/.test(each));
      if (line !== undefined) resolve(line);
    });
    child.once('exit', (code) => reject(new Error(`ended with ${code}`)));
  });
  return { child, line };
}

const ended = (child: ChildProcess | undefined): Promise<unknown> | undefined => {
  if (!child || child.exitCode !== null) return undefined;
  const done = new Promise((resolve) => child.once('exit', resolve));
  child.kill();
  return done;
};

interface Answer {
  status: number;
  headers: http.IncomingHttpHeaders;
  body: string;
}

/** The path goes out as it is: no client tidies it up on its way. */
const ask = (port: number, asked: string, method = 'GET'): Promise<Answer> =>
  new Promise((resolve, reject) => {
    http.request({ host: '127.0.0.1', port, path: asked, method }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => { body += part.toString(); });
      response.on('end', () => resolve({ status: response.statusCode!, headers: response.headers, body }));
    }).on('error', reject).end();
  });

describe('the handler gives the files of its folder and nothing else', () => {
  let folder: string;
  let child: ChildProcess;
  let port: number;

  beforeAll(async () => {
    folder = mkdtempSync(path.join(os.tmpdir(), 'joulewright-server-'));
    for (const name of ['www/sub', 'www-other', 'private']) mkdirSync(path.join(folder, name), { recursive: true });
    for (const [name, text] of [['www/index.html', 'home'], ['www/sub/a b.txt', 'inside'], ['secret.txt', 'SECRET'], ['www-other/x.txt', 'SECRET'], ['private/y.txt', 'SECRET']]) writeFileSync(path.join(folder, name!), text!);
    symlinkSync(path.join(folder, 'secret.txt'), path.join(folder, 'www/link.txt'));
    symlinkSync(path.join(folder, 'private'), path.join(folder, 'www/folder'));
    symlinkSync(path.join(folder, 'www-other'), path.join(folder, 'www/other'));
    symlinkSync(path.join(folder, 'www/sub/a b.txt'), path.join(folder, 'www/inside.txt'));
    symlinkSync(path.join(folder, 'none.txt'), path.join(folder, 'www/dangling.txt'));
    const start = await started(`
      import http from 'node:http';
      import { staticHandler } from ${module_('static-handler.mjs')};
      const server = http.createServer(staticHandler(${JSON.stringify(path.join(folder, 'www'))}, { 'X-More': 'yes' }));
      server.listen(0, '127.0.0.1', () => console.log(server.address().port));`);
    child = start.child;
    port = Number(start.line);
  });
  afterAll(async () => {
    await ended(child);
    rmSync(folder, { recursive: true, force: true });
  });

  test.each([['/', 'home'], ['/index.html', 'home'], ['/index.html?x=../secret.txt', 'home'], ['/sub/a%20b.txt', 'inside'], ['/sub/../index.html', 'home'], ['/inside.txt', 'inside']])('%s is answered', async (asked, body) => {
    expect(await ask(port, asked)).toMatchObject({ status: 200, body, headers: { 'x-content-type-options': 'nosniff', 'x-more': 'yes', 'content-length': String(body.length) } });
  });
  test.each([
    '/../secret.txt', '/..%2fsecret.txt', '/%2e%2e/secret.txt', '/%2e%2e%2fsecret.txt', '/sub/..%2f..%2fsecret.txt', '/..%2fwww-other%2fx.txt', '/%252e%252e%252fsecret.txt',
    '/..%5csecret.txt', '/..\\secret.txt', '/./../secret.txt', '/link.txt', '/folder/y.txt', '/folder/', '/other/x.txt', '/dangling.txt', '/index.html%00.txt', '/%',
    '/%ff', '/sub', '/sub/', '/none', '/index.html/', 'http://127.0.0.1/..%2fsecret.txt', '/etc/passwd', '/..%2f..%2f..%2f..%2f..%2f..%2fetc/passwd',
  ])('%s is refused', async (asked) => {
    const { status, body } = await ask(port, asked);
    expect([400, 403, 404]).toContain(status);
    expect(body).toMatch(/^(bad address|outside the served folder|not found)\n$/);
  });
  test('HEAD tells the length and sends no body', async () => {
    expect(await ask(port, '/index.html', 'HEAD')).toMatchObject({ status: 200, body: '', headers: { 'content-length': '4' } });
    expect(await ask(port, '/link.txt', 'HEAD')).toMatchObject({ status: 403, body: '' });
  });
  test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'PROPFIND'])('%s is refused and changes nothing', async (method) => {
    expect((await ask(port, '/index.html', method)).status).toBe(405);
    expect((await ask(port, '/index.html')).body).toBe('home');
  });
});

describe('npm start’s servers', () => {
  let child: ChildProcess | undefined;
  afterEach(() => ended(child));

  const freePort = (): Promise<number> =>
    new Promise((resolve) => {
      const server = net.createServer().listen(0, '127.0.0.1', () => {
        const { port } = server.address() as net.AddressInfo;
        server.close(() => resolve(port));
      });
    });
  const reach = (host: string, port: number): Promise<boolean> =>
    new Promise((resolve) => {
      const socket = net.connect({ host, port, timeout: 2_000 });
      socket.once('connect', () => { socket.destroy(); resolve(true); });
      for (const event of ['error', 'timeout']) socket.once(event, () => { socket.destroy(); resolve(false); });
    });

  test('listen on the loopback addresses and on no other', async () => {
    const [first, second] = [await freePort(), await freePort()];
    const start = await started(`
      import { serve } from ${module_('serve.mjs')};
      const { servers, facts } = await serve();
      console.log(JSON.stringify({ addresses: servers.map((each) => each.address()), facts }));`, { HTTP_PORT: String(first), HTTPS_PORT: String(second) });
    child = start.child;
    const { addresses, facts } = JSON.parse(start.line) as { addresses: net.AddressInfo[]; facts: { problems: string[] } };
    expect(facts.problems).toEqual([]);
    expect(addresses.length).toBeGreaterThanOrEqual(2);
    for (const { address, port } of addresses) {
      expect(['127.0.0.1', '::1']).toContain(address);
      expect([first, second]).toContain(port);
    }
    expect(await reach('127.0.0.1', first)).toBe(true);
    const others = Object.values(os.networkInterfaces()).flatMap((each) => each ?? []).filter(({ internal, family }) => !internal && family === 'IPv4').map(({ address }) => address);
    for (const host of others) for (const port of [first, second]) expect([host, port, await reach(host, port)]).toEqual([host, port, false]);
  });

  test('a port in use is told in words', async () => {
    const taken = net.createServer();
    await new Promise<void>((resolve) => void taken.listen(0, '127.0.0.1', resolve));
    const { port } = taken.address() as net.AddressInfo;
    const start = await started(`
      import { serve } from ${module_('serve.mjs')};
      const { facts } = await serve();
      console.log(JSON.stringify(facts));`, { HTTP_PORT: String(port), HTTPS_PORT: String(await freePort()) });
    child = start.child;
    taken.close();
    expect(JSON.parse(start.line)).toMatchObject({ problems: [expect.stringContaining(`port ${port} is in use by another program; end that, or set HTTP_PORT to a free port`)] });
  });
});
