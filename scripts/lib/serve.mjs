import http from 'node:http';
import https from 'node:https';
import { certificate } from './certificate.mjs';
import { inRoot } from './root.mjs';
import { staticHandler } from './static-handler.mjs';

export const HTTP_PORT = Number(process.env.HTTP_PORT || 3001);
export const HTTPS_PORT = Number(process.env.HTTPS_PORT || 3000);

/** Listens on the loopback addresses only; IPv6 is a bonus where the machine has it. */
async function listen(create, port) {
  const on = (host) =>
    new Promise((resolve, reject) => {
      const server = create();
      server.once('error', reject);
      server.listen(port, host, () => resolve(server));
    });
  const servers = [await on('127.0.0.1')];
  try {
    servers.push(await on('::1'));
  } catch {
    // no IPv6 loopback here
  }
  return servers;
}

const inUse = (error, port, variable) =>
  error.code === 'EADDRINUSE' ? `port ${port} is in use by another program; end that, or set ${variable} to a free port` : error.message;

/** Workbench over http, add-in over https where a certificate can be had. Gives the servers and what to tell the user. */
export async function serve() {
  const servers = [];
  const facts = { workbench: undefined, addIn: undefined, problems: [] };
  try {
    servers.push(...(await listen(() => http.createServer(staticHandler(inRoot('dist/workbench'))), HTTP_PORT)));
    facts.workbench = `http://localhost:${HTTP_PORT}/`;
  } catch (error) {
    facts.problems.push(`Workbench not served: ${inUse(error, HTTP_PORT, 'HTTP_PORT')}.`);
  }
  try {
    const { key, cert, trusted } = await certificate();
    const handler = staticHandler(inRoot('dist/excel'), { 'Access-Control-Allow-Origin': '*' });
    servers.push(...(await listen(() => https.createServer({ key, cert }, handler), HTTPS_PORT)));
    facts.addIn = `https://localhost:${HTTPS_PORT}/`;
    facts.trusted = trusted;
  } catch (error) {
    facts.problems.push(`Add-in not served over https: ${inUse(error, HTTPS_PORT, 'HTTPS_PORT')}. Excel needs https: run \`npm run certs\` on the machine that runs Excel, then \`npm start\` there.`);
  }
  return { servers, facts };
}
