import { CellError } from '../../src/functions/kernel/cell';
import { chartSheet } from '../../src/pane/charts/chart-sheet';
import { bandFromCells, costMarks, curveFromCells, figureFromCells, levelMark, optionsFromCells, profileFromCells, withstandMark } from '../../src/pane/charts/marks-from-cells';
import { callsDrawn, plotOf, rangePart } from '../../src/pane/charts/parts';
import type { PaneHost, Selection } from '../../src/pane/host';
import { idleHost } from '../support/fake-host';
import { fakeSource } from '../support/fake-sheets';

const CURVE = [['A', 's'], [100, 10], [200, 1], [400, 0.1]];

test('a time-current curve is drawn at both edges of its tolerance in current; without tolerance as it is', () => {
  expect(curveFromCells('time', CURVE, 10, 'F1')).toEqual({
    kind: 'band', name: 'F1 ±10 %', fast: [[90, 10], [180, 1], [360, 0.1]], slow: [[110.00000000000001, 10], [220.00000000000003, 1], [440.00000000000006, 0.1]],
  });
  expect(curveFromCells('time', CURVE, 0, 'F1')).toEqual({ kind: 'line', name: 'F1', points: [[100, 10], [200, 1], [400, 0.1]] });
  expect(curveFromCells('joule', [[1, 500], [10, 900]], 10, 'F1')).toMatchObject({ kind: 'line' });
});

test.each([
  ['time', [[200, 1], [100, 10]], 'F1 row 2: first column must rise.'],
  ['time', [[100], [200]], 'F1: got 1 columns, takes two: A and s.'],
  ['cut-off', [[10, 8], [20, 7]], 'F1 row 2: cut-off may not fall.'],
  ['time', [[100, 10], [200, null], [300, 1]], 'missing: F1 row 2.'],
  ['time', [[new CellError('#REF!'), 10], [200, 1]], '#REF!.'],
] as const)('%s points that no function would take are refused in its words', (kind, cells, words) => {
  expect(() => curveFromCells(kind, cells.map((row) => [...row]), 10, 'F1')).toThrow(words);
});

test('figures of cells', () => {
  expect(figureFromCells([['25 kA']], 'level', 'kA')).toBe(25);
  expect(figureFromCells([[25000]], 'k', 'A²s')).toBe(25000);
  expect(() => figureFromCells([['25 kg']], 'level', 'kA')).toThrow('level: got "25 kg": kg is not a unit known here, takes kA.');
  expect(() => figureFromCells([[null]], 'level', 'kA')).toThrow('level: the cell is blank.');
  expect(() => figureFromCells([[1, 2]], 'level', 'kA')).toThrow('level: got 1 × 2 cells, takes one.');
  expect(() => figureFromCells([[new CellError('#NUM!', 'too large')]], 'level', 'kA')).toThrow('level: the cell holds #NUM!, too large.');
  expect(() => figureFromCells([[-3]], 'level', 'kA')).toThrow('level: got -3, takes a figure above 0.');
});

test('fault levels in kA stand on an axis in A; withstand is k²S² = I²t from 0.1 to 5 s, a level line on a joule chart', () => {
  expect(levelMark('time', 25, 'MSB')).toEqual({ kind: 'at x', name: 'MSB, 25 kA', value: 25000 });
  expect(levelMark('joule', 25, 'MSB')).toMatchObject({ value: 25 });
  // 115² · 25² = 8.265625·10⁶ A²s: 1286 A for 5 s, 9092 A for 0.1 s.
  const line = withstandMark('time', 8265625, 'cable');
  expect(line).toMatchObject({ kind: 'line', name: 'cable, k²S² 8.266E+06 A²s, 0.1 to 5 s' });
  const points = line.kind === 'line' ? line.points : [];
  expect(points.map(([current, time]) => [Math.round(current), time])).toEqual([[1286, 5], [9092, 0.1]]);
  expect(withstandMark('joule', 8265625, 'cable')).toMatchObject({ kind: 'at y', value: 8265625 });
});

