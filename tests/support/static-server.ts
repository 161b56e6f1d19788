import { createReadStream, promises as files } from 'node:fs';
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.json': 'application/json; charset=utf-8',
  '.css': 'text/css; charset=utf-8', '.xml': 'application/xml; charset=utf-8', '.map': 'application/json; charset=utf-8',
  '.png': 'image/png', '.svg': 'image/svg+xml', '.txt': 'text/plain; charset=utf-8', '.woff': 'font/woff', '.woff2': 'font/woff2',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

export interface StaticServer {
  /** Address without a slash at its end: http://127.0.0.1:port */
  readonly origin: string;
  close(): Promise<void>;
}

/**
 * Serves one folder on the loopback address, on a port that the system chooses.
 * Few connections, each of them short; nothing outside the folder is readable.
 */
export async function serveFolder(folder: string): Promise<StaticServer> {
  const base = path.resolve(folder);
  const server = http.createServer((request, response) => void answer(base, request, response));
  server.maxConnections = 64;
  server.requestTimeout = 10_000;
  server.headersTimeout = 5_000;
  server.keepAliveTimeout = 1_000;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () =>
      new Promise((resolve, reject) => {
        server.close((error) => (error ? reject(error) : resolve()));
        server.closeAllConnections();
      }),
  };
}

async function answer(base: string, request: http.IncomingMessage, response: http.ServerResponse): Promise<void> {
  const refuse = (status: number): void => void response.writeHead(status, { 'Content-Type': 'text/plain' }).end(`${status}\n`);
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405);
  let name: string;
  try {
    name = decodeURIComponent(new URL(request.url ?? '/', 'http://127.0.0.1').pathname);
  } catch {
    return refuse(400);
  }
  const file = path.join(base, name.endsWith('/') ? `${name}index.html` : name);
  if (name.includes('\0') || !file.startsWith(base + path.sep)) return refuse(403);
  const facts = await files.stat(file).catch(() => undefined);
  if (!facts?.isFile()) return refuse(404);
  response.writeHead(200, {
    'Content-Type': TYPES[path.extname(file).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': facts.size,
    'Cache-Control': 'no-store',
    'X-Content-Type-Options': 'nosniff',
  });
  if (request.method === 'HEAD') return void response.end();
  createReadStream(file).on('error', () => response.destroy()).pipe(response);
}
