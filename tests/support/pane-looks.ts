import { readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';

/** The pane's looks as one text, as the bundles hold them. */
export function paneLooks(): string {
  const folder = path.resolve(__dirname, '../../src/pane');
  const files = readdirSync(folder, { recursive: true }).map(String).filter((name) => name.endsWith('.css')).sort();
  return ['pane.css', ...files.filter((name) => name !== 'pane.css')].map((name) => readFileSync(path.join(folder, name), 'utf8')).join('\n');
}