test('a band of TRIP_BAND: edges of unlike length, with and without headings', () => {
  const rows = [[336, 480, 416, 480], [1280, 0.15, 1920, 0.15], ['', '', 20000, 0.04]];
  expect(bandFromCells([['fast A', 'fast s', 'slow A', 'slow s'], ...rows], 'Q1')).toEqual({ kind: 'band', name: 'Q1', fast: [[336, 480], [1280, 0.15]], slow: [[416, 480], [1920, 0.15], [20000, 0.04]] });
  expect(bandFromCells(rows, 'Q1')).toMatchObject({ kind: 'band' });
  expect(() => bandFromCells([[1, 2, 3]], 'Q1')).toThrow('Q1: got 3 columns, takes four');
  expect(() => bandFromCells([[1, 'x', 3, 4]], 'Q1')).toThrow('Q1 row 1: not numbers above zero.');
});

test('a profile names its places and draws what the table shows', () => {
  const { places, marks } = profileFromCells([['board', 'Z mΩ', 'Ik3 kA', 'Ik1 kA'], ['source', '1+9i', 35, 'not shown'], ['MSB', '1+10i', 30, 12]]);
  expect(places).toEqual(['source', 'MSB']);
  expect(marks).toEqual([{ kind: 'line', name: 'Ik3, kA', points: [[0, 35], [1, 30]] }, { kind: 'line', name: 'Ik1, kA', points: [[1, 12]] }]);
  expect(() => profileFromCells([['a', 'b', 'c', 'd']])).toThrow('path');
});

test('present cost over the fault rate: straight lines that meet where BREAKEVEN_RATE says', () => {
  const money = { ratePct: 7, years: 15 };
  const options = optionsFromCells([['option', 'first', 'yearly', 'one fault'], ['fuse', 2650, null, 950], ['breaker', 2100, 0, 3100]], money);
  expect(options).toEqual([{ name: 'fuse', fixed: 2650, fault: 950 }, { name: 'breaker', fixed: 2100, fault: 3100 }]);
  const marks = costMarks(options, money);
  // (2650 − 2100)/(9.10791·(3100 − 950)) = 0.028087: the check figure of BREAKEVEN_RATE.
  const meeting = marks.find(({ kind }) => kind === 'at x');
  expect(meeting && 'value' in meeting ? meeting.value : NaN).toBeCloseTo(0.028087, 6);
  expect(meeting?.name).toBe('equal at 0.02809 faults a year');
  expect(() => optionsFromCells([['fuse', 2650]], money)).toThrow('options: got 2 columns, takes four');
  expect(() => optionsFromCells([['fuse', 'x', 1, 2]], money)).toThrow('options row 1: first cost and cost of one fault must be numbers.');
});

const host = (cells: Record<string, number | string>): PaneHost => {
  const source = fakeSource({ cells: { S: cells } });
  return {
    ...idleHost, source, sheets: async () => ['S'],
    read: async (sheet, range) => { const [a, b = a] = range.split(':').map((each) => ({ column: each.charCodeAt(0) - 65, row: Number(each.slice(1)) - 1 })); return source.cells(sheet, { top: a!.row, left: a!.column, bottom: b!.row, right: b!.column }); },
  };
};
const selected = (formula: string): Extract<Selection, { kind: 'cell' }> => ({ kind: 'cell', sheet: 'S', address: 'F1', row: 0, column: 5, formula, value: null });
const drawn = (formula: string) => callsDrawn(selected(formula), host({ A1: 100, B1: 10, A2: 200, B2: 1, A3: 400, B3: 0.1, C1: 'source', D1: '0.2+0.4i' }));

test.each([
  ['=JW.CURVE_TIME(A1:B3,150,10,"slow")', 'time', ['CURVE_TIME ±10 %', '150 A']],
  ['=JW.CURVE_CURRENT(A1:B3,5,0,"slow")', 'time', ['CURVE_CURRENT', '5 s']],
  ['=JW.TRIP_TIME(1500,320,8,1600,0.15,3800,0.04,"slow")', 'time', ['TRIP_TIME, Ir 320 A', '1500 A']],
  ['=IF(TRUE,JW.CABLE_WITHSTAND(115,25),0)', 'time', ['cable, k²S² 8.266E+06 A²s, 0.1 to 5 s']],
  ['=JW.LETTHROUGH_TEST(210000,8265625,36,36)', 'joule', ['let-through 210000 A²s', 'cable, k²S² 8.266E+06 A²s', 'fault level, 36 kA']],
  ['=JW.NET_PROFILE({"MSB","source","0.2+0.4i","0.3+0.5i"},"1.9+9.4i","MSB",415)', 'profile', ['Ik3, kA', 'Ik1, kA']],
  ['=JW.BREAKEVEN_WORDS(2650,2100,950,3100,7,15)', 'cost', ['A', 'B', 'equal at 0.02809 faults a year']],
  ['=JW.ARC_ENERGY(45,61.3,32,609.6,"VCB",480)', 'arc', ['45 kA for 61.3 ms', '610 mm']],
] as const)('%s draws what its call stands on', async (formula, kind, names) => {
  const [first] = await drawn(formula);
  expect(first?.kind).toBe(kind);
  expect(first?.marks.map(({ name }) => name)).toEqual(names);
});

