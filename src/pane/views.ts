import { cautionsView } from './cautions/cautions-view';
import { chartsView } from './charts/charts-view';
import { explainView } from './explain/explain-view';
import { fillView } from './fill/fill-view';
import { findView } from './find/find-view';
import { pointsView } from './points/points-view';
import { selfTestView } from './self-test/self-test-view';
import { sheetsView } from './sheets/sheets-view';
import type { View } from './view';

/** The views of the pane, in the order of their tabs. */
export const views: readonly View[] = [findView, fillView, explainView, cautionsView, pointsView, chartsView, sheetsView, selfTestView];

/** The one that stands open at first. */
export const FIRST_VIEW = explainView.id;
