import { type PaneHost, refused } from '../../src/pane/host';
import { fakeSource } from './fake-sheets';

const notHere = refused('This host only shows.');

/** A host without a workbook: every test puts in its place what it needs. */
export const idleHost: PaneHost = {
  traits: { blankArrivesAsZero: false },
  source: fakeSource({ cells: {} }),
  watch: () => () => undefined,
  sheets: async () => [],
  read: async () => [],
  formulaCells: async () => [],
  select: async () => notHere,
  write: async () => notHere,
  insertSheets: async () => notHere,
  chart: async () => notHere,
  file: async () => notHere,
};
