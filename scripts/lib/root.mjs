import path from 'node:path';

/** The folder of the checkout. */
export const root = path.resolve(import.meta.dirname, '../..');
export const inRoot = (...parts) => path.join(root, ...parts);
