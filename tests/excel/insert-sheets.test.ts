import { excelChart } from '../../src/excel/excel-chart';
import { insertSheets } from '../../src/excel/excel-sheets';
import { chartSheet } from '../../src/pane/charts/chart-sheet';
import { neededSheets } from '../../src/pane/sheets/needed';
import { starterPlans } from '../../src/pane/sheets/starter';
import { addressOf, parseBox } from '../../src/sheet/xlsx/address';
import { NotingExcel } from '../support/noting-excel';

const inWorkbook = (sheets?: readonly string[]): NotingExcel => {
  const excel = new NotingExcel(sheets);
  Object.assign(globalThis, excel.globals());
  return excel;
};
afterEach(() => {
  for (const name of ['Excel', 'Office']) Reflect.deleteProperty(globalThis, name);
});

test('the whole starter: every cell, format, table, name, validation and print set-up reaches Excel', async () => {
  const excel = inWorkbook();
  const plans = await starterPlans();
  expect(await insertSheets(plans)).toEqual({ done: true });
  expect([...excel.sheets.keys()]).toEqual(['Sheet1', ...plans.map(({ name }) => name)]);
  for (const plan of plans) {
    const { cells, formats, tables, merges, did } = excel.sheets.get(plan.name)!;
    for (const { range, value, formula, format } of plan.cells) {
      const { top, left, bottom, right } = parseBox(range)!;
      for (let row = top; row <= bottom; row += 1) for (let column = left; column <= right; column += 1) {
        const place = addressOf(row, column);
        expect([place, cells.get(place)]).toEqual([place, formula ?? value]);
        if (format !== undefined) expect(formats.get(place)).toBe(format);
      }
    }
    expect(tables.map(({ name }) => name)).toEqual((plan.tables ?? []).map(({ name }) => name));
    expect(merges.length).toBe(plan.merges!.length);
    expect(did.filter((each) => /\.dataValidation\.rule=/.test(each)).length).toBe(plan.validations!.length);
    expect(did.filter((each) => /\.conditionalFormats\.add\("Custom"\)/.test(each)).length).toBe(plan.verdicts!.length);
    expect(did).toContain(`pageLayout.setPrintArea("${plan.print!.area}")`);
    expect(did).toContain('pageLayout.orientation="Landscape"');
  }
  expect(excel.names.get('Un_V')).toBe('B8');
  expect(excel.sheets.get('Boards')!.did).toContain('freezePanes.freezeAt(A1:A10)');
  expect(excel.sheets.get('Boards')!.did).toContain('D11:D19.dataValidation.rule={"list":{"inCellDropDown":true,"source":"=list_size"}}');
});

test('one sheet with what it reads stands without the rest', async () => {
  const excel = inWorkbook();
  const { chosen, alongside } = neededSheets(await starterPlans(), ['Check'], { sheets: ['Sheet1'], tables: [], names: [] });
  const plans = [...alongside, ...chosen];
  expect(plans.map(({ name }) => name)).toEqual(['Job', 'Lists', 'Check']);
  expect(await insertSheets(plans)).toEqual({ done: true });
  expect(excel.sheets.get('Check')!.tables.map(({ name }) => name)).toEqual(['Check', 'Sources']);
});

test('a sheet that is there bars all of them', async () => {
  const excel = inWorkbook(['Sheet1', 'LISTS']);
  expect(await insertSheets(await starterPlans())).toEqual({ done: false, words: 'A sheet named Lists is there already. Rename it, or use it as it is.' });
  expect(excel.sheets.size).toBe(2);
});

test('a chart of the pane: its figures on a new sheet, its series from their ranges', async () => {
  const excel = inWorkbook();
  const made = chartSheet({
    title: 'Time-current', x: { title: 'current, A', logarithmic: true }, y: { title: 'time, s', logarithmic: true },
    marks: [{ kind: 'band', name: 'F1', fast: [[90, 10], [360, 0.1]], slow: [[110, 10], [440, 0.1]] }, { kind: 'at x', name: 'MSB', value: 25000 }],
  }, ['Points!A1:B4'], 'Chart 1')!;
  expect(await insertSheets([made.sheet])).toEqual({ done: true });
  expect(await excelChart(made.chart)).toEqual({ done: true });
  const sheet = excel.sheets.get('Chart 1')!;
  expect(['A6', 'B6', 'E6'].map((place) => sheet.cells.get(place))).toEqual([90, 10, 25000]);
  const [chart] = sheet.charts;
  for (const each of ['series F1, fast.setXAxisValues(A6:A7)', 'series F1, fast.setValues(B6:B7)', 'series MSB.setXAxisValues(E6:E7)', 'series F1, fast.format.line.lineStyle="Dash"', 'chart.axes.categoryAxis.scaleType="Logarithmic"', 'chart.setPosition("H4","R34")']) {
    expect(chart!.did).toContain(each);
  }
});
