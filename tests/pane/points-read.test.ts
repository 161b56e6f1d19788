import { isComplete, readPoints } from '../../src/pane/points/read-points';

const points = (text: string, kind: 'time' | 'cut-off' | 'joule' = 'time') => readPoints(text, kind).rows.map(({ point }) => point);
const words = (text: string, kind: 'time' | 'cut-off' | 'joule' = 'time') => readPoints(text, kind).findings.map((finding) => finding.words);

const FOUR = [[100, 1000], [150, 100], [210, 10], [330, 1]];

test.each([
  ['tabs', '100\t1000\n150\t100\n210\t10\n330\t1\n'],
  ['tabs of Windows, blank lines around', '\r\n\r\n100\t1000\r\n150\t100\r\n210\t10\r\n330\t1\r\n\r\n'],
  ['commas', '100,1000\n150, 100\n210,10\n330,1'],
  ['semicolons', '100;1000\n150; 100\n210;10;\n330;1'],
  ['spaces', '100 1000\n 150   100\n210 10\n330 1'],
  ['no-break spaces', '100\u00a01000\n150\u00a0100\n210\u00a010\n330\u00a01'],
  ['quotes', '"100","1000"\n"150","100"\n"210","10"\n"330","1"'],
  ['units in the cells', '0.1 kA\t1000 s\n150 A\t100\n210\t10000 ms\n330\t1'],
  ['units between spaces', '0.1 kA 1000 s\n150 A 100 s\n210 10\n330 1'],
  ['exponents', '1e2\t1E3\n1.5e2\t100\n210\t1e1\n330\t1'],
])('%s part the cells', (_, text) => {
  expect(points(text)).toEqual(FOUR);
  expect(readPoints(text, 'time')).toMatchObject({ faults: [], findings: [], headings: undefined });
  expect(isComplete(readPoints(text, 'time'))).toBe(true);
});

test.each([
  ['I (kA)\tt (ms)', ['I (kA)', 't (ms)']],
  ['current in kA\ttime in ms', ['current in kA', 'time in ms']],
  ['I / kA\tt / ms', ['I / kA', 't / ms']],
  ['current, kA\ttime, ms', ['current, kA', 'time, ms']],
  ['kA\tms', ['kA', 'ms']],
  ['I [kA]\tt [ms]', ['I [kA]', 't [ms]']],
  ['I_kA\tt_ms', ['I_kA', 't_ms']],
])('heading %s converts the columns', (heading, headings) => {
  const read = readPoints(`${heading}\n0.1\t1000000\n0.15\t100000\n0.21\t10000\n0.33\t1000`, 'time');
  expect(read.headings).toEqual(headings);
  expect(read.rows.map(({ point }) => point)).toEqual(FOUR);
  expect(read.converted).toEqual(['first column: kA converted to A', 'second column: ms converted to s']);
  expect(read.rows[0]!.number).toBe(2);
});

test('headings without a unit convert nothing; headings between spaces are told apart', () => {
  expect(readPoints('current\ttime\n100\t10', 'time')).toMatchObject({ headings: ['current', 'time'], converted: [] });
  expect(readPoints('I (kA) t (s)\n0.1 10', 'time')).toMatchObject({ headings: ['I (kA)', 't (s)'], rows: [{ point: [100, 10] }] });
  expect(readPoints('kA kA\n5 5.6', 'cut-off')).toMatchObject({ headings: ['kA', 'kA'], rows: [{ point: [5, 5.6] }] });
  expect(readPoints('kA\tkA peak\n5\t5.6', 'cut-off')).toMatchObject({ headings: ['kA', 'kA peak'], converted: [], faults: [], rows: [{ point: [5, 5.6] }] });
});

test('a heading in a unit of another quantity bars the points', () => {
  const read = readPoints('V\ts\n100\t10\n200\t1\n300\t0.1\n400\t0.01', 'time');
  expect(read.faults).toEqual(['The heading of the first column is in V, voltage; points of this kind take A there.']);
  expect(isComplete(read)).toBe(false);
});

test('kA²s says how it was read', () => {
  expect(readPoints('kA\tkA²s\n10\t0.5', 'joule')).toMatchObject({ rows: [{ point: [10, 500000] }], converted: [expect.stringContaining('10⁶ A²s; some sheets mean 10³')] });
});

describe('what cannot be read is told and is no point', () => {
  test.each([
    ['100\t1,5', 'row 1: not numbers (1,5 holds a comma: write a decimal point, and no thousands marks)'],
    ['100;1,5', 'row 1: not numbers (1,5 holds a comma: write a decimal point, and no thousands marks)'],
    ['1,5 20', 'row 1: not numbers (1,5 holds a comma: write a decimal point, and no thousands marks)'],
    ['1,500\t20', 'row 1: not numbers (1,500 holds a comma: write a decimal point, and no thousands marks)'],
    ['1 500\t20', 'row 1: not numbers (1 500 holds a thousands mark: write 1500)'],
    ['1,5,0,2', 'row 1: not numbers (4 cells, takes two; decimal commas? Write decimal points)'],
    ['100\t20\t30', 'row 1: not numbers (3 cells, takes two; decimal commas? Write decimal points)'],
    ['100', 'row 1: not numbers (one cell, takes two)'],
    ['100\tabout 5', 'row 1: not numbers (about 5 is no number)'],
    ['100 kg\t5', 'row 1: not numbers (kg is not a unit known here)'],
    ['100 V\t5', 'row 1: not numbers (V is voltage, takes A)'],
    ['100\t', 'row 1: blank cell'],
    ['\t5', 'row 1: blank cell'],
    ['-3\t5', 'row 1: not above zero'],
  ])('%j', (text, finding) => {
    const read = readPoints(text, 'time');
    expect(read.findings[0]!.words).toBe(finding);
    expect(read.findings[0]!.row).toBe(1);
  });
  test('a blank line between points', () => {
    expect(words('100\t1000\n\n210\t10\n330\t1\n400\t0.5')).toEqual(['row 2: blank cell']);
    expect(isComplete(readPoints('100\t1000\n\n210\t10', 'time'))).toBe(false);
  });
});

test('findings are those of CURVE_CHECK, rows counted with the heading', () => {
  expect(words('A\ts\n100\t10\n150\t1\n140\t0.5\n900\t0.01')).toEqual(['row 4: first column does not rise', 'row 5: gap of more than half a decade']);
  expect(words('kA\tkA\n5\t5.6\n50\t17\n100\t16', 'cut-off')).toEqual(['row 3: gap of more than half a decade', 'row 4: cut-off falls', 'fewer than 4 points']);
});

test('nothing pasted is nothing', () => {
  expect(readPoints(' \n\t\n', 'time')).toMatchObject({ rows: [], findings: [], faults: [] });
});
