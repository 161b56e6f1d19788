import type { Workbook, Worksheet } from 'exceljs';
import type { Chart } from '../chart-xml';
import { fileFormula } from '../formula-text';
import { FIRST_FREE_ROW, letters, printSetUp, titleBlock } from '../frame';
import { HEADING, INPUT, REMARK, UNIT, WORKED, dress } from '../look';
import { type Column, type WorkedColumns, addTable } from '../table';
import { DOCUMENT, GUESSED, RATES } from './data';

const a = (column: string): string => `XLOOKUP([@A],Cost[key],Cost[${column}])`;
const b = (column: string): string => `XLOOKUP([@B],Cost[key],Cost[${column}])`;
const BREAK_EVEN = '[@[A fixed]],[@[B fixed]],[@[A one fault]],[@[B one fault]],rate_pct,years';
const present = (option: 'A' | 'B'): string => `JW.PRESENT_COST([@[${option} first]],[@[faults a year]]*[@[${option} one fault]]+[@[${option} losses]],rate_pct,years)`;
const money = (name: string, formula: string, width = 10, unit = 'money'): Column => ({ name, unit, width, format: '#,##0', formula });

export const WAY_COLUMNS: readonly Column[] = [
  { name: 'way', width: 8 },
  { name: 'A', width: 8, list: 'list_key', note: 'Fuse-switch.' },
  { name: 'B', width: 8, list: 'list_key', note: 'Moulded-case breaker.' },
  { name: 'faults a year', unit: 'a year', width: 9, format: '0.00', note: 'The client’s guess: read the break-even beside it.' },
  money('A first', a('first cost')),
  money('B first', b('first cost')),
  money('A spares', a('spares'), 9),
  money('B spares', b('spares'), 9),
  money('A one fault', a('one fault')),
  money('B one fault', b('one fault')),
  money('A losses', a('losses'), 9, 'a year'),
  money('B losses', b('losses'), 9, 'a year'),
  money('A fixed', a('fixed')),
  money('B fixed', b('fixed')),
  { ...money('A present cost', present('A')), note: 'First cost, losses and the guessed faults over the years.' },
  { ...money('B present cost', present('B')) },
  {
    name: 'break-even', unit: 'a year', width: 11, format: '0.0000', formula: `IF(JW.BREAKEVEN_RATE(${BREAK_EVEN})<0,"none",JW.BREAKEVEN_RATE(${BREAK_EVEN}))`,
    note: 'Faults a year at which both cost the same; none where one is cheaper at every rate.',
  },
  { name: 'in words', width: 34, words: true, formula: `JW.BREAKEVEN_WORDS(${BREAK_EVEN})` },
  { name: 'fit A', width: 24, formula: 'JW.VERDICT_COUNT(XLOOKUP([@A],Options[key],Options[[Ib ≤ In]:[uk −10 %]]))', note: 'Verdicts of the sheet Options, counted; no verdict of its own.' },
  { name: 'fit B', width: 24, formula: 'JW.VERDICT_COUNT(XLOOKUP([@B],Options[key],Options[[Ib ≤ In]:[uk −10 %]]))' },
];

const TABLE_TOP = FIRST_FREE_ROW;
const TABLE_LAST = TABLE_TOP + 1 + GUESSED.length;
const DATA_HEAD = TABLE_LAST + 4;
const DATA_FIRST = DATA_HEAD + 1;
const DATA_LAST = DATA_FIRST + RATES.length - 1;
const CHART_TOP = DATA_LAST + 1;
const KEYS = GUESSED.flatMap(([, first, second]) => [first, second]);

/** One way a row: the fuse-switch against the breaker; below, present cost over the rate of faults. */
export function addCompare(workbook: Workbook, worked: WorkedColumns): Worksheet {
  const sheet = workbook.addWorksheet('Compare', { properties: { tabColor: { argb: 'FF8A5C8A' } } });
  titleBlock(sheet, 'COMPARE: A fuse-switch, B moulded-case breaker', DOCUMENT, WAY_COLUMNS.length, { remark: 'Invented prices, in no currency: a sample. The break-even is shown, not a verdict: fault rates are the client’s guess.' });
  addTable(sheet, { name: 'Ways', at: { row: TABLE_TOP }, columns: WAY_COLUMNS, rows: GUESSED }, worked);
  dress(sheet.getCell(DATA_HEAD - 2, 1), REMARK).value = 'Present cost against faults a year:';
  sheet.getCell(DATA_HEAD - 2, 1).alignment = { wrapText: false };
  ['faults', ...KEYS].forEach((key, i) => {
    dress(sheet.getCell(DATA_HEAD - 1, i + 1), UNIT).value = i === 0 ? 'a year' : 'money';
    dress(sheet.getCell(DATA_HEAD, i + 1), HEADING).value = key;
  });
  RATES.forEach((rate, n) => {
    const row = DATA_FIRST + n;
    dress(sheet.getCell(row, 1), INPUT, '0.000').value = rate;
    KEYS.forEach((_, i) => {
      const of = (column: string): string => `XLOOKUP(${letters(i + 2)}$${DATA_HEAD},Cost[key],Cost[${column}])`;
      dress(sheet.getCell(row, i + 2), WORKED, '#,##0').value = { formula: fileFormula(`JW.PRESENT_COST(${of('first cost')},$A${row}*${of('one fault')}+${of('losses')},rate_pct,years)`, '') };
    });
  });
  printSetUp(sheet, DOCUMENT, { rows: CHART_TOP + 27, columns: WAY_COLUMNS.length });
  return sheet;
}

const cells = (column: number): string => `'Compare'!$${letters(column)}$${DATA_FIRST}:$${letters(column)}$${DATA_LAST}`;
const COLOURS = ['5C8A4A', 'A04848'] as const;

export const compareCharts: readonly Chart[] = GUESSED.map(([way, ...keys], i) => ({
  title: `${way}: present cost against faults a year`,
  at: { column: i === 0 ? 0 : 11, row: CHART_TOP, toColumn: i === 0 ? 10 : WAY_COLUMNS.length - 2, toRow: CHART_TOP + 26 },
  x: { title: 'Faults a year', min: 0, max: 0.1, linear: true },
  y: { title: 'Present cost, money', min: 0, max: i === 0 ? 5000 : 9000, linear: true },
  series: [0, 1].map((option) => ({ name: `${String(keys[option])} ${option === 0 ? 'fuse-switch' : 'breaker'}`, x: cells(1), y: cells(2 + 2 * i + option), colour: COLOURS[option]! })),
}));
