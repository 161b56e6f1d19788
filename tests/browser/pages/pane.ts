import { CellError, type ErrorCode } from '../../../src/functions/kernel/cell';
import type { PaneHost, Selection } from '../../../src/pane/host';
import { mountPane } from '../../../src/pane/pane';
import { idleHost } from '../../support/fake-host';
import { fakeSource, type FakeSheets } from '../../support/fake-sheets';

/** The page of the pane's test: the test itself plays the host. */

interface Driver {
  start(sheets: FakeSheets): void;
  select(selection: Selection): void;
  stop(): void;
  /** Holds back the answers about cells until released. */
  hold(): void;
  release(): void;
}

let listener: ((selection: Selection) => void) | undefined;
let takeDown: (() => void) | undefined;
let gate: Promise<void> = Promise.resolve();
let open: () => void = () => undefined;

/** Errors cross from the test as { error: code }. */
const revived = <T>(value: T): T => {
  if (typeof value !== 'object' || value === null) return value;
  if ('error' in value) return new CellError(value.error as ErrorCode) as T;
  if (Array.isArray(value)) return value.map(revived) as T;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, revived(each)])) as T;
};

const driver: Driver = {
  start(sheets) {
    const source = fakeSource(revived(sheets));
    const slow = { ...source, used: (sheet: string) => gate.then(() => source.used(sheet)) };
    const host: PaneHost = {
      ...idleHost,
      source: slow,
      watch(given) {
        listener = given;
        given({ kind: 'nothing' });
        return () => (listener = undefined);
      },
    };
    takeDown = mountPane(document.getElementById('pane')!, host);
  },
  select: (selection) => listener?.(revived(selection)),
  stop: () => takeDown?.(),
  hold() {
    gate = new Promise((resolve) => (open = resolve));
  },
  release: () => open(),
};

Object.assign(window, { driver, watched: () => listener !== undefined });