test('the line of arc energy passes the worked example of IEEE 1584-2018: 11.585 J/cm² at 609.6 mm', async () => {
  const box = 'JW.ARC_BOX_FACTOR(610,610,254,32,"VCB",480)';
  const [first] = await drawn(`=JW.ARC_ENERGY(45,61.3,32,609.6,"VCB",480,${box})`);
  const [line] = first!.marks;
  const [[x0, y0], [x1, y1]] = line!.kind === 'line' ? (line!.points as [[number, number], [number, number]]) : [[1, 1], [2, 2]];
  expect(y0 * (y1 / y0) ** (Math.log(609.6 / x0) / Math.log(x1 / x0))).toBeCloseTo(11.585, 3);
  const [boundary] = await drawn(`=JW.ARC_BOUNDARY(45,61.3,32,"VCB",480,${box})`);
  expect(boundary!.marks.map(({ name }) => name)).toEqual(['45 kA for 61.3 ms', '1029 mm', '5.0208 J/cm²']);
});

test('a formula without a call that can be drawn draws nothing; a refused call neither', async () => {
  expect(await drawn('=1+1')).toEqual([]);
  expect(await drawn('=JW.CURVE_TIME(A1:B3,9999,10,"slow")')).toEqual([]);
});

test('parts that cannot be read are told, the rest is drawn', async () => {
  const place = (top: number, left: number, bottom: number, right: number) => ({ sheet: 'S', box: { top, left, bottom, right } });
  const money = { ratePct: 7, years: 15 };
  const part = (box: ReturnType<typeof place>) => rangePart('time', { part: 'curve', place: box, name: 'F1', tolerancePct: 10 }, () => money);
  const { plot, troubles } = await plotOf('time', [part(place(0, 0, 2, 1)), part(place(0, 2, 2, 3))], host({ A1: 100, B1: 10, A2: 200, B2: 1, A3: 400, B3: 0.1, C1: 5 }), money);
  expect(plot.marks.map(({ name }) => name)).toEqual(['F1 ±10 %']);
  expect(troubles).toEqual(['S!C1:D3: missing: F1 row 1.']);
});

test('a chart for the sheet: figures on a sheet of its own, series from its ranges, axes in whole decades', () => {
  const made = chartSheet({
    title: 'Time-current', x: { title: 'current, A', logarithmic: true }, y: { title: 'time, s', logarithmic: true },
    marks: [curveFromCells('time', CURVE, 10, 'F1'), levelMark('time', 25, 'MSB')],
  }, ['Points!A1:B4', 'Boards!C3'], 'Chart 1')!;
  expect(made.chart).toMatchObject({ title: 'Time-current', sheet: 'Chart 1', at: 'H4:R34', x: { title: 'current, A', logarithmic: true, least: 10, greatest: 100000 }, y: { least: 0.1, greatest: 10 } });
  expect(made.chart.series).toEqual([
    { name: 'F1 ±10 %, fast', sheet: 'Chart 1', x: 'A6:A8', y: 'B6:B8', colour: '#0b5c8a', drawn: 'dashed' },
    { name: 'F1 ±10 %, slow', sheet: 'Chart 1', x: 'C6:C8', y: 'D6:D8', colour: '#0b5c8a', drawn: 'line' },
    { name: 'MSB, 25 kA', sheet: 'Chart 1', x: 'E6:E7', y: 'F6:F7', colour: '#b3401c', drawn: 'dashed' },
  ]);
  const value = (range: string) => made.sheet.cells.find((cell) => cell.range === range)?.value;
  expect([value('A6'), value('B6'), value('E7'), value('F7'), value('A5')]).toEqual([90, 10, 25000, 10, 'current, A']);
  expect(value('A2')).toContain('from Points!A1:B4, Boards!C3');
});
