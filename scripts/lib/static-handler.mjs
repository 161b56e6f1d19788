import { createReadStream, realpathSync, statSync } from 'node:fs';
import path from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.json': 'application/json; charset=utf-8',
  '.css': 'text/css; charset=utf-8', '.xml': 'application/xml; charset=utf-8', '.map': 'application/json; charset=utf-8',
  '.png': 'image/png', '.svg': 'image/svg+xml', '.txt': 'text/plain; charset=utf-8', '.md': 'text/plain; charset=utf-8',
  '.woff': 'font/woff', '.woff2': 'font/woff2', '.ttf': 'font/ttf',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
};

/** Serves the files of one folder and nothing else. */
export function staticHandler(folder, extraHeaders = {}) {
  const base = path.resolve(folder);
  return (request, response) => {
    const answer = (status, text) => {
      response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8' });
      response.end(text);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, 'only GET and HEAD\n');
    let name;
    try {
      name = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    } catch {
      return answer(400, 'bad address\n');
    }
    if (name.endsWith('/')) name += 'index.html';
    const file = path.join(base, name);
    if (name.includes('\0') || !file.startsWith(base + path.sep)) return answer(403, 'outside the served folder\n');
    let facts;
    try {
      // A link in the folder may lead out of it; what counts is where it ends.
      if (!realpathSync(file).startsWith(realpathSync(base) + path.sep)) return answer(403, 'outside the served folder\n');
      facts = statSync(file);
    } catch {
      return answer(404, 'not found\n');
    }
    if (!facts.isFile()) return answer(404, 'not found\n');
    response.writeHead(200, {
      'Content-Type': TYPES[path.extname(file).toLowerCase()] ?? 'application/octet-stream',
      'Content-Length': facts.size,
      'Cache-Control': 'no-cache',
      'X-Content-Type-Options': 'nosniff',
      ...extraHeaders,
    });
    if (request.method === 'HEAD') return response.end();
    createReadStream(file).on('error', () => response.destroy()).pipe(response);
  };
}
