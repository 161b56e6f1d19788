import type { ChartAxis, ChartPlan } from '../pane/chart-plan';
import { DONE, type Done, refused } from '../pane/host';
import { changing } from './excel-edits';
import { isKnown, troubleOf } from './excel-trouble';

/** Charts as Excel draws them itself: points over points, from the cells of a sheet. */

function setAxis(axis: Excel.ChartAxis, { title, logarithmic, least, greatest }: ChartAxis): void {
  axis.title.text = title;
  axis.scaleType = logarithmic ? 'Logarithmic' : 'Linear';
  if (least !== undefined) axis.minimum = least;
  if (greatest !== undefined) axis.maximum = greatest;
  axis.majorGridlines.visible = true;
  axis.minorGridlines.visible = logarithmic;
}

export async function excelChart(plan: ChartPlan): Promise<Done> {
  if (!isKnown('1.7')) return refused('This version of Excel cannot draw charts for add-ins.');
  const [first] = plan.series;
  if (!first) return refused('There is nothing to draw yet.');
  return changing(async (context): Promise<Done> => {
    const names = [...new Set([plan.sheet, ...plan.series.map(({ sheet }) => sheet)])];
    const found = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name));
    for (const worksheet of found) worksheet.load('name');
    await context.sync();
    const lost = found.findIndex(({ isNullObject }) => isNullObject);
    if (lost >= 0) return refused(`There is no sheet ${names[lost]}.`);
    const sheetOf = (name: string): Excel.Worksheet => context.workbook.worksheets.getItem(name);

    const chart = sheetOf(plan.sheet).charts.add('XYScatterLinesNoMarkers', sheetOf(first.sheet).getRange(first.y), 'Columns');
    // Excel makes series of its own of the range it is given.
    chart.series.load('items/name');
    await context.sync();
    for (const own of chart.series.items) own.delete();
    for (const { name, sheet, x, y, colour, drawn } of plan.series) {
      const series = chart.series.add(name);
      series.setXAxisValues(sheetOf(sheet).getRange(x));
      series.setValues(sheetOf(sheet).getRange(y));
      series.smooth = false;
      series.markerStyle = drawn === 'points' ? 'Circle' : 'None';
      if (drawn === 'points') {
        series.markerBackgroundColor = colour;
        series.markerForegroundColor = colour;
        series.format.line.lineStyle = 'None';
      } else {
        series.format.line.color = colour;
        series.format.line.lineStyle = drawn === 'dashed' ? 'Dash' : 'Continuous';
        series.format.line.weight = 1.75;
      }
    }
    chart.title.text = plan.title;
    chart.legend.position = 'Bottom';
    setAxis(chart.axes.categoryAxis, plan.x);
    setAxis(chart.axes.valueAxis, plan.y);
    const [from, to] = plan.at.split(':');
    chart.setPosition(from!, to ?? from!);
    await context.sync();
    return DONE;
  }).catch(troubleOf);
}
