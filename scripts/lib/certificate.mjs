import { X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { inRoot } from './root.mjs';

const DAY_MS = 86_400_000;

const validTomorrow = (file) => {
  try {
    return new Date(new X509Certificate(readFileSync(file)).validTo).getTime() > Date.now() + DAY_MS;
  } catch {
    return false;
  }
};

/**
 * Certificate for https://localhost:3000: the one that Excel's machine trusts (`npm run certs`), else a self-made one.
 * Throws where neither can be had.
 */
export async function certificate() {
  const trusted = path.join(os.homedir(), '.office-addin-dev-certs');
  const trustedFiles = { key: path.join(trusted, 'localhost.key'), cert: path.join(trusted, 'localhost.crt') };
  if (existsSync(trustedFiles.key) && validTomorrow(trustedFiles.cert)) return { ...read(trustedFiles), trusted: true };
  const own = inRoot('.certs');
  const files = { key: path.join(own, 'localhost.key'), cert: path.join(own, 'localhost.crt') };
  if (!(existsSync(files.key) && validTomorrow(files.cert))) {
    mkdirSync(own, { recursive: true });
    const { default: certs } = await import('office-addin-dev-certs');
    await certs.generateCertificates(path.join(own, 'ca.crt'), files.cert, files.key, 365, ['localhost', '127.0.0.1']);
  }
  return { ...read(files), trusted: false };
}

const read = ({ key, cert }) => ({ key: readFileSync(key), cert: readFileSync(cert) });
