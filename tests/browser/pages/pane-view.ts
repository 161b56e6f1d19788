import { chartsView } from '../../../src/pane/charts/charts-view';
import { mountPane } from '../../../src/pane/pane';
import { pointsView } from '../../../src/pane/points/points-view';
import { selfTestView } from '../../../src/pane/self-test/self-test-view';
import { sheetsView } from '../../../src/pane/sheets/sheets-view';
import type { View } from '../../../src/pane/view';
import type { FakeSheets } from '../../support/fake-sheets';
import { MemoryHost, revived } from './memory-host';

/** One view of the pane beside a workbook in memory. */

const views: readonly View[] = [pointsView, chartsView, sheetsView, selfTestView];
let host: MemoryHost;

Object.assign(window, {
  driver: {
    start: async (view: string, sheets: FakeSheets, formulas: Record<string, string> = {}) => {
      host = new MemoryHost(revived(sheets));
      for (const [place, formula] of Object.entries(formulas)) await host.calculate(place.split('!')[0]!, place.split('!')[1]!, formula);
      mountPane(document.getElementById('pane')!, host, views.filter(({ id }) => id === view));
    },
    at: (sheet: string, range: string) => host.at(sheet, range),
    cells: (sheet: string) => host.cells(sheet),
    formulas: () => Object.fromEntries(host.formulas),
    shown: () => host.seen.shown,
    refuse: (words: string) => (host.refusal = words),
    inserted: () => host.inserted,
    charts: () => host.charts,
  },
});
