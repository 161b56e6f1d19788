import { addressOf, boxText } from '../../sheet/xlsx/address';
import type { ChartAxis, ChartPlan, ChartSeries } from '../chart-plan';
import type { PlannedCell, SheetPlan } from '../sheet-plan';
import { seriesColour } from './inks';
import { type Plot, type PlotAxis, type PlotMark, type PlotPoint, drawablePoints, extent } from './plot';
import { scaleOf } from './scale';

/** A chart as one of the spreadsheet's own: a new sheet with the figures, and the chart beside them. */
export interface ChartSheet {
  readonly sheet: SheetPlan;
  readonly chart: ChartPlan;
}

interface Column {
  readonly name: string;
  readonly points: readonly PlotPoint[];
  readonly colour: string;
  readonly drawn: ChartSeries['drawn'];
}
type Ends = readonly [least: number, greatest: number];

/** Ends of an axis as the chart in the pane has them; whole decades where it is logarithmic. */
function ends(axis: PlotAxis, covered: Ends): Ends {
  if (axis.places) return [0, axis.places.length - 1];
  const [least, greatest] = scaleOf(axis, covered, [0, 1], 6).domain;
  return axis.logarithmic ? [10 ** Math.floor(Math.log10(least) + 1e-9), 10 ** Math.ceil(Math.log10(greatest) - 1e-9)] : [least, greatest];
}

function columnsOf(plot: Plot, mark: PlotMark, place: number, x: Ends, y: Ends): Column[] {
  const column = (name: string, points: readonly PlotPoint[], drawn: ChartSeries['drawn']): Column => ({ name, points: drawablePoints(plot, points), colour: seriesColour(place), drawn });
  switch (mark.kind) {
    case 'line':
      return [column(mark.name, mark.points, place % 2 === 0 ? 'line' : 'dashed')];
    case 'points':
      return [column(mark.name, mark.points, 'points')];
    case 'band':
      return [column(`${mark.name}, fast`, mark.fast, 'dashed'), column(`${mark.name}, slow`, mark.slow, 'line')];
    case 'at x':
      return [column(mark.name, [[mark.value, y[0]], [mark.value, y[1]]], 'dashed')];
    case 'at y':
      return [column(mark.name, [[x[0], mark.value], [x[1], mark.value]], 'dashed')];
  }
}

/** Rows of names and units, then the figures. */
const NAMES = 3;
const UNITS = 4;
const FIGURES = 5;
const ROWS_OF_CHART = 30;
const COLUMNS_OF_CHART = 11;

/**
 * The figures of a plot on a new sheet, with the chart beside them; undefined where there is nothing to draw.
 * @param from where the figures come from
 * @param name a sheet's name that is free
 */
export function chartSheet(plot: Plot, from: readonly string[], name: string): ChartSheet | undefined {
  const [coveredX, coveredY] = [plot.x.places ? ([0, plot.x.places.length - 1] as const) : extent(plot, 'x'), extent(plot, 'y')];
  if (!coveredX || !coveredY) return undefined;
  const [x, y] = [ends(plot.x, coveredX), ends(plot.y, coveredY)];
  const columns = plot.marks.flatMap((mark, place) => columnsOf(plot, mark, place, x, y)).filter(({ points }) => points.length > 0);
  const left = 2 * columns.length + (plot.x.places ? 2 : 0);
  return {
    sheet: {
      name,
      widths: Array.from({ length: left }, () => 13),
      heights: { [NAMES + 1]: 44 },
      cells: [
        { range: 'A1', value: plot.title, look: 'title' },
        { range: 'A2', value: `Figures as they stood when the chart was made, from ${from.join(', ')}. Make it again where they change.`, look: 'remark' },
        ...columns.flatMap((column, i) => columnCells(column, 2 * i, plot)),
        ...(plot.x.places ?? []).flatMap((place, i): PlannedCell[] => [
          { range: addressOf(FIGURES + i, left - 2), value: i, look: 'plain' },
          { range: addressOf(FIGURES + i, left - 1), value: place, look: 'plain' },
        ]),
      ],
    },
    chart: {
      title: plot.title, sheet: name,
      at: boxText({ top: NAMES, left: left + 1, bottom: NAMES + ROWS_OF_CHART, right: left + COLUMNS_OF_CHART }),
      x: axisOf(plot.x, x), y: axisOf(plot.y, y),
      series: columns.map(({ name: called, points, colour, drawn }, i): ChartSeries => {
        const range = (column: number): string => boxText({ top: FIGURES, left: column, bottom: FIGURES + points.length - 1, right: column });
        return { name: called, sheet: name, x: range(2 * i), y: range(2 * i + 1), colour, drawn };
      }),
    },
  };
}

const axisOf = ({ title, logarithmic, places }: PlotAxis, [least, greatest]: Ends): ChartAxis =>
  ({ title: places ? `${title}: ${places.map((place, i) => `${i} ${place}`).join(', ')}` : title, logarithmic, least, greatest });

function columnCells({ name, points }: Column, left: number, { x, y }: Plot): PlannedCell[] {
  return [
    { range: addressOf(NAMES, left), value: name, look: 'heading' },
    { range: addressOf(NAMES, left + 1), value: name, look: 'heading' },
    { range: addressOf(UNITS, left), value: x.title, look: 'unit' },
    { range: addressOf(UNITS, left + 1), value: y.title, look: 'unit' },
    ...points.flatMap(([px, py], row): PlannedCell[] => [
      { range: addressOf(FIGURES + row, left), value: px, look: 'plain' },
      { range: addressOf(FIGURES + row, left + 1), value: py, look: 'plain' },
    ]),
  ];
}
