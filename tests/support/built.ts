import { existsSync } from 'node:fs';
import path from 'node:path';

export const root = path.resolve(__dirname, '../..');

/** A place in dist/; tests of what is shipped cannot say anything without a build. */
export function inDist(...parts: string[]): string {
  if (!existsSync(path.join(root, 'dist/cli/joulewright.cjs'))) throw new Error('dist/ is not built: npm run build');
  return path.join(root, 'dist', ...parts);
}
